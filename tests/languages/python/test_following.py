"""A list that is changed under another name is not known; one that is only read is.

What the programs do is what CPython does with them: each is run as well.
"""

from __future__ import annotations

import copy

import pytest

from tests.languages.asking import python

CHANGED = [
    "T = {'d': {'x': 'a'}}\nT['d']['x'] = 'z'\nmotor(T['d']['x'])",
    "T = {'d': ['a']}\nT.get('d').append('z')\nmotor(*T['d'])",
    "T = [['a']]\nfor row in T: row[0] = 'z'\nmotor(T[0][0])",
    "T = {'d': ['a']}\nfor key, row in T.items(): row[0] = 'z'\nmotor(T['d'][0])",
    "T = [['a']]\n[row.clear() for row in T]\nmotor(*T[0])",
    "T = [['a']]\nfirst, *rest = T\nfirst[0] = 'z'\nmotor(T[0][0])",
    "T = [['a']]\nfor place, row in enumerate(T): row[0] = 'z'\nmotor(T[0][0])",
    "T = [['a']]\nU = T.copy()\nU[0][0] = 'z'\nmotor(T[0][0])",
    "T = [['a']]\nU = [*T]\nU[0][0] = 'z'\nmotor(T[0][0])",
    "T = ['a']\nU = [T]\nU[0][0] = 'z'\nmotor(T[0])",
    "T = ['a']\nU = []\nU.append(T)\nU[0][0] = 'z'\nmotor(T[0])",
    "T = ['a']\nU = {}\nU['t'] = T\nU['t'][0] = 'z'\nmotor(T[0])",
    "T = U = ['a']\nU[0] = 'z'\nmotor(T[0])",
    "T = ['a', 'b']\nT[0], T[1] = T[1], T[0]\nmotor(T[0])",
    "T = ['a']\nU = T\nU += ['z']\nmotor(*T)",
    "T = ['a']\ndef fill(names): names[0] = 'z'\nfill(T)\nmotor(T[0])",
    "T = ['a']\ndef fill(*, names): names[0] = 'z'\nfill(names=T)\nmotor(T[0])",
    "T = ['a']\ndef fill(*lists): lists[0][0] = 'z'\nfill(T)\nmotor(T[0])",
    "T = ['a']\ndef fill(names=T): names[0] = 'z'\nfill()\nmotor(T[0])",
    "T = ['a']\ndef get(): return T\nget()[0] = 'z'\nmotor(T[0])",
    "T = ['a']\nclass K:\n def fill(self, names): names[0] = 'z'\nK().fill(T)\nmotor(T[0])",
    "T = ['a']\nclass K:\n def __init__(self, names): self.n = names\n"
    "k = K(T)\nk.n[0] = 'z'\nmotor(T[0])",
    "T = ['a']\ndef f():\n global U\n U = T\nf()\nU[0] = 'z'\nmotor(T[0])",
    "T = {'a'}\nT.add('z')\nmotor(*T)",
    "T = [['a']]\nfirst = max(T)\nfirst[0] = 'z'\nmotor(T[0][0])",
    "T = [['a']]\nU = copy.copy(T)\nU[0][0] = 'z'\nmotor(T[0][0])",
    "class K:\n N = 'a'\n def f(self): type(self).N = 'z'\n def g(self): motor(self.N)\n"
    "k = K()\nk.f()\nk.g()",
]
KEPT = [
    "T = {'d': {'x': 'a'}}\nprint(T['d']['x'])\nmotor(T['d']['x'])",
    "T = [['a']]\nU = list(T)\nU[0] = ['z']\nmotor(T[0][0])",
    "T = [['a']]\nU = T[:]\nU.append(['z'])\nmotor(T[0][0])",
    "T = ['a']\nfor name in T: name += 'z'\nmotor(T[0])",
    "T = ['a']\nU = [T]\nU.append(['z'])\nmotor(T[0])",
    "T = ['a']\ndef show(names): print(len(names), names[0])\nshow(T)\nmotor(T[0])",
    "T = ['a']\ndef copied(names):\n mine = list(names)\n mine[0] = 'z'\ncopied(T)\nmotor(T[0])",
    "T = ['a']\ndef f(names, more): more[0] = 'z'\nf(T, ['b'])\nmotor(T[0])",
    "T = ['a']\ndef f():\n U = T\n print(U)\nU = []\nU.append('z')\nf()\nmotor(T[0])",
    "T = U = 'a'\nU = 'z'\nmotor(T)",
    "class K:\n def __init__(self): self.T = ['a']\n def f(self, T): T.append('z')\n"
    " def g(self): motor(self.T[0])\nk = K()\nk.f([])\nk.g()",
]


def ran(program: str) -> list[str]:
    """Return what motor is given when a program runs."""
    seen: list[str] = []
    world = {"motor": lambda *names: seen.extend(names), "print": lambda *_: None, "copy": copy}
    exec(program, world)
    return seen


@pytest.mark.parametrize("program", CHANGED)
def test_a_change_by_another_name_is_seen(program: str):
    assert ran(program) != ["a"]
    assert all(answer.startswith("[") for answer in python(program))


@pytest.mark.parametrize("program", KEPT)
def test_a_list_that_is_only_read_or_copied_is_known(program: str):
    assert ran(program) == ["a"] == python(program)
