"""Which places of a Python file are look-ups, and what of which kind they ask for."""

from __future__ import annotations

import pytest

from namegen.model.facts import PASSED_ON
from namegen.model.workspaces import LookupRule
from tests.languages.asking import ALL, BY_DECLARATION, BY_TYPE, KINDS, MOTOR, ON_BOAT, Code, python

PASSED = f"[{PASSED_ON}]"
KEYWORD = LookupRule("call", "fit", name_at=(1,), name_key="name")
PAIR = LookupRule("call", "drive", name_at=(0, 1))
NEW = LookupRule("new", "Motor")
MARK = LookupRule("annotation", "uses")
TABLE = LookupRule("subscript", "devices")

FOUND = [
    # the receiver
    ("boat.motor('bow')", MOTOR, ["bow"]),
    ("motor('bow')", MOTOR, ["bow"]),
    ("self.a[0].b().motor('bow')", MOTOR, ["bow"]),
    ("boat.motor('bow')", ON_BOAT, ["bow"]),
    ("self.boat.motor('bow')", ON_BOAT, ["bow"]),
    ("self.boat().motor('bow')", ON_BOAT, ["bow"]),
    ("boats.motor('bow')", ON_BOAT, []),
    ("boat.x.motor('bow')", ON_BOAT, []),
    ("motor('bow')", ON_BOAT, []),
    ("boat.motors('bow')", MOTOR, []),
    ("boat.motor", MOTOR, []),
    ("# boat.motor('bow')\n'motor(1)'", MOTOR, []),
    ("def motor(name='bow'): pass", MOTOR, []),
    ("boat.motor()", MOTOR, []),
    ("boat . \\\n motor ( # why\n 'bow' )", MOTOR, ["bow"]),
    # which argument
    ("fit(boat, 'bow')", KEYWORD, ["bow"]),
    ("fit(boat, name='bow')", KEYWORD, ["bow"]),
    ("fit(boat, label='bow')", KEYWORD, []),
    ("fit(*both)", KEYWORD, ["[the arguments are unpacked at run time]"]),
    ("fit(boat, **both)", KEYWORD, ["[the arguments are unpacked at run time]"]),
    ("drive('port', 'starboard', 3)", PAIR, ["port", "starboard"]),
    ("group('a', 'b', *c, d=1)", ALL, ["a", "b", "[the arguments are unpacked at run time]"]),
    ("motor(('a', \"b\"))", MOTOR, ["a", "b"]),
    ("motor(['a', ['b']])", MOTOR, ["a", "b"]),
    ("motor({'a'})", MOTOR, ["a"]),
    ("motor('a' if fast else 'b')", MOTOR, ["a", "b"]),
    ("motor(n for n in x)", MOTOR, ["[it is made at run time]"]),
    # other shapes
    ("Motor('bow')", NEW, ["bow"]),
    ("lib.Motor('bow', 2)", NEW, ["bow"]),
    ("@boat.uses('bow')\ndef f(): pass", MARK, ["bow"]),
    ("boat.uses('bow')", MARK, []),
    ("devices['bow']", TABLE, ["bow"]),
    ("boat.devices['bow'].run()", TABLE, ["bow"]),
    ("devices[x]['bow']", TABLE, ["[`x` is not defined in code that was read]"]),
    ("devices('bow')", TABLE, []),
    # called by something else, or by the name of its class
    ("list(map(boat.motor, ['a', 'b']))", ON_BOAT, ["a", "b"]),
    ("N = ['a']\nlist(map(self.motor, N))", MOTOR, ["a"]),
    ("partial(boat.motor, 'a')", ON_BOAT, ["a"]),
    ("partial(fit, boat, 'a')", KEYWORD, ["a"]),
    ("partial(boat.motor)", ON_BOAT, [PASSED]),
    ("each(boat.motor)", ON_BOAT, [PASSED]),
    ("each(using=boat.motor)", ON_BOAT, [PASSED]),
    ("each(ship.motor)", ON_BOAT, []),
    ("from lib import motor\neach(motor)", MOTOR, [PASSED]),
    ("def motor(name): pass\neach(motor)", MOTOR, [PASSED]),
    ("motor = motor('a')\neach(motor)", MOTOR, ["a"]),
    ("from lib import Motor\nisinstance(x, Motor)", NEW, []),
    ("class K:\n def f(self): self.motor = x\neach(boat.motor)", ON_BOAT, []),
    ("def map(f, n): pass\nmap(boat.motor, 'a')", ON_BOAT, [PASSED]),
    ("devices.map(boat.motor, 'a')", ON_BOAT, [PASSED]),
    ("[*map(boat.motor, ['a'])]", ON_BOAT, ["a"]),
    (
        "from lib import Motor as M\nclass W(M):\n def __init__(self): super().__init__('a')",
        NEW,
        ["a"],
    ),
    ("self.motor = motor('a')\neach(self.motor)", MOTOR, ["a"]),
    ("def f(motor): each(motor)", MOTOR, []),
    ("class B(Motor):\n def __init__(self): super().__init__('a')", NEW, ["a"]),
    ("class B(lib.Motor, X):\n def __init__(self): super(B, self).__init__('a')", NEW, ["a"]),
    ("class B(X, Motor):\n def __init__(self): super().__init__('a')", NEW, []),
    ("class B(Motor):\n def __init__(self): super().run('a')", NEW, []),
    ("class B(Motor):\n def __init__(self): Motor.__init__(self, 'a')", NEW, ["a"]),
    ("class B(Motor):\n class C(X):\n  def __init__(self): super().__init__('a')", NEW, []),
    # the same function under another name
    ("from lib import motor as m\nm('bow')", MOTOR, ["bow"]),
    ("from boat import motor as m\nm('bow')", ON_BOAT, ["bow"]),
    ("from ship import motor as m\nm('bow')", ON_BOAT, []),
    ("from boat import motor\nmotor('bow')", ON_BOAT, ["bow"]),
    ("get = boat.motor\nget('bow')\nother.get('x')", ON_BOAT, ["bow"]),
]


@pytest.mark.parametrize(("code", "rule", "names"), FOUND)
def test_look_ups_are_found(code, rule, names):
    assert python(code, rule) == names


BY_ARGUMENT = LookupRule("call", "fit", kind_at=1, kinds=KINDS)


@pytest.mark.parametrize(
    ("code", "rule", "kind"),
    [
        ("motor('a')", LookupRule("call", "motor", kind="motor"), "motor"),
        ("motor('a')", MOTOR, None),
        ("fit('a', Motor)", BY_ARGUMENT, "motor"),
        ("fit('a', lib.Servo)", BY_ARGUMENT, "servo"),
        ("fit('a', 'Servo')", BY_ARGUMENT, "servo"),
        ("fit('a', Lamp)", BY_ARGUMENT, None),
        ("fit('a')", BY_ARGUMENT, None),
        ("get[Motor]('a')", BY_TYPE, "motor"),
        ("boat.get[lib.Motor]('a')", BY_TYPE, "motor"),
        ("get('a')", BY_TYPE, None),
        ("bow: Motor = get('a')", BY_DECLARATION, "motor"),
        ("bow: 'Servo' = get('a')", BY_DECLARATION, "servo"),
        ("bow: lib.Motor | None = get('a')", BY_DECLARATION, "motor"),
        ("bow: Motor | Servo = get('a')", BY_DECLARATION, None),
        ("class A:\n bow: Motor\n def f(self):\n  self.bow = get('a')", BY_DECLARATION, "motor"),
        ("bow = get('a')", BY_DECLARATION, None),
    ],
)
def test_kind_that_is_asked_for(code, rule, kind):
    (site,) = Code({"a.py": code}, [rule]).sites("a.py")
    assert site.kind == kind


@pytest.mark.parametrize(
    ("code", "holders"),
    [
        ("bow = motor('a')", ["bow"]),
        ("self.bow = motor('a')", ["bow"]),
        ("bow: M = (motor('a'))", ["bow"]),
        ("bow, stern = motor('a'), motor('b')", ["bow", "stern"]),
        ("bow, stern = motor(['a', 'b'])", ["bow", "stern"]),
        ("both = motor(['a', 'b'])", [None, None]),
        ("f(bow=motor('a'))", ["bow"]),
        ("def f(bow=motor('a')): pass", ["bow"]),
        ("if bow := motor('a'): pass", ["bow"]),
        ("bow = await motor('a')", ["bow"]),
        ("a = bow = motor('a')", ["bow"]),
        ("f(motor('a'))", [None]),
        ("x = motor('a').speed", [None]),
        ("x[motor('a')] = 1", [None]),
    ],
)
def test_what_a_device_is_put_into(code, holders):
    assert [site.holder for site in Code({"a.py": code}).sites("a.py")] == holders


def test_scope_names_classes_and_functions():
    code = "class Boat:\n def start(self):\n  return [motor('a') for _ in x]\n"
    (site,) = Code({"a.py": code}).sites("a.py")
    assert site.scope == ("Boat", "start")


@pytest.mark.parametrize(
    ("code", "function"),
    [
        ("def fetch(name): return motor(name)", "fetch"),
        ("def fetch(*, name: str = 'bow'): return motor(name)", "fetch"),
        ("class A:\n def fetch(self, name):\n  return motor(name)", "fetch"),
        ("def fetch(name):\n name = 'bow'\n motor(name)", None),
        ("def fetch(name): return motor(name + 'x')", None),
        ("motor(name)", None),
    ],
)
def test_parameter_as_a_name_tells_its_function(code, function):
    (site,) = Code({"a.py": code}).sites("a.py")
    assert site.parameter == function


BY_KEYWORD = "it is given by the keyword `name`, which the look-up row does not name"


@pytest.mark.parametrize(
    ("code", "names", "keywords"),
    [
        ("motor(name='bow')", [f"[{BY_KEYWORD}]"], ("name",)),
        ("boat.motor(name=BOW)", [f"[{BY_KEYWORD}]"], ("name",)),
        ("motor(**{'name': 'bow'})", [f"[{BY_KEYWORD}]"], ("name",)),
        ("motor(**given)", ["[the arguments are unpacked at run time]"], ()),
        ("motor('bow', label='x')", ["bow"], ()),
        ("motor(reversed=True, speed=3, on=None)", [], ()),
        ("motor()", [], ()),
    ],
)
def test_a_name_by_a_keyword_that_the_rule_omits_is_not_overlooked(code, names, keywords):
    assert python(code) == names
    assert [site.keywords for site in Code({"a.py": code}).sites("a.py")] == [keywords][
        : len(names)
    ]


def test_a_keyword_that_another_rule_names_is_found_by_that_rule():
    assert python("motor(name='bow')", MOTOR, LookupRule("call", "motor", name_key="name")) == [
        "bow"
    ]


def test_a_name_by_keyword_leaves_the_other_arguments_alone():
    rule = LookupRule("call", "wheel", name_key="name")
    assert python("wheel(boat, name='bow')", rule) == ["bow"]


@pytest.mark.parametrize(
    ("code", "at", "key"),
    [
        ("def wheel(n): motor(n)", 0, "n"),
        ("def wheel(boat, n='bow'): motor(n)", 1, "n"),
        ("def wheel(boat, n: str = 'bow'): motor(n)", 1, "n"),
        ("def wheel(boat, /, n): motor(n)", 1, "n"),
        ("def wheel(n, /, boat): motor(n)", 0, None),
        ("def wheel(boat, *, n): motor(n)", None, "n"),
        ("def wheel(boat, *rest, n=N): motor(n)", None, "n"),
        ("def wheel(*n): motor(n)", None, None),
        ("class A:\n def wheel(self, n): motor(n)", 0, "n"),
        ("class A:\n @classmethod\n def wheel(cls, n): motor(n)", 0, "n"),
        ("class A:\n @staticmethod\n def wheel(boat, n): motor(n)", 1, "n"),
        ("class A:\n def __init__(self, boat, n): motor(n)", 1, "n"),
        ("def wheel(boat, n):\n def inner(): motor(n)", 1, "n"),
    ],
)
def test_how_a_call_fills_the_parameter(code, at, key):
    (site,) = Code({"a.py": code}).sites("a.py")
    assert (site.parameter_at, site.parameter_key) == (at, key)


WRAPPER = "def wheel(boat, n): return boat.motor(n)\nwheel(b, 'bow')"
CLASS = "class Wheel:\n def __init__(self, boat, n): boat.motor(n)\nWheel(b, 'bow')"


@pytest.mark.parametrize(
    ("code", "rule", "names"),
    [
        (WRAPPER, LookupRule("call", "wheel", name_at=(1,)), ["bow"]),
        (WRAPPER, LookupRule("call", "wheel", name_at=(2,)), ["[it is a parameter of `wheel`]"]),
        (CLASS, LookupRule("new", "Wheel", name_at=(1,)), ["bow"]),
        ("def motor(n): boat.motor(n)", ON_BOAT, ["[it is a parameter of `motor`]"]),
    ],
)
def test_inside_a_function_that_is_declared_its_parameter_is_no_look_up(code, rule, names):
    rules = [rule] if rule is ON_BOAT else [MOTOR, rule]
    assert python(code, *rules) == names


def test_rules_of_other_languages_are_left_alone():
    assert python("motor('a')", LookupRule("call", "motor", languages=("java",))) == []
    assert python("motor('a')", LookupRule("call", "motor", languages=("python",))) == ["a"]
