"""What the attributes of objects are that Python code makes; each program is run as well."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import NamedTuple

import pytest

from namegen.model.workspaces import LookupRule
from tests.languages.asking import Code, python

ALL_NAMES = LookupRule("call", "motor", name_at="rest")

GIVEN = "[it is given when the object is made]"
PART = "@dataclass\nclass Part:\n name: str\n side: str = 'left'\n port: object = None\n"
ARM = (
    "class Arm:\n def __init__(self, name, side='left'):\n  self.name = name\n  self.side = side\n"
)
KNOWN = [
    ("class A: pass\nclass B(A):\n N: str = 'a'\n def f(self): motor(self.N)\nB().f()", ["a"]),
    (PART + "p = Part('a')\nmotor(p.name, p.side)", ["a", "left"]),
    (PART + "p = Part(side='right', name='a')\nmotor(p.name, p.side)", ["a", "right"]),
    (PART + "p = Part(port=['x', 'y'], name='a')\nmotor(p.port[1])", ["y"]),
    (PART + "class All:\n BOW = Part('a')\nmotor(All.BOW.name)", ["a"]),
    (PART + "class Boat:\n def __init__(self): self.bow = Part('a')\n"
     " def go(self): motor(self.bow.name)\nBoat().go()", ["a"]),
    ("class P(NamedTuple):\n name: str\n port: int = 1\np = P('a')\nmotor(p.name)", ["a"]),
    (ARM + "a = Arm('a')\nmotor(a.name, a.side)", ["a", "left"]),
    (ARM + "a = Arm(side='b', name='a')\nmotor(a.name, a.side)", ["a", "b"]),
    ("N = 'z'\nclass A:\n N = 'a'\n def __init__(self, n=N): self.n = n\n"
     "a = A()\nmotor(a.n)", ["a"]),
    ("class A:\n N = 'a'\n @classmethod\n def f(cls): motor(cls.N)\nA.f()", ["a"]),
    ("class A:\n n = 'a'\nclass B:\n n = 'b'\nb = B()\nb.n = 'z'\nmotor(A.n)", ["a"]),
    ("class A:\n n = 'a'\nclass B:\n n = 'b'\nB.n = 'z'\na = A()\nmotor(a.n)", ["a"]),
]  # fmt: skip
UNKNOWN = [
    "def fill(n): n.append('z')\nclass B:\n def __init__(self, n):\n  fill(n)\n  self.n = n\n"
    "b = B(['a'])\nfor n in b.n: motor(n)",
    "def twist(f): return lambda self, n: f(self, n + 'z')\n"
    "class A:\n @twist\n def __init__(self, n): self.n = n\na = A('a')\nmotor(a.n)",
    "def twist(kept):\n return lambda n: kept(n + 'z')\n"
    "@twist\nclass A:\n def __init__(self, n): self.n = n\na = A('a')\nmotor(a.n)",
    PART + " def __post_init__(self): object.__setattr__(self, 'name', 'z')\n"
    "p = Part('a')\nmotor(p.name)",
    "class N(str):\n def __new__(cls, n): return str.__new__(cls, n.upper())\nmotor(N('a'))",
    PART + "p = Part(*['a'])\nmotor(p.name)",
    PART + "class Fin(Part): pass\np = Fin('a')\nmotor(p.side)\np = Fin('a', 'b')",
    PART + "@dataclass\nclass Fin(Part):\n tip: str = 'c'\np = Fin('a', 'b')\nmotor(p.side, p.tip)",
    PART + "class Fin(Part):\n def __init__(self): super().__init__('a', 'b')\n"
    "p = Fin()\nmotor(p.side)",
    PART + " def go(self): motor(self.side)\nPart('a', 'b').go()",
    PART + "p = Part('a')\np.name = 'z'\nmotor(p.name)",
    ARM.replace("  self.name", "  name += 'z'\n  self.name") + "a = Arm('a')\nmotor(a.name)",
    ARM + "a = Arm('a')\na.name = 'z'\nmotor(a.name)",
    "class A:\n N = 'a'\n @staticmethod\n def f(a): motor(a.N)\nclass B: N = 'b'\nA.f(B)",
    "class A:\n n = 'a'\nclass B(A): pass\nb = B()\nb.n = 'z'\nmotor(b.n)",
    "class A:\n n = 'a'\nclass B(A):\n def f(self): motor(self.n)\nA.n = 'z'\nB().f()",
]


def ran(program: str) -> list[str]:
    """Return what motor is given when a program runs."""
    seen: list[str] = []
    world = {"dataclass": dataclass, "field": field, "NamedTuple": NamedTuple}
    world |= {"__name__": __name__, "motor": lambda *names: seen.extend(names)}
    exec(compile(program, "<program>", "exec", dont_inherit=True), world)
    return seen


@pytest.mark.parametrize(("program", "texts"), KNOWN)
def test_what_an_object_is_given_is_known(program: str, texts: list[str]):
    assert ran(program) == texts == python(program, ALL_NAMES)


@pytest.mark.parametrize("program", UNKNOWN)
def test_what_may_be_given_otherwise_is_not(program: str):
    assert ran(program)
    for answer, text in zip(python(program, ALL_NAMES), ran(program), strict=False):
        assert answer.startswith("[") or answer == text
    assert any(answer.startswith("[") for answer in python(program, ALL_NAMES))


def test_an_object_of_a_class_of_another_file():
    part = "from dataclasses import dataclass\n" + PART
    use = "from part import Part\np = Part('a')\nmotor(p.name)\nmotor(p.side)\nmotor(p.prot)\n"
    code = Code({"part.py": part, "main.py": use})
    assert code.answers("main.py") == [
        GIVEN, GIVEN, "[part.py has no `Part.prot`; the nearest is `port`]"
    ]  # fmt: skip
