"""The imports of the standard library, against CPython's own `ast`."""

from __future__ import annotations

import ast
import random
import warnings

import pytest

from namegen.languages.python.grammar import parser
from namegen.languages.python.imports import Imports
from namegen.languages.sources import Source
from tests.languages.stdlib_oracle import standard_library

SAMPLE = 150


def by_reader(code: bytes) -> list[str]:
    return sorted(one.local for one in Imports(Source(code, parser())).all)


def by_ast(code: bytes) -> list[str] | None:
    """Return what is imported, but for language features; None where Python has no tree."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        try:
            nodes = list(ast.walk(ast.parse(code)))
        except (SyntaxError, ValueError):
            return None
    names: list[str] = []
    for node in nodes:
        if isinstance(node, ast.Import):
            names += [name.asname or name.name.split(".")[0] for name in node.names]
        elif isinstance(node, ast.ImportFrom) and node.module != "__future__":
            names += [name.asname or name.name for name in node.names]
    return sorted(names)


def test_the_standard_library_imports_what_it_does():
    compared = imports = 0
    for path in random.Random(3).sample(standard_library(), 3 * SAMPLE):
        code = path.read_bytes()
        wanted = by_ast(code) if len(code) < 60_000 and code.isascii() else None
        if wanted is not None and compared < SAMPLE:
            assert by_reader(code) == wanted, path
            compared += 1
            imports += len(wanted)
    assert compared == SAMPLE
    assert imports > SAMPLE


@pytest.mark.parametrize(
    "code",
    [
        "import a; import b",
        "if x: import a",
        "x = 1;import a",
        "from a \\\n import b",
        "from a import (\n  b,\n  c as d,\n)",
        "from a import \\\n  b",
        "from.a import b",
        "def f():\r    import a\r",
        "try: from a import b\nexcept ImportError: import b as c",
        "class A:\n\timport a\f",
        "x = 'import a'\n# import b\n'''\nimport c\n'''\n",
        "\fimport a",
    ],
)
def test_wherever_it_stands_an_import_is_seen(code: str):
    assert by_reader(code.encode()) == by_ast(code.encode())
