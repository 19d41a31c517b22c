"""Names are followed across files, and never for ever."""

from __future__ import annotations

import pytest

from tests.languages.asking import Code

PYTHON_FILES = [
    ({"c/main.py": "from names import N\nmotor(N)", "c/names.py": "N = 'bow'"}, ["bow"]),
    ({"c/main.py": "from names import N as M\nmotor(M)", "c/names.py": "N = 'bow'"}, ["bow"]),
    ({"c/main.py": "import names\nmotor(names.N)", "c/names.py": "N = 'bow'"}, ["bow"]),
    (
        {"c/main.py": "import names as n\nmotor(n.K.N)", "c/names.py": "class K:\n N = 'bow'"},
        ["bow"],
    ),
    ({"c/main.py": "from names import *\nmotor(N)", "c/names.py": "N = 'bow'"}, ["bow"]),
    ({"c/main.py": "import p.names\nmotor(p.names.N)", "c/p/names.py": "N = 'bow'"}, ["bow"]),
    ({"c/main.py": "from p import names\nmotor(names.N)", "c/p/names.py": "N = 'bow'"}, ["bow"]),
    ({"c/p/main.py": "from . import names\nmotor(names.N)", "c/p/names.py": "N = 'bow'"}, ["bow"]),
    ({"c/p/main.py": "from ..names import N\nmotor(N)", "c/names.py": "N = 'bow'"}, ["bow"]),
    (
        {"c/p/main.py": "from .names import N\nmotor(N)", "c/names.py": "N = 'bow'"},
        ["[`N` is not defined in code that was read]"],
    ),
    ({"c/q/main.py": "from names import N\nmotor(N)", "c/names.py": "N = 'bow'"}, ["bow"]),
    (
        {
            "c/main.py": "from a import N\nmotor(N)",
            "c/a/__init__.py": "from .b import N",
            "c/a/b.py": "from c import M as N",
            "c/c.py": "M = 'bow'",
        },
        ["bow"],
    ),
    (
        {
            "c/main.py": "from devices import Motor\nmotor(Motor.BOW)",
            "c/devices.py": "from kinds import X\nclass Motor:\n BOW: Final = X('bow')",
            "c/kinds.py": "X = NewType('X', str)",
        },
        ["bow"],
    ),
    (
        {"c/main.py": "from names import K\nmotor(K.BLAD)", "c/names.py": "class K:\n BLADE = 'b'"},
        ["[c/names.py has no `K.BLAD`; the nearest is `BLADE`]"],
    ),
    (
        {"c/main.py": "from names import BLAD\nmotor(BLAD)", "c/names.py": "BLADE = 'b'"},
        ["[c/names.py has no `BLAD`; its spelling may be wrong]"],
    ),
    (
        {"c/main.py": "import names\nmotor(names.M.A)", "c/names.py": "class K:\n A = 'b'"},
        ["[c/names.py has no `M`; its spelling may be wrong]"],
    ),
    (
        {
            "c/main.py": "from names import ALL\nfor n in ALL: motor(n)",
            "c/names.py": "ALL = ['bow', 'stern']",
        },
        ["bow", "stern"],
    ),
    (
        {
            "c/main.py": "import names\nmotor(names.T['x'])\nfor n in names.T.values(): motor(n)",
            "c/names.py": "T = {'x': 'bow'}",
        },
        ["bow", "bow"],
    ),
    (
        {"c/main.py": "import names\nfor n in names.N: motor(n)", "c/names.py": "N = 'bow'"},
        ["[it runs over values that are not written out]"],
    ),
    (
        {
            "c/main.py": "from a import N\nmotor(N)",
            "c/a.py": "from b import N",
            "c/b.py": "from a import N",
        },
        ["[`N` is not defined in code that was read]"],
    ),
    (
        {
            "c/main.py": "from names import B\nclass K(B):\n def f(self): motor(self.N)",
            "c/names.py": "class B:\n N = 'bow'",
        },
        ["bow"],
    ),
    (
        {
            "c/main.py": "from a import *\nfrom b import *\nmotor(N)",
            "c/a.py": "N = 'a'",
            "c/b.py": "N = 'b'",
        },
        ["b"],
    ),
    (
        {"c/main.py": "from a import *\nmotor(_N)", "c/a.py": "_N = 'a'"},
        ["[`_N` is not defined in code that was read]"],
    ),
]


@pytest.mark.parametrize(("files", "names"), PYTHON_FILES)
def test_python_names_are_followed_across_files(files, names):
    assert Code(files).answers(next(iter(files))) == names


def main(body: str, head: str = "") -> str:
    return f"package p; {head} class Main {{ void f() {{ {body} }} }}"


NAMES = """
public final class Names {
  public static final String N = "bow";
  static class In { static final String M = "in"; }
}
"""
JAVA_FILES = [
    (
        {
            "c/p/Main.java": main("for (String n : Names.ALL) motor(n);"),
            "c/p/Names.java": "package p; class Names { static final String[] ALL = "
            '{"bow", "stern"}; }',
        },
        ["bow", "stern"],
    ),
    ({"c/p/Main.java": main("motor(Names.N);"), "c/p/Names.java": NAMES}, ["bow"]),
    ({"c/p/Main.java": main("motor(Names.In.M);"), "c/p/Names.java": NAMES}, ["in"]),
    (
        {"c/p/Main.java": main("motor(Names.N);", "import q.Names;"), "c/q/Names.java": NAMES},
        ["bow"],
    ),
    ({"c/p/Main.java": main("motor(Names.N);", "import q.*;"), "c/q/Names.java": NAMES}, ["bow"]),
    (
        {"c/p/Main.java": main("motor(N);", "import static q.Names.N;"), "c/q/Names.java": NAMES},
        ["bow"],
    ),
    (
        {"c/p/Main.java": main("motor(N);", "import static q.Names.*;"), "c/q/Names.java": NAMES},
        ["bow"],
    ),
    (
        {"c/p/Main.java": main("motor(In.M);", "import q.Names.In;"), "c/q/Names.java": NAMES},
        ["in"],
    ),
    (
        {
            "c/p/Main.java": main("motor(M);", "import static q.Names.In.*;"),
            "c/q/Names.java": NAMES,
        },
        ["in"],
    ),
    (
        {"c/p/Main.java": main("motor(q.Names.N);"), "c/q/Names.java": NAMES},
        ["[`N` is not defined in code that was read]"],
    ),
]


@pytest.mark.parametrize(("files", "names"), JAVA_FILES)
def test_java_names_are_followed_across_files(files, names):
    assert Code(files).answers(next(iter(files))) == names


def test_the_literal_is_told_where_it_stands():
    code = Code(
        {"c/main.py": "from names import N\nmotor(N)\nmotor(N + 'x')", "c/names.py": "N = 'bow'"}
    )
    alone, joined = code.resolved("c/main.py")
    assert (alone.path, code.files["c/names.py"][alone.span.start : alone.span.end]) == (
        "c/names.py",
        b"bow",
    )
    assert alone.literal is not None
    assert (joined.path, code.files["c/main.py"][joined.span.start : joined.span.end]) == (
        "c/main.py",
        b"N + 'x'",
    )
    assert joined.literal is None
    assert [path for path, _ in joined.pieces] == ["c/names.py", "c/main.py"]


def test_empty_pieces_do_not_make_a_join_a_literal():
    (one,) = Code({"a.py": "motor('' 'bow')"}).resolved("a.py")
    assert (one.text, one.literal) == ("bow", None)


LONG_CHAIN = "N0 = 'bow'\n" + "".join(f"N{i} = N{i - 1}\n" for i in range(1, 500)) + "motor(N499)"
DOUBLING = (
    "N0 = 'bow'\n" + "".join(f"N{i} = N{i - 1} + N{i - 1}\n" for i in range(1, 21)) + "motor(N20)"
)
BRANCHES = (
    "".join(f"N{i} = 'a' if x else 'b'\n" for i in range(20))
    + "motor("
    + "+".join(f"N{i}" for i in range(20))
    + ")"
)
JOINED = "motor(" + "+".join("'x'" for _ in range(5_000)) + ")"


@pytest.mark.parametrize(
    ("code", "answer"),
    [
        (LONG_CHAIN, "[it leads through too many names]"),
        (DOUBLING, "[it is put together from too many pieces]"),
        (BRANCHES, "[it is put together in too many ways]"),
        (JOINED, "x" * 5_000),
    ],
    ids=["chain", "doubling", "branches", "joined"],
)
def test_following_ends(code, answer):
    assert Code({"a.py": code}).answers("a.py") == [answer]


def test_a_long_chain_leaves_short_ones_known():
    code = Code({"a.py": LONG_CHAIN + "\nmotor(N3)"})
    assert code.answers("a.py") == ["[it leads through too many names]", "bow"]


def test_files_that_import_all_of_each_other_end():
    names = [f"m{i}" for i in range(12)]
    stars = {f"c/{own}.py": "".join(f"from {n} import *\n" for n in names) for own in names}
    code = Code(
        {"c/main.py": "from m0 import *\nmotor(N)\nmotor(M)", **stars, "c/m9.py": "M = 'bow'"}
    )
    unknown, known = code.answers("c/main.py")
    assert unknown.startswith("[")
    assert known == "bow"


def test_a_cycle_hides_nothing_from_a_later_question():
    code = Code(
        {
            "c/main.py": "from a import M\nimport b\nmotor(M)\nmotor(b.M)",
            "c/a.py": "from c import *\nfrom b import *",
            "c/b.py": "from a import *",
            "c/c.py": "M = 'bow'",
        }
    )
    assert code.answers("c/main.py") == ["bow", "bow"]


def test_a_java_constant_that_is_missing_comes_with_the_nearest():
    names = 'package c; class Names { static class K { static final String BLADE = "b"; } }'
    code = "package c; import c.Names.K; class Main { void f() { motor(K.BLAD); } }"
    answers = Code({"c/Main.java": code, "c/Names.java": names}).answers("c/Main.java")
    assert answers == ["[c/Names.java has no `K.BLAD`; the nearest is `BLADE`]"]


def test_what_a_base_lacks_may_be_a_name_further_out():
    """A class of another file that was read has not every word that its subclasses use."""
    files = {
        "Base.java": "class Base { int x; }",
        "Names.java": 'class Names { static final String N = "bow"; }',
        "Main.java": "class Main extends Base { void f() { motor(Names.N); motor(Base.M); } }",
    }
    lacks = "[Base.java has no `Base.M`; its spelling may be wrong]"
    assert Code(files).answers("Main.java") == ["bow", lacks]
    files = {
        "base.py": "class Base:\n def f(self): pass",
        "main.py": "from base import Base\nclass Main(Base):\n def g(self): motor(self.M)",
    }
    assert Code(files).answers("main.py") == [
        "[base.py has no `Base.M`; its spelling may be wrong]"
    ]
