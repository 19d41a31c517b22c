"""Which places of a Java file are look-ups, and what of which kind they ask for."""

from __future__ import annotations

import pytest

from namegen.model.facts import PASSED_ON
from namegen.model.workspaces import LookupRule
from tests.languages.asking import (
    ALL,
    BY_ARGUMENT,
    BY_DECLARATION,
    BY_TYPE,
    KINDS,
    MOTOR,
    ON_BOAT,
    Code,
    java,
)

PAIR = LookupRule("call", "drive", name_at=(0, 2))
NEW = LookupRule("new", "Motor")
FIT = LookupRule("annotation", "Fit", name_key="name")
PLAIN_FIT = LookupRule("annotation", "Fit")


PASSED = f"[{PASSED_ON}]"


def inside(statement: str) -> str:
    """Return a class whose one method holds the statement."""
    return f"class Main {{ void run() {{ {statement} }} }}"


FOUND = [
    ('boat.motor("bow");', MOTOR, ["bow"]),
    ('motor("bow");', MOTOR, ["bow"]),
    ('this.boat.motor("bow");', ON_BOAT, ["bow"]),
    ('crew().boat().motor("bow");', ON_BOAT, ["bow"]),
    ('boats[0].motor("bow");', LookupRule("call", "motor", on="boats"), ["bow"]),
    ('ship.motor("bow");', ON_BOAT, []),
    ('motor("bow");', ON_BOAT, []),
    ('boat.motors("bow");', MOTOR, []),
    ("boat.motor();", MOTOR, []),
    ('boat /* a */ . motor ( /* "x" */ "bow" );', MOTOR, ["bow"]),
    ('// boat.motor("bow")', MOTOR, []),
    ('String s = "motor(1)";', MOTOR, []),
    ('group("a", N, "b");', ALL, ["a", "[`N` is not defined in code that was read]", "b"]),
    ('drive("a", 1, "b");', PAIR, ["a", "b"]),
    ('motor(new String[] {"a", "b"});', MOTOR, ["a", "b"]),
    ('motor(List.of("a", "b"));', MOTOR, ["a", "b"]),
    ('motor(java.util.Arrays.asList("a"));', MOTOR, ["a"]),
    ('motor(fast ? "a" : "b");', MOTOR, ["a", "b"]),
    ('new Motor("bow");', NEW, ["bow"]),
    ('new lib.Motor("bow", 1) { };', NEW, ["bow"]),
    ('new Motor<Small>("bow");', NEW, ["bow"]),
    ('new Motor("bow");', LookupRule("new", "Motor", on="lib"), []),
    ('new lib.Motor("bow");', LookupRule("new", "Motor", on="lib"), ["bow"]),
    ('Motor("bow");', NEW, []),
    ('@Fit("bow") Motor m;', PLAIN_FIT, ["bow"]),
    ('@Fit("bow") Motor m;', FIT, ["bow"]),
    ('@Fit(name = "bow", size = 1) Motor m;', FIT, ["bow"]),
    ('@Fit(name = {"a", "b"}) Motor m;', FIT, ["a", "b"]),
    ('@Fit(value = "bow") Motor m;', PLAIN_FIT, ["bow"]),
    ('@Fit(size = "bow") Motor m;', FIT, []),
    ("@Fit Motor m;", FIT, []),
    ('@lib.Fit("bow") Motor m;', PLAIN_FIT, ["bow"]),
    ('@lib.Fit("bow") Motor m;', LookupRule("annotation", "Fit", on="lib"), ["bow"]),
    ('@Fit("bow") Motor m;', LookupRule("annotation", "Fit", on="lib"), []),
    ("names.map(boat::motor);", MOTOR, [PASSED]),
    ("names.map(this::<Small>motor);", MOTOR, [PASSED]),
    ("names.map(crew().boat::motor);", ON_BOAT, [PASSED]),
    ("names.map(ship::motor);", ON_BOAT, []),
    ("names.map(boat::motors); names.map(motor::stop);", MOTOR, []),
    ("names.map(Motor::new);", NEW, [PASSED]),
    ("names.map(lib.Motor<Small>::new);", NEW, [PASSED]),
    ("names.map(lib.Motor::new);", LookupRule("new", "Motor", on="lib"), [PASSED]),
    ("names.map(Motor::new);", LookupRule("new", "Motor", on="lib"), []),
    ("names.map(Motor::find);", NEW, []),
]


@pytest.mark.parametrize(("code", "rule", "names"), FOUND)
def test_look_ups_are_found(code, rule, names):
    assert java(inside(code), rule) == names


CONSTRUCTED = [
    ('class A extends Motor { A() { super("bow"); } A(int n) { super("stern"); } }', NEW, 2),
    ('class A extends lib.Motor<Small> { A() { super("bow"); } }', NEW, 1),
    (
        'class A extends lib.Motor { A() { super("bow"); } }',
        LookupRule("new", "Motor", on="lib"),
        1,
    ),
    ('class A extends Motor { A() { super("bow"); } }', LookupRule("new", "Motor", on="lib"), 0),
    ('class A extends Motor { A() { this("bow"); } A(String n) { } }', NEW, 0),
    ('class A extends Other { A() { super("bow"); } Motor m; }', NEW, 0),
    ('class A extends Motor { class B extends C { B() { super("bow"); } } }', NEW, 0),
    ('class Motor { Motor() { this("bow"); } Motor(String n) { } }', NEW, 1),
    ('class Motor extends Other { Motor() { super("bow"); } }', NEW, 0),
    ('record Motor(String n) { Motor() { this("bow"); } }', NEW, 1),
    ('enum Motor { A("bow"), B("stern") { }; Motor(String n) { } }', NEW, 2),
    ('enum Motor { A("bow"), B; Motor(String n) { } Motor() { this("stern"); } }', NEW, 2),
    ('enum Other { A("bow"); Motor m; }', NEW, 0),
]


@pytest.mark.parametrize(("code", "rule", "count"), CONSTRUCTED)
def test_constructors_that_are_called_without_new_are_look_ups(code, rule, count):
    assert java(code, rule) == ["bow", "stern"][:count]


def test_static_import_gives_a_bare_call_its_receiver():
    code = "import static club.boat.motor;\n" + inside('motor("bow");')
    assert java(code, ON_BOAT) == ["bow"]
    assert java(code.replace("boat.motor", "ship.motor"), ON_BOAT) == []
    assert java(code.replace("boat.motor", "boat.*"), ON_BOAT) == ["bow"]


@pytest.mark.parametrize(
    ("code", "rule", "kind"),
    [
        ('boat.get(Motor.class, "a");', BY_ARGUMENT, "motor"),
        ('boat.get(lib.Servo.class, "a");', BY_ARGUMENT, "servo"),
        ('boat.get(Lamp.class, "a");', BY_ARGUMENT, None),
        ('boat.<Motor>get("a");', BY_TYPE, "motor"),
        ('boat.<lib.Servo>get("a");', BY_TYPE, "servo"),
        ('boat.get("a");', BY_TYPE, None),
        ('Motor m = boat.get("a");', BY_DECLARATION, "motor"),
        ('lib.Motor m = boat.get("a");', BY_DECLARATION, "motor"),
        ('final Box<Servo> m = boat.get("a");', BY_DECLARATION, "servo"),
        ('Motor m; m = boat.get("a");', BY_DECLARATION, "motor"),
        ('var m = (Motor) boat.get("a");', BY_DECLARATION, "motor"),
        ('var m = boat.get("a");', BY_DECLARATION, None),
        ('this.stern = boat.get("a"); } Servo stern; {', BY_DECLARATION, "servo"),
    ],
)
def test_kind_that_is_asked_for(code, rule, kind):
    (site,) = Code({"Main.java": inside(code)}, [rule]).sites("Main.java")
    assert site.kind == kind


def test_kind_of_an_annotated_field():
    rule = LookupRule("annotation", "Fit", kind_by="declared-type", kinds=KINDS)
    code = 'class Main { @Fit("a") private Motor bow; void f(@Fit("b") Servo s) { } }'
    sites = Code({"Main.java": code}, [rule]).sites("Main.java")
    assert [(site.kind, site.holder) for site in sites] == [("motor", "bow"), ("servo", "s")]


@pytest.mark.parametrize(
    ("code", "holder"),
    [
        ('Motor bow = motor("a");', "bow"),
        ('this.bow = (Motor) (motor("a"));', "bow"),
        ('bow = motor("a");', "bow"),
        ('try (Motor bow = motor("a")) { }', "bow"),
        ('f(motor("a"));', None),
        ('Motor[] all = {motor("a")};', None),
        ('x = motor("a").speed();', None),
    ],
)
def test_what_a_device_is_put_into(code, holder):
    (site,) = Code({"Main.java": inside(code)}).sites("Main.java")
    assert site.holder == holder


def test_scope_and_parameter():
    code = "class A { class B { Motor fetch(String n) { return () -> motor(n); } } }"
    (site,) = Code({"A.java": code}).sites("A.java")
    assert (site.scope, site.parameter) == (("A", "B", "fetch"), "fetch")


def test_a_name_put_together_with_a_parameter_is_not_the_parameter():
    (site,) = Code({"A.java": 'class A { void f(String n) { motor(n + "x"); } }'}).sites("A.java")
    assert site.parameter is None


BY_KEYWORD = "[it is given by the keyword `size`, which the look-up row does not name]"


def test_a_name_by_an_element_that_the_rule_omits_is_not_overlooked():
    assert java(inside('@Fit(size = "bow") Motor m;'), PLAIN_FIT) == [BY_KEYWORD]
    assert java(inside("@Fit(size = 3, on = true) Motor m;"), PLAIN_FIT) == []
    named = LookupRule("annotation", "Fit", name_key="size")
    assert java(inside('@Fit(size = "bow") Motor m;'), PLAIN_FIT, named) == ["bow"]


@pytest.mark.parametrize(
    ("code", "function", "at"),
    [
        ("Motor wheel(String n) { return boat.motor(n); }", "wheel", 0),
        ("Motor wheel(Boat b, final String n) { return b.motor(n); }", "wheel", 1),
        ("Motor wheel(Main this, Boat b, String n) { return b.motor(n); }", "wheel", 1),
        ("Motor wheel(Boat b, String... n) { return b.motor(n); }", "wheel", None),
        ("Main(Boat b, int i, String n) { b.motor(n); }", "Main", 2),
    ],
)
def test_which_argument_fills_the_parameter(code, function, at):
    (site,) = Code({"Main.java": f"class Main {{ {code} }}"}).sites("Main.java")
    assert (site.parameter, site.parameter_at, site.parameter_key) == (function, at, None)


WRAPPER = (
    'class A { Motor wheel(Boat b, String n) { return b.motor(n); } Motor m = wheel(b, "x"); }'
)
CLASS = 'class A { A(Boat b, String n) { b.motor(n); } A a = new A(b, "x"); }'


@pytest.mark.parametrize(
    ("code", "rule", "names"),
    [
        (WRAPPER, LookupRule("call", "wheel", name_at=(1,)), ["x"]),
        (CLASS, LookupRule("new", "A", name_at=(1,)), ["x"]),
        (WRAPPER, LookupRule("new", "A", name_at=(1,)), ["[it is a parameter of `wheel`]"]),
    ],
)
def test_inside_a_method_that_is_declared_its_parameter_is_no_look_up(code, rule, names):
    assert java(code, MOTOR, rule) == names
