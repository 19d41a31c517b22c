"""The look-up literals of the standard library as CPython's own `ast` sees them.

The outside judge of the Python reader: it shares no code with it.
"""

from __future__ import annotations

import ast
import sysconfig
import warnings
from collections.abc import Iterator
from pathlib import Path

from namegen import languages
from namegen.errors import UnusableInput
from namegen.model.facts import Expression, Join, Text
from namegen.model.workspaces import LookupRule

RULES = (
    LookupRule("call", "getattr", name_at=(1,)),
    LookupRule("call", "get", on="environ"),
    LookupRule("call", "getLogger"),
)
Found = set[tuple[int, str]]
"""Byte at which a literal starts, and its value."""


def standard_library() -> list[Path]:
    """Return the Python files of the standard library, without installed packages."""
    folder = Path(sysconfig.get_paths()["stdlib"])
    files = (path for path in folder.rglob("*.py") if "site-packages" not in path.parts)
    return sorted(path for path in files if path.is_file())


def by_ast(text: str) -> Found | None:
    """Return the literals that `ast` finds, or None where Python cannot compile the file."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        try:
            compile(text, "<oracle>", "exec", dont_inherit=True)
            tree = ast.parse(text)
        except (SyntaxError, ValueError, RecursionError, MemoryError):
            return None
    starts = [0]
    for line in text.replace("\r\n", " \n").replace("\r", "\n").encode().split(b"\n"):
        starts.append(starts[-1] + len(line) + 1)
    found: Found = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Call):
            found |= {
                (starts[literal.lineno - 1] + literal.col_offset, literal.value)
                for argument in _arguments(node)
                for literal in _literals(argument)
            }
    return found


def _arguments(call: ast.Call) -> Iterator[ast.expr]:
    """Yield the argument of a call that is a name by one of the rules."""
    function = call.func
    name = function.attr if isinstance(function, ast.Attribute) else getattr(function, "id", "")
    place = {"getattr": 1, "get": 0, "getLogger": 0}.get(name)
    if name == "get":
        owner = function.value if isinstance(function, ast.Attribute) else None
        word = owner.attr if isinstance(owner, ast.Attribute) else getattr(owner, "id", "")
        place = place if word == "environ" else None
    if place is None or len(call.args) <= place:
        return
    if not any(isinstance(argument, ast.Starred) for argument in call.args[: place + 1]):
        yield call.args[place]


def _literals(node: ast.expr) -> Iterator[ast.Constant]:
    if isinstance(node, ast.Constant) and isinstance(node.value, str):
        yield node
    elif isinstance(node, ast.IfExp):
        yield from _literals(node.body)
        yield from _literals(node.orelse)
    elif isinstance(node, ast.List | ast.Tuple | ast.Set):
        for element in node.elts:
            yield from _literals(element)


def by_reader(data: bytes) -> tuple[str, Found] | None:
    """Return a file's text and the literals that the reader finds; None if it is no text."""
    python = languages.named("python")
    try:
        decoded = python.decode(data)
    except UnusableInput:
        return None
    if not python.prefilter(RULES)(data):
        return decoded.text, set()
    reading = python.read(decoded.utf8, RULES)
    return decoded.text, set(_found(site.name for site in reading.lookups))


def _found(names: Iterator[Expression]) -> Iterator[tuple[int, str]]:
    for name in names:
        if isinstance(name, Text):
            yield name.span.start - len(name.opening), name.value
        elif isinstance(name, Join) and all(isinstance(part, Text) for part in name.parts):
            parts = [part for part in name.parts if isinstance(part, Text)]
            yield name.span.start, "".join(part.value for part in parts)
