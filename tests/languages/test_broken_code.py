"""Broken and hostile files: the sound part is read, the rest is named, and nothing hangs."""

from __future__ import annotations

import time

import pytest

from namegen import languages
from namegen.model.facts import Text
from namegen.model.workspaces import LookupRule
from tests.languages.asking import Code

RULES = (
    LookupRule("call", "motor"),
    LookupRule("subscript", "devices"),
    LookupRule("call", "get", kind_by="declared-type", kinds={"Motor": "motor"}),
    LookupRule("call", "find", kind_by="type-argument", kinds={"Motor": "motor"}),
)


def read(language: str, code: str) -> tuple[list[str], list[str]]:
    """Return the names that are found and the stretches that are not sound."""
    data = code.encode()
    reading = languages.named(language).read(data, RULES)
    names = [site.name.value for site in reading.lookups if isinstance(site.name, Text)]
    return names, [data[span.start : span.end].decode() for span in reading.unsound]


@pytest.mark.parametrize(
    ("language", "code", "names", "broken"),
    [
        ("python", "motor('a')\nx = = 1\nmotor('b')\n", ["a", "b"], "x = = 1"),
        ("python", "motor('a')\nmotor('b'\nmotor('c')\n", ["a"], "motor('b'"),
        ("python", "def f(:\n  motor('a')\n\nmotor('b')\n", ["a", "b"], "("),
        ("python", "class A:\n def f(self):\n  motor('a')\n  x = (1, 2\n\n", ["a"], "x = (1, 2"),
        ("python", "motor('a')\nmotor('b)\nmotor('c')\n", ["a"], "motor('b"),
        ("java", 'class A { void f() { motor("a"); int = 3; motor("b"); } }', ["a", "b"], "int"),
        ("java", 'class A { void f() { motor("a") motor("b"); } }', ["b"], 'motor("a")'),
        ("java", 'class A { void f() { motor("a"); }', ["a"], ""),
        ("java", 'class A { void f() { motor("a"); } void g( { motor("b"); } }', ["a", "b"], "("),
        ("java", 'class A { void f() { motor("a"); motor("b);\n } }', ["a"], 'motor("b'),
        ("kotlin", 'fun f() {\n motor("a")\n val = 3\n motor("b")\n}\n', ["a"], 'motor("b")'),
        ("kotlin", 'fun f() {\n motor("a")\n motor("b" "c")\n motor("d")\n}\n', ["a"], "d"),
        ("kotlin", 'class A {\n fun f() { motor("a") }\n', ["a"], ""),
        ("kotlin", 'fun f() { motor("a") }\nfun g( { motor("b") }\n', ["a"], "("),
        ("kotlin", 'fun f() {\n motor("a")\n motor("b)\n}\n', ["a"], 'motor("b'),
        ("kotlin", 'val a = motor("a)\nval b = motor("b")\n', [], '"a)\nval b = motor("b")'),
        ("kotlin", 'val a = "a\nval b = motor("b")\n', ["b"], '"a'),
        ("kotlin", 'val a = "\nval b = motor("b")\n', ["b"], '"'),
        ("kotlin", 'fun f() {\n val a = motor("a"\n val b = motor("b")\n}\n', [], 'motor("a"'),
        ("cpp", 'void f() { motor("a"); int = 3; motor("b"); }', ["a", "b"], "= 3"),
        ("cpp", 'void f() { motor("a") motor("b"); }', [], 'motor("a")'),
        ("cpp", 'void f() { motor("a");', ["a"], ""),
        ("cpp", 'void f() { motor("a"); } void g( { motor("b"); }', ["a"], "("),
        ("cpp", 'void f() { motor("a"); motor("b);\n }', ["a"], 'motor("b'),
        (
            "cpp",
            'struct A { Motor m = motor("a"); int = 3; }; auto b = motor("b");',
            ["a", "b"],
            "int",
        ),
    ],
)
def test_only_what_is_sound_is_read(language, code, names, broken):
    found, unsound = read(language, code)
    assert set(names) <= set(found)
    assert unsound
    assert any(broken in stretch for stretch in unsound)


SOUND = {
    "python": "motor('a')\n",
    "java": 'class A { void f() { motor("a"); } }',
    "kotlin": 'class A { fun f() { motor("a") } }\n',
    "a header that is C too": (
        '#pragma once\n#ifdef __cplusplus\nextern "C" {\n#endif\nvoid f(void);\n'
        '#if defined(__cplusplus)\n}\n#endif\ninline void g() { motor("a"); }\n'
    ),
    "cpp": 'void f() { motor("a"); printf("%" PRIu32 " m", n); }\nclass API B : C {};\n',
}


@pytest.mark.parametrize("language", SOUND)
def test_sound_code_has_no_unsound_stretch(language):
    code = SOUND[language]
    assert read("cpp" if " " in language else language, code) == (["a"], [])


def test_python_that_python_compiles_is_sound():
    code = "motor('a')\nprint(1 if True else 2)\n\x0c\nmotor('b') ; devices['c']\n"
    compile(code, "<case>", "exec")
    assert read("python", code) == (["a", "b", "c"], [])


MANY = 10_000
HOSTILE = {
    "brackets": "(" * MANY + "'a'" + ")" * MANY,
    "unclosed": "motor(" * MANY,
    "calls": "motor(" * MANY + "'a'" + ")" * MANY,
    "joined": "motor(" + " + ".join(["'a'"] * 5_000) + ")",
    "side by side": "motor(" + " ".join(["'a'"] * 5_000) + ")",
    "chain": "x" + ".motor('a')" * 5_000,
    "long line": "x = [" + "motor('a'), " * 20_000 + "1]",
    "long literal": "motor('" + "a" * 1_000_000 + "')",
    "conditions": "motor(" + "'a' if x else " * 3_000 + "'b')",
    "lambdas": "x = " + "lambda: " * 3_000 + "motor('a')",
    "types": "motor<" * MANY + ">" * MANY + "('a')",
    "members": "motor(a" + ".b" * 3_000 + ")",
    "names of types": "V<" * 900 + "Motor" + ">" * 900 + " a = get('a');",
    "names of types after a colon": "val a: " + "V<" * 900 + "Motor" + ">" * 900 + " = get('a')",
    "arguments of types": "find<" + "V<" * 900 + "Motor" + ">" * 900 + ">('a');",
    "scopes of types": "a" + ".b" * 900 + " c = get('a');",
    "names of names": "A = ['a']; A = A;\n" + "B = A; A = B;\n" * 200 + "motor(A)",
    "comparisons": "a < b, " * MANY + "c > (motor('a'))",
    "comments": "/*" * MANY + "motor('a')" + "*/" * MANY,
    "templates": "'${" * MANY + "motor('a')" + "}'" * MANY,
    "no words": "\x01\x02\x7f" * 10_000 + "motor('a')",
    "assigned often": "n = 'a'; motor(n);\n" * 2_000,
}


@pytest.mark.parametrize("language", ["python", "java", "kotlin", "cpp"])
@pytest.mark.parametrize("case", HOSTILE)
def test_hostile_text_ends_soon(language, case):
    code = HOSTILE[case]
    if language in {"java", "cpp"}:
        code = "class A { void f() { " + code.replace("'", '"') + "; } };"
    if language == "kotlin":
        code = "class A { fun f() { " + code.replace("'", '"') + " } }"
    started = time.perf_counter()
    read(language, code)
    assert time.perf_counter() - started < 20  # most take a tenth of a second


def test_what_lies_too_deep_is_named():
    names, unsound = read("python", "motor('top')\n" + "motor(" * 3_000 + "'a'" + ")" * 3_000)
    assert names == ["top"]
    assert len(unsound) == 1
    assert unsound[0].startswith("motor")


@pytest.mark.parametrize(
    "code",
    [
        "".join(f"def f{n}(old):\n new = old\n old = new\n motor(old)\n" for n in range(400)),
        "A = ['a']\n" + "A = A\n" * 400 + "for n in A: motor(n)\n",
        "".join(
            f"class A{n}(A{n - 1}):\n n = 'a'\n def go(self): motor(self.n)\n" for n in range(400)
        ),
    ],
)
def test_names_of_names_and_long_lines_of_classes_end_soon(code):
    started = time.perf_counter()
    Code({"main.py": code}).answers("main.py")
    assert time.perf_counter() - started < 20
