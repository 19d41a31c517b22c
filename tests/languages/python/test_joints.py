"""A long file is cut only where a statement of the module begins, as CPython's `ast` sees it."""

from __future__ import annotations

import ast
import io
import random
import tokenize
import warnings

import pytest

from namegen import languages
from namegen.languages.python import joints as module
from namegen.languages.python.joints import joints
from namegen.model.facts import Text
from namegen.model.workspaces import LookupRule
from tests.languages.stdlib_oracle import RULES, standard_library

DEFINITIONS = (ast.FunctionDef, ast.AsyncFunctionDef, ast.ClassDef)
FILES = 150
RULE = (LookupRule("call", "motor"),)


def lines_of_statements(text: str) -> tuple[set[int], set[int]] | None:
    """Return the lines where `ast` has a definition in the module, plain and decorated ones."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        try:
            body = [one for one in ast.parse(text).body if isinstance(one, DEFINITIONS)]
        except (SyntaxError, ValueError):
            return None
    plain = {one.lineno for one in body if not one.decorator_list}
    return plain, {one.lineno for one in body} - plain


def normalised(data: bytes) -> bytes | None:
    """Return a file in UTF-8 with the line ends that `ast` counts, or None if it says otherwise."""
    encoding, _ = tokenize.detect_encoding(io.BytesIO(data).readline)
    return data if encoding == "utf-8" and b"\r" not in data else None


def test_cuts_in_the_standard_library_are_definitions(monkeypatch):
    monkeypatch.setattr(module, "LONG", 0)
    cuts = wanted = 0
    for path in random.Random(5).sample(standard_library(), 4 * FILES)[:FILES]:
        data = normalised(path.read_bytes())
        lines = lines_of_statements(data.decode("utf-8")) if data is not None else None
        if data is None or lines is None:
            continue
        plain, _ = lines
        found = {data.count(b"\n", 0, cut) + 1 for cut in joints(data)}
        assert found <= plain, path
        cuts += len(found)
        wanted += len(plain)
    assert cuts > 0.97 * wanted > FILES  # nearly nothing is left uncut, and there was much to cut


@pytest.mark.parametrize(
    ("text", "cut"),
    [
        ("x = 1\ndef f(): pass\n", ["def f"]),
        ("x = 1\nasync def f(): pass\nclass A: pass\n", ["async def", "class A"]),
        ('"""\ndef f(): pass\n"""\ndef g(): pass\n', ["def g"]),
        ("x = '''\n\"\"\"\ndef f\n'''\ndef g(): pass\n", ["def g"]),
        ("x = \"'''\"\ndef g(): pass\n\"'''\"\n", ["def g"]),
        ("# it's '''\ndef g(): pass\n# '''\n", ["def g"]),
        ('x = """a\\"""\ndef f\n"""\ndef g(): pass\n', ["def g"]),
        ('x = """a\\\\"""\ndef g(): pass\n', ["def g"]),
        ("x = 'a\\\ndef f'\ndef g(): pass\n", ["def g"]),
        ("x = 'a\\\r\ndef f'\r\ndef g(): pass\r\n", ["def g"]),
        (
            'x = \'a\\\n """\'\ndef f():\n """\ndef g(): pass\n"""\ndef h(): pass\n',
            ["def f", "def h"],
        ),
        # PEP 701: from Python 3.12 on a field of an f-string may hold the quotes around it.
        ('x = f"""{d["""\ndef f(): pass\ndef g(): """]}"""\n', []),
        ('x = f"{"""\ndef f(): pass\n"""}"\n', []),
        ('x = f"""{d}"""\ndef f(): pass\n', ["def f"]),
        ("@one\ndef f(): pass\ndef g(): pass\n", ["def g"]),
        ("x = 1\n@one(\n  2)\n\n# note\nclass A: pass\nclass B: pass\n", ["class B"]),
        ("x = (a\n@ b)\ndef f(): pass\ndef g(): pass\n", ["def g"]),
        ('x = """\ndef f(): pass\ndef g(): pass\n', []),
        ("define = 1\nclassy = 2\n  \ndef\n", []),
    ],
)
def test_where_a_text_is_cut(monkeypatch, text: str, cut: list[str]):
    monkeypatch.setattr(module, "LONG", 0)
    found = joints(text.encode())
    assert len(found) == len(cut)
    assert all(text[at:].startswith(start) for at, start in zip(found, cut, strict=True))


def test_a_file_in_pieces_says_the_same(monkeypatch):
    python = languages.named("python")
    holds, compared = python.prefilter(RULES), 0
    for path in standard_library():
        data = path.read_bytes()
        if len(data) > 60_000 or not holds(data) or normalised(data) is None:
            continue
        pieces = []
        for long in (0, len(data) + 1):
            monkeypatch.setattr(module, "LONG", long)
            reading = python.read(data, RULES)
            pieces.append((reading.lookups, reading.unsound))
        assert pieces[0] == pieces[1], path
        compared += bool(pieces[0][0])
        if compared == FILES:
            break
    assert compared == FILES


def test_definitions_in_other_pieces_are_found(monkeypatch):
    monkeypatch.setattr(module, "LONG", 0)
    code = "class A:\n    NAME = 'bow'\n\ndef f():\n    motor(A.NAME)\n\nclass B:\n    NAME = 1\n"
    reading = languages.named("python").read(code.encode(), RULE)
    assert len(reading.lookups) == 1
    values = [one.value for one in reading.definitions(("A", "NAME"))]
    assert [one.value for one in values if isinstance(one, Text)] == ["bow"]


@pytest.mark.parametrize(
    ("broken", "told"),
    [
        ("def g():\n    motor('b'\n", True),  # in a piece that is parsed
        ("def g():\n    x = (1\n", False),  # where nothing is looked up
        ('def g():\n    x = """1\n', True),  # it swallows what is looked up behind it
    ],
)
def test_what_is_broken_is_told_where_it_matters(monkeypatch, broken: str, told: bool):
    monkeypatch.setattr(module, "LONG", 0)
    code = f"def f():\n    motor('a')\n\n{broken}\ndef h():\n    motor('c')\n"
    reading = languages.named("python").read(code.encode(), RULE)
    names = {site.name.value for site in reading.lookups if isinstance(site.name, Text)}
    assert "a" in names
    assert bool(reading.unsound) is told
    assert told or names == {"a", "c"}
