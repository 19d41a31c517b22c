"""What a name of a Python file stands for, told by the look-up that it reaches."""

from __future__ import annotations

import pytest

from tests.languages.asking import Code, python

MORE_THAN_ONCE = "[`N` is assigned more than once]"
TAKEN = "[it is taken out of a table]"
NOT_WRITTEN_OUT = "[it runs over values that are not written out]"
RUN_TIME = "[it is made at run time]"

HANDED_ON = "[what it runs over is not known: it may be changed through another name]"
OVERRIDDEN = "[a class that is derived may give another one]"
FOLLOWED = [
    ("N = 'bow'\nmotor(N)", ["bow"]),
    ("N: Final[str] = 'bow'\nmotor(N)", ["bow"]),
    ("N: str\nN = 'bow'\nmotor(N)", ["bow"]),
    ("M = N = 'bow'\nmotor(M); motor(N)", ["bow", "bow"]),
    ("A, N = 1, 'bow'\nmotor(N)", ["bow"]),
    ("SIDE = 'bow'\nmotor(SIDE + 'Thruster')", ["bowThruster"]),
    ("SIDE = 'bow'\nmotor(f'{SIDE}Thruster')", ["bowThruster"]),
    ("motor('bow' 'Thr' f'ust{\"er\"}')", ["bowThruster"]),
    ("motor('a' + ('b' + 'c'))", ["abc"]),
    ("motor(f'{{bow}}')", ["{bow}"]),
    ("motor(rf'\\{\"x\"}')", ["\\x"]),
    ("motor(str('bow'))", ["bow"]),
    ("X = NewType('X', str)\nmotor(X('bow'))", ["bow"]),
    ("X = typing.NewType('X', str)\nclass K:\n N: Final = X('bow')\nmotor(K.N)", ["bow"]),
    ("class X(str): pass\nmotor(X('bow'))", ["bow"]),
    # classes
    ("class K:\n N = 'bow'\nmotor(K.N)", ["bow"]),
    ("class K:\n class L:\n  N = 'bow'\nmotor(K.L.N)", ["bow"]),
    ("class K:\n N = 'bow'\n m = motor(N)", ["bow"]),
    ("N = 'stern'\nclass K:\n N = 'bow'\n def f(self): motor(N); motor(self.N)", ["stern", "bow"]),
    ("class K:\n N = 'bow'\n @classmethod\n def f(cls): motor(cls.N)", ["bow"]),
    ("class K:\n def __init__(self):\n  self.n = 'bow'\n def f(self): motor(self.n)", ["bow"]),
    (
        "N = 'a'\nclass K:\n motor(N)\n N = 'b'",
        ["[the word is another name further up in the block]"],
    ),
    ("N = 'a'\nclass K:\n motor(N)\n def f(self): N = 'b'", ["a"]),
    ("class B:\n N = 'bow'\nclass K(B): pass\nmotor(K.N)", ["bow"]),
    ("class B:\n N = 'bow'\nclass K(B):\n def f(self): motor(self.N)", ["bow"]),
    ("class K:\n N = 'bow'\nk = K()\nmotor(k.N)", ["bow"]),
    ("class K:\n N = 'bow'\nL = K\nmotor(L.N)", ["bow"]),
    ("class E(Enum):\n N = 'bow'\nmotor(E.N.value)", ["bow"]),
    ("class E(StrEnum):\n N = 'bow'\nmotor(E.N)", ["bow"]),
    ("class E(str, enum.Enum):\n N = 'bow'\nmotor(E.N)", ["bow"]),
    # functions, loops, conditions
    ("N = 'stern'\ndef f():\n N = 'bow'\n motor(N)", ["bow"]),
    ("def f():\n N = 'bow'\n def g(): motor(N)", ["bow"]),
    ("def g():\n N = 'stern'\ndef f():\n N = 'bow'\n motor(N)", ["bow"]),
    ("def f():\n global N\n N = 'bow'\nmotor(N)", ["bow"]),
    ("for n in ('a', 'b'): motor(n)", ["a", "b"]),
    ("ALL = ['a', 'b']\nfor n in ALL: motor(n)", ["a", "b"]),
    ("[motor(n) for n in ('a', 'b')]", ["a", "b"]),
    ("A = ['a']\nB = ['b']\nfor n in (A if fast else B): motor(n)", ["a", "b"]),
    ("A = B = C = D = E = F = ['a']\nG = F\nfor n in G: motor(n)", ["a"]),
    ("for m in (('a', 'b'), ['c']):\n for n in m: motor(n)", ["a", "b", "c"]),
    ("class K:\n ALL = ['a', 'b']\nfor n in K.ALL: motor(n)", ["a", "b"]),
    ("N = 'a' if fast else 'b'\nmotor(N)", ["a", "b"]),
    ("for n in ('a', 'b'): setattr(boat, n, motor(n))", ["a", "b"]),
    # tables and lists
    ("T = {'x': 'a', 1: 'b'}\nmotor(T['x']); motor(T[1])", ["a", "b"]),
    ("T = {'x': 'a', 'x': 'b'}\nmotor(T['x'])", ["b"]),
    ("T = ['a', 'b']\nmotor(T[0]); motor(T[-1])", ["a", "b"]),
    ("T = {'m': {'x': 'a'}, 'n': ('b', 3)}\nmotor(T['m']['x']); motor(T['n'][0])", ["a", "b"]),
    ("N = 'a'\nT = {'x': N}\nU = T\nmotor(U['x'])", ["a"]),
    ("class K:\n T = {'x': 'a'}\n def f(self): motor(self.T['x'])", ["a"]),
    ("class K:\n def __init__(self): self.t = ['a']\n def f(self): motor(self.t[0])", ["a"]),
    ("class E(Enum):\n N = 'a'\nmotor(E['N'].value)", ["a"]),
    ("T = {'x': 'a', 'y': 'b'}\nfor n in T.values(): motor(n)", ["a", "b"]),
    ("T = {'a': 1, 'b': 2}\nfor n in T: motor(n)", ["a", "b"]),
    ("T = {'a': 1}\nfor n in T.keys(): motor(n)", ["a"]),
    ("for n, speed in {'a': 1, 'b': 2}.items(): motor(n)", ["a", "b"]),
    ("K = 'x'\nT = {'x': 'a', K: 'b'}\nmotor(T['x'])", [TAKEN]),
    ("K = 'x'\nT = {K: 'b', 'x': 'a'}\nmotor(T['x'])", ["a"]),
    ("T = ['a']\nmotor(T.pop())", ["[it is made at run time by `pop()`]"]),
    ("P = ('a', 1)\nn, port = P\nmotor(n)", ["a"]),
    ("T = [('a', 1), ('b', 2)]\nfor row in T:\n n, port = row\n motor(n)", ["a", "b"]),
    ("T = {'x': ('a', ('b', 1))}\nm, (n, port) = T['x']\nmotor(m); motor(n)", ["a", "b"]),
    ("P = ('a', 1)\nn, *rest = P\nmotor(n)", ["[it is unpacked at run time]"]),
    ("n, m = pair()\nmotor(n)", ["[it is unpacked at run time]"]),
    # functions that always give the same
    ("def n(): return 'a'\nmotor(n())", ["a"]),
    ("def n():\n 'Why.'\n return S + 'b'\nS = 'a'\nmotor(n())", ["ab"]),
    ("def n(): return ['a', 'b']\nfor x in n(): motor(x)", ["a", "b"]),
    ("class K:\n S = 'a'\n def n(self): return self.S\nk = K()\nmotor(k.n())", ["a"]),
    ("class K:\n @staticmethod\n def n(): return 'a'\nmotor(K.n())", ["a"]),
    (
        "class K:\n @property\n def n(self): return 'a'\nmotor(K().n)\nk = K()\nmotor(k.n)",
        [RUN_TIME, "a"],
    ),
    (
        "class B:\n def n(self): return 'a'\n def f(self): motor(self.n())\n"
        "class K(B):\n def n(self): return 'b'",
        [OVERRIDDEN],
    ),
    ("def n():\n yield 'a'\nmotor(n())", ["[it is made at run time by `n()`]"]),
    ("async def n(): return 'a'\nmotor(n())", ["[it is made at run time by `n()`]"]),
    ("@wrap\ndef n(): return 'a'\nmotor(n())", ["[it is made at run time by `n()`]"]),
    ("def n(): return 'a'\nn = x\nmotor(n())", ["[`n()` is defined more than once]"]),
    ("def n(): return 'a'\nmotor(n)", ["[it is a function]"]),
    ("n = 'a'\nmotor(n())", ["[it is made at run time by `n()`]"]),
    ("T = [('a', 1), ('b', 2)]\nfor n, port in T: motor(n)", ["a", "b"]),
    ("T = [{'n': 'a'}, {'n': 'b'}]\nfor row in T: motor(row['n'])", ["a", "b"]),
    ("T = {'x': {'n': 'a'}}\nfor k, row in T.items(): motor(row['n'])", ["a"]),
    ("T = {'x': ['a', 'b']}\nfor row in T.values():\n for n in row: motor(n)", ["a", "b"]),
    ("for i, n in enumerate(['a', 'b']): motor(n)", ["a", "b"]),
    ("for i, (n, port) in enumerate([('a', 1)]): motor(n)", ["a"]),
    ("for n, m in zip(['a'], ['b']): motor(n); motor(m)", ["a", "b"]),
    ("for n in sorted(['b', 'a']): motor(n)", ["b", "a"]),
    ("for n in ['a']: motor(n)\nfor n in ['b']: motor(n)", ["a", "b"]),
    ("def f():\n for n in ['a']: motor(n)\n for n in ['b']: motor(n)", ["a", "b"]),
    ("T = {'x': 'a'}\n[motor(n) for x, n in T.items()]", ["a"]),
    ("T = {'x': 'a'}\ndef f(T):\n T['x'] = 1\nmotor(T['x'])", ["a"]),
    ("for s in ('a', 'b'): motor(s + 'X')", ["aX", "bX"]),
    ("ALL = ('a', 'b')\nmotor(ALL)", ["a", "b"]),
    ("if (n := 'bow'): motor(n)", ["bow"]),
    # not known
    ("N = 'a'\nN = 'b'\nmotor(N)", [MORE_THAN_ONCE]),
    ("T = {'x': 'a'}\nmotor(T['y'])", ["[the table has no `'y'`]"]),
    ("T = ['a']\nmotor(T[1])", ["[the list has no element 1]"]),
    ("T = ['a'] + ['b']\nmotor(T)", ["[it is put together from lists]"]),
    ("T = {'x': 'a', **other}\nmotor(T['x'])", [TAKEN]),
    ("T = {'x': 'a'}\nmotor(T[key])", [TAKEN]),
    ("T = {f'{x}': 'a'}\nmotor(T['x'])", [TAKEN]),
    ("class K: pass\nmotor(K['x'])", [TAKEN]),
    ("T = {'x': 'a'}\nT['x'] = y\nmotor(T['x'])", [MORE_THAN_ONCE.replace("N", "T['x']")]),
    ("T = {'x': 'a'}\ndef f(): T['x'] = y\nmotor(T['x'])", [MORE_THAN_ONCE.replace("N", "T['x']")]),
    (
        "T = {'x': 'a'}\ndef f(): T.update(y)\nmotor(T['x'])",
        [MORE_THAN_ONCE.replace("N", "T['x']")],
    ),
    ("T = ['a']\ndel T[0]\nmotor(T[0])", [MORE_THAN_ONCE.replace("N", "T[0]")]),
    ("T = ['a']\ndef f(): T.append(x)\nfor n in T: motor(n)", [NOT_WRITTEN_OUT]),
    (
        "class K:\n def __init__(self):\n  self.t = ['a']\n  self.t.append(x)\n"
        " def f(self):\n  for n in self.t: motor(n)",
        [NOT_WRITTEN_OUT],
    ),
    *(
        (f"ALL = ['a']\n{change}\nfor n in ALL: motor(n)", [HANDED_ON])
        for change in (
            "B = ALL\nB.append('b')",
            "B = C = ALL\nB[0] = 'b'",
            "B = ALL\nC = B\ndef f(): C.append('b')",
            "K.all = ALL\nK.all.append('b')",
            "def f(k): k.all = ALL\ndef g(self): self.all[0] = 'b'",
            "B = [] or ALL\nB.append('b')",
        )
    ),
    ("ALL = ['a']\nheapq.heappush(ALL, 'b')\nfor n in ALL: motor(n)", [NOT_WRITTEN_OUT]),
    *(
        (f"ALL = ['a']\n{use}\nfor n in ALL: motor(n)", ["a"])
        for use in (
            "B = ALL\nfor m in B: tell(m)",
            "def f():\n B = ALL\n for m in B: tell(m)\ndef g():\n B = []\n B.append('b')",
            "K.all = ALL",
            "T = {'x': ALL}",
            "def f(some=ALL): return some or ALL",
            "tell(ALL, *ALL, all=ALL)",
            "tell(ALL[0], ALL.index('a'), ALL == [], f'{ALL}', ALL + ['b'])",
            "if ALL and 'b' in ALL: tell(ALL or [])",
        )
    ),
    ("ALL = ('a',)\nK.all = ALL\nfor n in ALL: motor(n)", ["a"]),
    *(
        (f"class K:\n N = 'a'\n def f(self): motor(self.N)\n{change}", [MORE_THAN_ONCE])
        for change in (
            "def f(k): k.N = 'b'",
            "K.N += 'b'",
            "class L(K):\n def f(self): super().N = 'b'",
        )
    ),
    *(
        (f"class K:\n N = 'a'\n def f(self): motor(self.N)\n{derived}", [OVERRIDDEN])
        for derived in (
            "class L(K):\n N = 'b'",
            "class L(K): pass\nclass M(L):\n def f(self): self.N = 'b'",
        )
    ),
    (
        "class K:\n def __init__(self): self.n = 'a'\nclass L(K):\n n = 'b'\n"
        " def f(self): motor(self.n)",
        [OVERRIDDEN],
    ),
    ("class K:\n N = 'a'\nclass L(K):\n N = 'b'\n def f(self): motor(self.N)", ["b"]),
    (
        "class K:\n def __init__(self): self.n = None\nclass L(K):\n def __init__(self):\n"
        "  super().__init__()\n  self.n = 'b'\n def f(self): motor(self.n)",
        ["b"],
    ),
    ("class K:\n N = 'a'\n def f(self): motor(self.N)\nclass L:\n N = 'b'", ["a"]),
    (
        "class K:\n ALL = ['a']\n def f(self):\n  for n in self.ALL: motor(n)\n"
        "def f(k): k.ALL.append('b')",
        [NOT_WRITTEN_OUT],
    ),
    ("for n, m in T.items(): motor(n)", [NOT_WRITTEN_OUT]),
    ("for n, m in zip(A, B): motor(n)", [NOT_WRITTEN_OUT]),
    ("for n, m in pairs(A): motor(n)", ["[it is made at run time by `pairs()`]"]),
    ("N = 'ab'\nmotor(N[0])", [RUN_TIME]),
    ("N = 'a'\nN += 'b'\nmotor(N)", [MORE_THAN_ONCE]),
    ("N = 'a'\ndef f():\n global N\n N = 'b'\nmotor(N)", [MORE_THAN_ONCE]),
    ("try:\n from x import N\nexcept ImportError:\n N = 'a'\nmotor(N)", [MORE_THAN_ONCE]),
    ("N = N\nmotor(N)", ["[`N` is defined by itself]"]),
    ("A = B\nB = A\nmotor(A)", ["[`A` is defined by itself]"]),
    ("motor(N)", ["[`N` is not defined in code that was read]"]),
    ("motor('a' % 1)", ["[it is filled in with `%` at run time]"]),
    ("motor('{}'.format(x))", [RUN_TIME.replace("time]", "time by `format()`]")]),
    ("motor(make('a'))", ["[it is made at run time by `make()`]"]),
    ("motor(f'{x!r}')", ["[it is formatted at run time]"]),
    ("motor(f'{\"x\":>3}')", ["[it is formatted at run time]"]),
    ("motor(table['a'])", ["[it is taken out of a table]"]),
    ("motor(b'a')", ["[it is not plain text (bytes, or an escape that is not whole)]"]),
    ("motor(3)", ["[it is a number, not text]"]),
    ("motor(None)", ["[it is None]"]),
    ("with x as N: motor(N)", [RUN_TIME]),
    ("for n in range(3): motor(n)", [NOT_WRITTEN_OUT]),
    ("N = 'ab'\nfor c in N: motor(c)", [NOT_WRITTEN_OUT]),
    ("for n in ('ab' if fast else ['c']): motor(n)", [NOT_WRITTEN_OUT]),
    ("for m in ('ab',):\n for n in m: motor(n)", [NOT_WRITTEN_OUT]),
    ("for n in ('a', x()): motor(n)", ["a", "[it is made at run time by `x()`]"]),
    ("for n in (): motor(n)", ["[it runs over a list without elements]"]),
    ("ALL = ['a']\nALL.append(x)\nfor n in ALL: motor(n)", [NOT_WRITTEN_OUT]),
    ("ALL = ['a']\nALL.append(x)\nmotor(ALL)", ["[`ALL` is assigned more than once]"]),
    (
        "class E(Enum):\n N = 'a'\nmotor(E.N)",
        ["[an enum member is not text itself; its `.value` is]"],
    ),
    ("def f(N):\n motor(N + 'x')", ["[it is a parameter of `f`]"]),
    ("f = lambda n: motor(n)", ["[it is a parameter]"]),
    ("def f(): pass\nmotor(f)", ["[it is a function]"]),
    ("match x:\n case N: motor(N)", ["[it is matched at run time]"]),
    ("*N, b = x\nmotor(N)", ["[it is unpacked at run time]"]),
]


@pytest.mark.parametrize(("code", "names"), FOLLOWED)
def test_names_are_followed(code, names):
    compile(code, "<case>", "exec")
    assert python(code) == names


def test_a_method_without_its_object_and_a_class_without_members_stop_nothing():
    """``def f():`` in a class is a usual slip, and ``pass`` has no child in the tree."""
    forgotten = "class A:\n    def f():\n        x.bow = 1\nbow = 'b'\nmotor(bow)\n"
    assert python(forgotten) == ["b"]
    files = {"main.py": "from names import N\nmotor(N.BOW)\n", "names.py": "class N:\n    pass\n"}
    (why,) = Code(files).answers("main.py")
    assert "names.py has no `N.BOW`" in why


CONFIG = (
    "BOW = 'a'\nNAMES = ['a']\nROWS = [{'n': 'a'}]\nclass Config:\n bow = 'a'\ncfg = Config()\n"
)
OUTSIDE = [
    "import config\nconfig.BOW = 'z'\nmotor(config.BOW)",
    "import config\nconfig.NAMES.append('z')\nfor n in config.NAMES: motor(n)",
    "import config\nconfig.ROWS[0]['n'] = 'z'\nmotor(config.ROWS[0]['n'])",
    "import config\ndef fix(row): row['n'] = 'z'\n"
    "for row in config.ROWS:\n fix(row)\n motor(row['n'])",
    "from config import Config\nConfig.bow = 'z'\nmotor(Config.bow)",
    "from config import cfg\ncfg.bow = 'z'\nmotor(cfg.bow)",
    "from config import Config\nc = Config()\nc.bow = 'z'\nmotor(c.bow)",
    "from config import NAMES\nNAMES.append('z')\nfor n in NAMES: motor(n)",
]


@pytest.mark.parametrize("program", OUTSIDE)
def test_a_change_of_what_is_imported_is_seen(program: str):
    code = Code({"config.py": CONFIG, "main.py": program})
    assert all(answer.startswith("[") for answer in code.answers("main.py"))
    left = "\n".join(
        line for line in program.split("\n") if "'z'" not in line and "fix" not in line
    )
    assert Code({"config.py": CONFIG, "main.py": left}).answers("main.py") == ["a"]


def test_what_a_class_does_to_itself_leaves_what_is_imported_alone():
    own = "import config\nclass K:\n def f(self): self.BOW = 'z'\nmotor(config.BOW)"
    assert Code({"config.py": CONFIG, "main.py": own}).answers("main.py") == ["a"]


TWICE = "[it is imported from several places]"
SEVERAL = [
    ("from port import N\nfrom starboard import N\nmotor(N)", [TWICE]),
    ("if x: from port import N\nelse: from starboard import N\nmotor(N)", [TWICE]),
    ("def f():\n from port import N\n motor(N)\ndef g():\n from starboard import N\n motor(N)",
     [TWICE, TWICE]),
    ("def f():\n from port import N\n motor(N)\ndef g():\n from port import N, M\n motor(N)",
     ["port", "port"]),
    ("try: from port import N\nexcept ImportError: from starboard import N\nmotor(N)", ["port"]),
    ("from port import N\nfrom starboard import N as M\nmotor(N); motor(M)", ["port", "star"]),
]  # fmt: skip


@pytest.mark.parametrize(("program", "names"), SEVERAL)
def test_a_name_that_is_imported_from_several_places_is_not_known(program, names):
    files = {"port.py": "N = 'port'\nM = 'm'\n", "starboard.py": "N = 'star'\n"}
    assert Code(files | {"main.py": program}).answers("main.py") == names
