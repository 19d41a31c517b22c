"""An edit is written only when it is proved: same file, valid code, the right value."""

from __future__ import annotations

import ast
import time

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from namegen import languages
from namegen.languages.edits import respelt
from namegen.model.facts import Respelling, Text
from namegen.model.workspaces import LookupRule

RULES = (LookupRule("call", "motor"),)
PYTHON = "é = 1\nmotor('a')\r\nx = motor( r\"b\" )  # c\nmotor(f'{{d}}')\n".encode()
JAVA = 'class A { /* é */ void f() { motor("a");\r\n motor("b"); } }'.encode()
KOTLIN = (
    'class A { /* é */ fun f() { motor("a")\r\n boat.motor<B>("$ b") { go() }; motor("\\$c") } }\n'
).encode()
CPP = 'void f() { /* é */ motor("a");\r\n motor(u8"b"); motor(R"x(c)x"); }'.encode()
CODE = [("python", PYTHON), ("java", JAVA), ("kotlin", KOTLIN), ("cpp", CPP)]
LETTERS = st.characters(exclude_categories=["Cs"], exclude_characters="\0")  # it ends C++'s texts
WORDS = st.text(alphabet=LETTERS, max_size=8)


def changes(language: str, code: bytes, value: str) -> list[Respelling]:
    """Return the change of every look-up's literal that can take the value."""
    found = []
    for site in languages.named(language).read(code, RULES).lookups:
        assert isinstance(site.name, Text)
        spelling = languages.named(language).spell(value, site.name)
        if spelling is not None:
            found.append(Respelling(site.name, spelling, value))
    return found


@pytest.mark.parametrize(("language", "code"), CODE)
@settings(deadline=None)  # the first call loads LibCST
@given(value=WORDS)
def test_a_spelt_name_is_proved_and_reads_back(language, code, value):
    edits = changes(language, code, value)
    assert edits
    after = respelt(code, edits)
    assert languages.named(language).objection(code, after, edits) is None
    names = [site.name for site in languages.named(language).read(after, RULES).lookups]
    read = [name.value for name in names if isinstance(name, Text)]
    assert read.count(value) >= len(edits)
    if language == "python":
        assert isinstance(ast.parse(after), ast.Module)


@pytest.mark.parametrize(("language", "code"), CODE)
def test_wrong_edits_are_refused(language, code):
    own = languages.named(language)
    (edit, *_) = changes(language, code, "bow")
    after = respelt(code, [edit])
    assert own.objection(code, after, [edit]) is None
    assert own.objection(code, after + b"\n", [edit]) == "something outside the names would change"
    liar = Respelling(edit.literal, "stern", "bow")
    assert own.objection(code, respelt(code, [liar]), [liar])
    for spelling in ("a' + 'b", 'a" + "b', "a\nb", "a') or ('b", 'a"); f("b', "${b}", "$b"):
        forged = Respelling(edit.literal, spelling, spelling)
        if spelling != own.spell(spelling, edit.literal):
            assert own.objection(code, respelt(code, [forged]), [forged])


@pytest.mark.parametrize(
    "code",
    [
        "motor('a')\nx = " + "(" * 2_000 + "1" + ")" * 2_000,
        "motor('a')\nx = " + " ".join(["'b'"] * 5_000),
        "motor('a')\nx = " + "+".join(["'b'"] * 5_000),
        "motor('a')\nx = " + "not " * 5_000 + "y",
        "motor('a')\n" + "".join(" " * i + "if x:\n" for i in range(400)) + " " * 400 + "pass",
    ],
    ids=["brackets", "side by side", "joined", "not", "blocks"],
)
def test_a_file_that_would_end_libcst_is_flagged_instead(code):
    data = code.encode()
    (edit,) = changes("python", data, "bow")
    started = time.perf_counter()
    reason = languages.named("python").objection(data, respelt(data, [edit]), [edit])
    assert reason == "the file is nested too deeply to prove the edit"
    assert time.perf_counter() - started < 5


def test_broken_python_is_not_rewritten():
    data = b"motor('a')\nx = = 1\n"
    (edit,) = changes("python", data, "bow")
    reason = languages.named("python").objection(data, respelt(data, [edit]), [edit])
    assert reason is not None
    assert "would not be valid Python" in reason
