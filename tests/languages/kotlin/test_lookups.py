"""Which places of a Kotlin file are look-ups, and what of which kind they ask for."""

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
    kotlin,
)

PAIR = LookupRule("call", "drive", name_at=(0, 2))
KEYED = LookupRule("call", "fitted", name_key="name")
NEW = LookupRule("new", "Sensor", name_at=(1,), name_key="name")
FIT = LookupRule("annotation", "Fit", name_key="name")
PLAIN_FIT = LookupRule("annotation", "Fit")
DEVICES = LookupRule("subscript", "devices")


PASSED = f"[{PASSED_ON}]"


def inside(statement: str) -> str:
    """Return a class whose one function holds the statement."""
    return f"class Main {{\n  fun run() {{\n    {statement}\n  }}\n}}\n"


FOUND = [
    ('boat.motor("bow")', MOTOR, ["bow"]),
    ('motor("bow")', MOTOR, ["bow"]),
    ('boat?.motor("bow")', ON_BOAT, ["bow"]),
    ('boat!!.motor("bow")', ON_BOAT, ["bow"]),
    ('this.boat.motor("bow")', ON_BOAT, ["bow"]),
    ('this@Main.boat.motor("bow")', ON_BOAT, ["bow"]),
    ('crew().boat().motor("bow")', ON_BOAT, ["bow"]),
    ('(boat as Boat).motor("bow")', ON_BOAT, ["bow"]),
    ('boats[0].motor("bow")', LookupRule("call", "motor", on="boats"), ["bow"]),
    ('with(boat) { motor("bow").stop() }', ON_BOAT, ["bow"]),
    ('boat.apply { motor("bow") }', ON_BOAT, ["bow"]),
    ('boat?.run { this.motor("bow") }', ON_BOAT, ["bow"]),
    ('boat.let { it.motor("bow") }', ON_BOAT, ["bow"]),
    ('boat.also { b -> b.motor("bow") }', ON_BOAT, []),
    ('ship.let { it.motor("bow") }', ON_BOAT, []),
    ('boat.let { ship.let { it.motor("bow") } }', ON_BOAT, []),
    ('boat.let { each { n -> it.motor("bow") } }', ON_BOAT, ["bow"]),
    ('boat.run { with(ship) { motor("bow") } }', ON_BOAT, []),
    ('boat.run { each { motor("bow") } }', ON_BOAT, ["bow"]),
    ('with(ship) { motor("bow") }', ON_BOAT, []),
    ('ship.motor("bow")', ON_BOAT, []),
    ('motor("bow")', ON_BOAT, []),
    ('boat.motors("bow")', MOTOR, []),
    ("boat.motor()", MOTOR, []),
    ("names.map(boat::motor)", MOTOR, [PASSED]),
    ("names.map(boat::motor)", ON_BOAT, [PASSED]),
    ("names.map(ship::motor)", ON_BOAT, []),
    ("names.map(with(boat) { ::motor })", ON_BOAT, [PASSED]),
    ("names.map(boat.let { it::motor })", ON_BOAT, [PASSED]),
    ("val find = ::motor", MOTOR, [PASSED]),
    ("names.map(boat::motors); names.map(motor::stop)", MOTOR, []),
    ("names.map(::Sensor)", NEW, [PASSED]),
    ("names.map(lib::Sensor)", LookupRule("new", "Sensor", on="lib"), [PASSED]),
    ("names.map(::Sensor)", LookupRule("new", "Sensor", on="lib"), []),
    ("if (!boat::motor.isInitialized) start()", MOTOR, []),
    ("lateinit var motor: Motor; if (::motor.isInitialized) start()", MOTOR, []),
    ("val motor = start(); watch(::motor, this::motor)", MOTOR, []),
    ('boat.`motor`("bow")', MOTOR, ["bow"]),
    ('`motor`("bow")', MOTOR, ["bow"]),
    ('boat `motor` "bow"', MOTOR, ["bow"]),
    ('val `n` = "bow"; motor(n)', MOTOR, ["bow"]),
    ('val n = "bow"; motor("$`n`er${`n`}")', MOTOR, ["bowerbow"]),
    ('val `in` = "bow"; motor("$`in`")', MOTOR, ["bow"]),
    ('val `n m` = "bow"; motor(`n m`)', MOTOR, ["bow"]),
    ('boat /* a */ . motor ( /* "x" */ "bow" )', MOTOR, ["bow"]),
    ('boat\n      .motor(\n        "bow"\n      )', MOTOR, ["bow"]),
    ('// boat.motor("bow")', MOTOR, []),
    ('/* /* */ boat.motor("bow") */', MOTOR, []),
    ('val s = "motor(1)"', MOTOR, []),
    ('val s = "has ${boat.motor("bow").name}!"', MOTOR, ["bow"]),
    ('motor("bow") { reverse() }', MOTOR, ["bow"]),
    ('val bow by lazy { boat.motor("bow") }', MOTOR, ["bow"]),
    ('boat motor "bow"', ON_BOAT, ["bow"]),
    ('ship motor "bow"', ON_BOAT, []),
    ('if (a < b && c > (d)) motor("bow")', MOTOR, ["bow"]),
    ('if (!motor("bow").busy && !ready) stop()', MOTOR, ["bow"]),
    ('val p = -motor("bow").power + 2 * -motor<Big>("stern").power', MOTOR, ["bow", "stern"]),
    ('return -motor("bow").power', MOTOR, ["bow"]),
    ('go()\n    -motor("bow").power', MOTOR, ["bow"]),
    (
        'if (x !in motor("bow") || y - motor("stern").power != +motor("third").p) z()',
        MOTOR,
        ["bow", "stern", "third"],
    ),
    ('val p = boat!!.motor("bow")!!.power', MOTOR, ["bow"]),
    ('val p = !boat.motor("bow").busy', ON_BOAT, ["bow"]),
    ('val p = !devices["bow"]', DEVICES, ["bow"]),
    ('group("a", N, "b")', ALL, ["a", "[`N` is not defined in code that was read]", "b"]),
    ('drive("a", 1, "b")', PAIR, ["a", "b"]),
    ('motor(arrayOf("a", "b"))', MOTOR, ["a", "b"]),
    ('motor(*arrayOf("a", "b"))', MOTOR, ["a", "b"]),
    ('motor(listOf("a", "b"))', MOTOR, ["a", "b"]),
    ('motor(setOf<String>("a", "b"))', MOTOR, ["a", "b"]),
    ('motor(if (fast) "a" else "b")', MOTOR, ["a", "b"]),
    ('motor(if (fast) { "a" } else { "b" })', MOTOR, ["a", "b"]),
    ('motor(when (speed) { 1 -> "a"\n else -> "b" })', MOTOR, ["a", "b"]),
    ('motor(name ?: "b")', MOTOR, ["[`name` is not defined in code that was read]", "b"]),
    ('motor("b" ?: throw Lost())', MOTOR, ["b"]),
    ('fitted(name = "bow")', KEYED, ["bow"]),
    ('fitted(1, name = "bow")', KEYED, ["bow"]),
    ('fitted("bow", size = 1)', KEYED, ["bow"]),
    ('Sensor(boat, "hull")', NEW, ["hull"]),
    ('Sensor(boat, name = "hull")', NEW, ["hull"]),
    ('lib.Sensor(boat, "hull")', NEW, ["hull"]),
    ('Sensor<Small>(boat, "hull")', NEW, ["hull"]),
    ('object : Sensor(boat, "hull") { }', NEW, ["hull"]),
    ('Sensor(boat, "hull")', LookupRule("call", "Sensor", name_at=(1,)), ["hull"]),
    ('Sensor(boat, "hull")', LookupRule("new", "Sensor", on="lib", name_at=(1,)), []),
    ('lib.Sensor(boat, "hull")', LookupRule("new", "Sensor", on="lib", name_at=(1,)), ["hull"]),
    ('devices["bow"]', DEVICES, ["bow"]),
    ('boat.devices["bow"]!!.stop()', LookupRule("subscript", "devices", on="boat"), ["bow"]),
    ('ship.devices["bow"]', LookupRule("subscript", "devices", on="boat"), []),
]


MADE = LookupRule("new", "Motor")
CONSTRUCTED = [
    ('class A : Motor("bow")', MADE, 1),
    (
        'class A : Motor { constructor() : super("bow"); constructor(n: Int) : super("stern") }',
        MADE,
        2,
    ),
    ('class A : B, lib.Motor, C { constructor() : super("bow") }', MADE, 1),
    (
        'class A : lib.Motor { constructor() : super("bow") }',
        LookupRule("new", "Motor", on="lib"),
        1,
    ),
    ('class A : Motor { constructor() : super("bow") }', LookupRule("new", "Motor", on="lib"), 0),
    ('class A : Motor { constructor() : this("bow"); constructor(n: String) }', MADE, 0),
    ('class A : Other { constructor() : super("bow"); val m: Motor }', MADE, 0),
    ('class A : Motor { class B : C { constructor() : super("bow") } }', MADE, 0),
    ('class Motor(val n: String) { constructor() : this("bow") }', MADE, 1),
    ('class Motor : Other { constructor() : super("bow") }', MADE, 0),
    ('class Motor(n: String) { constructor() : this("bow") { } init { go() } }', MADE, 1),
    ('enum class Motor(val n: String) { A("bow"), B("stern") { fun x() {} }; }', MADE, 2),
    ('enum class Motor(val n: String) { A("bow"); constructor() : this("stern") }', MADE, 2),
    ('enum class Other(val n: String) { A("bow"); val m: Motor }', MADE, 0),
]


@pytest.mark.parametrize(("code", "rule", "count"), CONSTRUCTED)
def test_constructors_of_bases_and_of_the_class_itself_are_look_ups(code, rule, count):
    assert kotlin(code, rule) == ["bow", "stern"][:count]


@pytest.mark.parametrize(("code", "rule", "names"), FOUND)
def test_look_ups_are_found(code, rule, names):
    assert kotlin(inside(code), rule) == names


@pytest.mark.parametrize(
    ("code", "rule", "names"),
    [
        ('class Hull(boat: Boat) : Sensor(boat, "hull")', NEW, ["hull"]),
        ('class Hull(boat: Boat) : Sensor<Small>(boat, "hull"), Part', NEW, ["hull"]),
        ('@Fit("bow") lateinit var m: Motor', PLAIN_FIT, ["bow"]),
        ('@Fit("bow") lateinit var m: Motor', FIT, ["bow"]),
        ('@Fit(name = "bow", size = 1) lateinit var m: Motor', FIT, ["bow"]),
        ('@Fit(name = ["a", "b"]) lateinit var m: Motor', FIT, ["a", "b"]),
        ('@Fit(name = arrayOf("a", "b")) lateinit var m: Motor', FIT, ["a", "b"]),
        ('@Fit(value = "bow") lateinit var m: Motor', PLAIN_FIT, ["bow"]),
        ("@Fit lateinit var m: Motor", FIT, []),
        ('@field:Fit("bow") lateinit var m: Motor', FIT, ["bow"]),
        ('@[Fit("bow") Other] lateinit var m: Motor', FIT, ["bow"]),
        ('class A(@Fit("bow") val m: Motor)', FIT, ["bow"]),
        (
            '@lib.Fit("bow") lateinit var m: Motor',
            LookupRule("annotation", "Fit", on="lib"),
            ["bow"],
        ),
        ('@Fit("bow") lateinit var m: Motor', LookupRule("annotation", "Fit", on="lib"), []),
        ('Fit("bow")', FIT, []),
        ('fun f() {\n @Fit("bow")\n return go()\n}', FIT, ["bow"]),
        ('fun f() {\n @Fit\n go("bow")\n}', FIT, []),
        ('val m = motor("bow"); val n = motor("stern")', MOTOR, ["bow", "stern"]),
        ('class A { val m = motor("bow") }', MOTOR, ["bow"]),
        ('class A { companion object { val m = motor("bow") } }', MOTOR, ["bow"]),
        ('fun Boat.wheel() = motor("bow")', MOTOR, ["bow"]),
        ('val m get() = motor("bow")', MOTOR, ["bow"]),
        ('fun f(m: Motor = motor("bow")) { }', MOTOR, ["bow"]),
    ],
)
def test_look_ups_in_declarations(code, rule, names):
    assert kotlin(code + "\n", rule) == names


def test_an_import_gives_a_bare_call_its_receiver():
    code = "import club.boat.motor\n" + inside('motor("bow")')
    assert kotlin(code, ON_BOAT) == ["bow"]
    assert kotlin(code.replace("boat.motor", "ship.motor"), ON_BOAT) == []
    assert kotlin(code.replace("boat.motor", "boat.*"), ON_BOAT) == ["bow"]


def test_an_import_gives_another_name():
    code = "import club.boat.motor as drive\nimport lib.Sensor as Probe\n"
    code += inside('drive("bow"); Probe(boat, "hull"); motor("stern")')
    assert kotlin(code, MOTOR, NEW) == ["bow", "hull", "stern"]
    assert kotlin(code, ON_BOAT) == ["bow"]


@pytest.mark.parametrize(
    ("code", "rule", "kind"),
    [
        ('boat.get(Motor::class, "a")', BY_ARGUMENT, "motor"),
        ('boat.get(Motor::class.java, "a")', BY_ARGUMENT, "motor"),
        ('boat.get(lib.Servo::class.java, "a")', BY_ARGUMENT, "servo"),
        ('boat.get(Motor, "a")', BY_ARGUMENT, "motor"),
        ('boat.get(Lamp::class, "a")', BY_ARGUMENT, None),
        ('boat.get<Motor>("a")', BY_TYPE, "motor"),
        ('boat.get<lib.Servo>("a")', BY_TYPE, "servo"),
        ('boat.get<Motor?>("a")', BY_TYPE, "motor"),
        ('boat.get<Box<Servo>>("a") { go() }', BY_TYPE, "servo"),
        ('get<Motor>("a").power', BY_TYPE, "motor"),
        ('all(get<Motor>("a"), 1)', BY_TYPE, "motor"),
        ('all(boat get "a")', BY_TYPE, None),
        ('boat.get("a")', BY_TYPE, None),
        ('val m: Motor = boat.get("a")', BY_DECLARATION, "motor"),
        ('val m: lib.Motor? = boat.get("a")', BY_DECLARATION, "motor"),
        ('val m: Box<Servo> = boat.get("a")', BY_DECLARATION, "servo"),
        ('val m: Motor by lazy { boat.get("a") }', BY_DECLARATION, "motor"),
        ('val m: Motor\nm = boat.get("a")', BY_DECLARATION, "motor"),
        ('val m = boat.get("a") as Motor', BY_DECLARATION, "motor"),
        ('val m = (boat.get("a") as? Motor)!!', BY_DECLARATION, "motor"),
        ('val m: Motor = boat.get("a") ?: spare', BY_DECLARATION, "motor"),
        ('val m: Motor = boat.get("a").apply { reverse() }', BY_DECLARATION, "motor"),
        ('fun stern(): Servo = boat.get("a")', BY_DECLARATION, "servo"),
        ('val m = boat.get("a")', BY_DECLARATION, None),
        ('val m: Motor = boat.get("a").motor', BY_DECLARATION, None),
        (
            'this.stern = boat.get("a") }\n lateinit var stern: Servo\n init {',
            BY_DECLARATION,
            "servo",
        ),
    ],
)
def test_kind_that_is_asked_for(code, rule, kind):
    (site,) = Code({"Main.kt": inside(code)}, [rule]).sites("Main.kt")
    assert site.kind == kind


def test_kind_of_an_annotated_property():
    rule = LookupRule("annotation", "Fit", kind_by="declared-type", kinds=KINDS)
    code = 'class Main(@Fit("c") val c: Servo) {\n@Fit("a") lateinit var bow: Motor\n'
    code += 'fun f(@Fit("b") s: Servo, t: Motor) { }\n}\n'
    sites = Code({"Main.kt": code}, [rule]).sites("Main.kt")
    assert [(site.kind, site.holder) for site in sites] == [
        ("servo", "c"),
        ("motor", "bow"),
        ("servo", "s"),
    ]


@pytest.mark.parametrize(
    ("code", "holder"),
    [
        ('val bow: Motor = motor("a")', "bow"),
        ('this.bow = (motor("a") as Motor)', "bow"),
        ('bow = motor("a")!!', "bow"),
        ('val bow by lazy { motor("a") }', "bow"),
        ('val bow by lazy(NONE) { motor("a") }', "bow"),
        ('val bow = motor("a") ?: spare', "bow"),
        ('val bow = motor("a") { reverse() }', "bow"),
        ('val bow = motor("a").apply { reverse() }', "bow"),
        ('val bow = boat?.motor("a")?.also { it.reverse() }', "bow"),
        ('val bow = boat.run { motor("a") }', "bow"),
        ('f(bow = motor("a"))', "bow"),
        ('f(motor("a"))', None),
        ('val all = listOf(motor("a"))', None),
        ('x = motor("a").speed', None),
        ('x = boat.let { motor("a"); 3 }', None),
        ('x += motor("a")', "x"),
    ],
)
def test_what_a_device_is_put_into(code, holder):
    (site,) = Code({"Main.kt": inside(code)}).sites("Main.kt")
    assert site.holder == holder


def test_scope_and_parameter():
    code = "class A {\n class B {\n fun fetch(n: String) = run { motor(n) }\n }\n }"
    (site,) = Code({"A.kt": code}).sites("A.kt")
    assert (site.scope, site.parameter) == (("A", "B", "fetch"), "fetch")


def test_a_name_put_together_with_a_parameter_is_not_the_parameter():
    code = 'fun f(n: String) { motor(n + "x"); motor("${n}x") }\n'
    assert [site.parameter for site in Code({"A.kt": code}).sites("A.kt")] == [None, None]


def test_a_name_by_a_keyword_that_the_rule_omits_is_not_overlooked():
    why = "[it is given by the keyword `size`, which the look-up row does not name]"
    assert kotlin(inside('motor(size = "bow")')) == [why]
    assert kotlin(inside("motor(size = 3)")) == []
    named = LookupRule("call", "motor", name_key="size")
    assert kotlin(inside('motor(size = "bow")'), MOTOR, named) == ["bow"]


@pytest.mark.parametrize(
    ("code", "function", "at", "key"),
    [
        ("fun wheel(n: String) = boat.motor(n)", "wheel", 0, "n"),
        ("fun wheel(b: Boat, n: String): Motor { return b.motor(n) }", "wheel", 1, "n"),
        ('fun wheel(b: Boat = Boat(), n: String = "x") = b.motor(n)', "wheel", 1, "n"),
        ("fun wheel(b: Boat, vararg n: String) = b.motor(n)", "wheel", None, None),
        ("class Wheel(b: Boat, val n: String) { val m = b.motor(n) }", "Wheel", 1, "n"),
        ("class Wheel { constructor(b: Boat, n: String) { b.motor(n) } }", "Wheel", 1, "n"),
    ],
)
def test_which_argument_fills_the_parameter(code, function, at, key):
    (site,) = Code({"Main.kt": code + "\n"}).sites("Main.kt")
    assert (site.parameter, site.parameter_at, site.parameter_key) == (function, at, key)


WRAPPER = 'fun wheel(b: Boat, n: String) = b.motor(n)\nval m = wheel(b, "x")\n'
CLASS = 'class A(b: Boat, n: String) {\n val m = b.motor(n)\n}\nval a = A(b, "x")\n'


@pytest.mark.parametrize(
    ("code", "rule", "names"),
    [
        (WRAPPER, LookupRule("call", "wheel", name_at=(1,)), ["x"]),
        (CLASS, LookupRule("new", "A", name_at=(1,)), ["x"]),
        (WRAPPER, LookupRule("new", "A", name_at=(1,)), ["[it is a parameter of `wheel`]"]),
    ],
)
def test_inside_a_function_that_is_declared_its_parameter_is_no_look_up(code, rule, names):
    assert kotlin(code, MOTOR, rule) == names
