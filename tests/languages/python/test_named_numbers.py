"""Numbers that the standard library's code gives to names, against CPython's own `ast`."""

from __future__ import annotations

import ast
import warnings
from collections.abc import Iterator

from namegen import languages
from tests.languages.stdlib_oracle import standard_library

SAMPLE = 150


def named(tree: ast.AST) -> Iterator[tuple[str, ast.expr | None]]:
    """Yield each name of an argument, a default, a key or an attribute with what it is given."""
    for node in ast.walk(tree):
        if isinstance(node, ast.keyword) and node.arg:
            yield node.arg, node.value
        elif isinstance(node, ast.arguments):
            places = [*node.posonlyargs, *node.args]
            defaulted = places[len(places) - len(node.defaults) :]
            yield from ((a.arg, v) for a, v in zip(defaulted, node.defaults, strict=True))
            yield from ((a.arg, v) for a, v in zip(node.kwonlyargs, node.kw_defaults, strict=True))
        elif isinstance(node, ast.Dict):
            yield from ((word(k), v) for k, v in zip(node.keys, node.values, strict=True))
        elif isinstance(node, ast.Assign) and len(node.targets) == 1:
            target = node.targets[0]
            if isinstance(target, ast.Attribute):
                yield target.attr, node.value
            elif isinstance(target, ast.Subscript):
                yield word(target.slice), node.value


def word(node: ast.expr | None) -> str:
    plain = isinstance(node, ast.Constant) and isinstance(node.value, str)
    return node.value if plain and node.value.isidentifier() else ""


def bound(tree: ast.AST) -> set[int]:
    """Return the lines where plain names are assigned, which is another reader's part."""
    kinds = ast.Assign | ast.AnnAssign | ast.NamedExpr
    return {
        line
        for node in ast.walk(tree)
        if isinstance(node, kinds) and node.end_lineno is not None
        for line in range(node.lineno, node.end_lineno + 1)
    }


def wanted(tree: ast.AST) -> set[tuple[str, int, float]]:
    found = set()
    for name, value in named(tree):
        if name and isinstance(value, ast.Constant) and type(value.value) in {int, float}:
            found.add((name, value.lineno, float(value.value)))
    return found


def test_reader_and_ast_find_the_same_numbers():
    reading, compared, count = languages.named("python"), 0, 0
    for path in standard_library():
        text = path.read_bytes()
        if len(text) > 40_000 or not text.isascii() or b"\r" in text:
            continue
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            tree = ast.parse(text)
        expected = wanted(tree)
        names = sorted({name for name, _, _ in expected})
        if not names:
            continue
        lines = text.decode().splitlines(keepends=True)
        found = {
            (one.name, text[: one.span.start].count(b"\n") + 1, one.value)
            for one in reading.read(text, ()).numbers(names)
        }
        assert expected <= found, path
        others = bound(tree)
        products = {line for line, text in enumerate(lines, 1) if "*" in text}
        extra = {one for one in found - expected if one[1] not in others | products}
        assert extra == set(), path
        compared += 1
        count += len(expected)
        if compared == SAMPLE:
            break
    assert compared == SAMPLE
    assert count > 3 * SAMPLE
