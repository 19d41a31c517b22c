"""Which places of a C++ file are look-ups, and what of which kind they ask for."""

from __future__ import annotations

import pytest

from namegen.model.workspaces import LookupRule
from tests.languages.asking import (
    ALL,
    BY_ARGUMENT,
    BY_DECLARATION,
    BY_TYPE,
    MOTOR,
    ON_BOAT,
    Code,
    cpp,
)
from tests.languages.cpp.listening import said

PAIR = LookupRule("call", "drive", name_at=(0, 2))
SENSOR = LookupRule("new", "Sensor", name_at=(1,))
GAUGE = LookupRule("new", "Gauge", name_at=(1,))
GET = LookupRule("call", "get")
TABLE = LookupRule("subscript", "devices")

FOUND = [
    ('boat.motor("bow");', MOTOR, ["bow"]),
    ('ship->motor("bow");', MOTOR, ["bow"]),
    ('motor("bow");', MOTOR, ["bow"]),
    ('club::motor("bow");', MOTOR, ["bow"]),
    ('::motor("bow");', MOTOR, ["bow"]),
    ('crew.boat.motor("bow");', ON_BOAT, ["bow"]),
    ('mate->boat.motor("bow");', ON_BOAT, ["bow"]),
    ('(*ship).motor("bow");', LookupRule("call", "motor", on="ship"), ["bow"]),
    ('crew.getBoat().motor("bow");', LookupRule("call", "motor", on="getBoat"), ["bow"]),
    ('crew.boats[0].motor("bow");', LookupRule("call", "motor", on="boats"), ["bow"]),
    ('club::motor("bow");', LookupRule("call", "motor", on="club"), ["bow"]),
    ('using club::get; get<Motor>("bow");', LookupRule("call", "get", on="club"), ["bow"]),
    ('using namespace club; get<Motor>("bow");', LookupRule("call", "get", on="club"), ["bow"]),
    ('boat /* a */ . motor ( /* "x" */ "bow" );', MOTOR, ["bow"]),
    ('boat.group("a", "b", "c");', ALL, ["a", "b", "c"]),
    ('boat.drive("a", 1, "b");', PAIR, ["a", "b"]),
    ('boat.get<Motor>("bow");', GET, ["bow"]),
    ('ship->get<lib::Motor, 2>("bow");', GET, ["bow"]),
    ('boat.template get<Motor>("bow");', GET, ["bow"]),
    ('club::get<Motor>("bow");', GET, ["bow"]),
    ('devices["bow"];', TABLE, ["bow"]),
    ('crew.devices["bow"];', TABLE, ["bow"]),
    ('crew.devices["bow"];', LookupRule("subscript", "devices", on="crew"), ["bow"]),
    ('for (auto name : {"a", "b"}) motor(name);', MOTOR, ["a", "b"]),
    ('auto go = [&] { return boat.motor("bow"); }; go();', MOTOR, ["bow"]),
    ('if (auto m = boat.motor("bow"); fast) m.run();', MOTOR, ["bow"]),
    ('constexpr auto kBow = "bow"; Motor m(motor(kBow));', MOTOR, ["bow"]),
    ('Sensor s(boat, "bow");', SENSOR, ["bow"]),
    ('Sensor s{boat, "bow"};', SENSOR, ["bow"]),
    ('Sensor s = {boat, "bow"};', SENSOR, ["bow"]),
    ('Sensor(boat, "bow");', SENSOR, ["bow"]),
    ('auto s = Sensor{boat, "bow"};', SENSOR, ["bow"]),
    ('lib::Sensor s(boat, "bow", 3);', SENSOR, ["bow"]),
    ('lib::Gauge<int> s(boat, "bow");', GAUGE, ["bow"]),
    ('auto* s = new Sensor(boat, "bow");', SENSOR, ["bow"]),
    ('auto* s = new lib::Gauge<int>{boat, "bow"};', GAUGE, ["bow"]),
    ('auto s = std::make_unique<Sensor>(boat, "bow");', SENSOR, ["bow"]),
    ('auto s = std::make_shared<lib::Sensor>(boat, "bow");', SENSOR, ["bow"]),
    ('constexpr auto kBow = "bow"; Sensor s(boat, kBow);', SENSOR, ["bow"]),
    ('Sensor a(boat, "a"), b(boat, "b");', SENSOR, ["a", "b"]),
    ('Sensor s[] = {{boat, "a"}, {boat, "b"}};', SENSOR, ["a", "b"]),
    ('Sensor s[] = {Sensor(boat, "a"), {boat, "b"}};', SENSOR, ["a", "b"]),
    ('std::vector<Sensor> s{{boat, "a"}, {boat, "b"}};', SENSOR, ["a", "b"]),
    ('std::array<Sensor, 2> s{{{boat, "a"}, {boat, "b"}}};', SENSOR, ["a", "b"]),
    ('lib::Sensor s(boat, "bow");', LookupRule("new", "Sensor", on="lib", name_at=(1,)), ["bow"]),
]
CLASSES = [
    ('struct A { Sensor bow_; A() : bow_(boat, "bow") {} };', ["bow"]),
    ('struct A { A() : bow_{boat, "bow"} {} private: Sensor bow_; };', ["bow"]),
    ('struct A { Sensor bow_; A(); }; A::A() : bow_(boat, "bow") {}', ["bow"]),
    ('struct A { Sensor a_, b_; A() : a_(boat, "a"), b_(boat, "b") {} };', ["a", "b"]),
    ('struct A : Sensor { A() : Sensor(boat, "bow") {} };', ["bow"]),
    ('struct A : lib::Sensor { A(); }; A::A() : lib::Sensor{boat, "bow"} {}', ["bow"]),
    ('struct A : Sensor { A() : Sensor(boat, "bow"), side(3) {} int side; };', ["bow"]),
    ('struct A : lib::Sensor { A() : lib::Sensor(boat, "bow") {} };', ["bow"]),
    ('struct A { Sensor bow{boat, "bow"}; };', ["bow"]),
    ('struct A { Sensor bow = Sensor(boat, "bow"); };', ["bow"]),
    ('struct A { Sensor a{boat, "a"}, b = {boat, "b"}; };', ["a", "b"]),
    ('struct A { std::vector<Sensor> all{{boat, "a"}, {boat, "b"}}; };', ["a", "b"]),
    (
        "struct A { std::unique_ptr<Sensor> bow_;"
        ' A() : bow_(std::make_unique<Sensor>(boat, "bow")) {} };',
        ["bow"],
    ),
]
NOT_FOUND = [
    ('crew.motor("bow");', ON_BOAT),
    ('motor("bow");', ON_BOAT),
    ('boat.motors("bow");', MOTOR),
    ("boat.motor();", MOTOR),
    ('// boat.motor("bow")', MOTOR),
    ('auto s = "motor(1)";', MOTOR),
    ('Sensor* s = find("bow", "bow");', SENSOR),
    ('Sensor& s(find("bow", "bow"));', SENSOR),
    ('boat.Sensor(boat, "bow");', SENSOR),
    ('Sensor s(boat, "bow");', LookupRule("new", "Sensor", on="lib", name_at=(1,))),
    ('devices("bow");', TABLE),
    ('[[motor("bow")]] int x;', LookupRule("annotation", "motor")),
]


def inside(statement: str) -> str:
    """Return a function that holds the statement."""
    return f"void run() {{ {statement} }}"


@pytest.mark.parametrize(("code", "rule", "names"), FOUND)
def test_look_ups_are_found(code, rule, names):
    assert cpp(inside(code), rule) == names


@pytest.mark.parametrize(("code", "names"), CLASSES)
def test_constructions_of_members_and_bases_are_found(code, names):
    assert cpp(code, SENSOR) == names


@pytest.mark.parametrize(("code", "rule"), NOT_FOUND)
def test_what_is_no_look_up_is_left(code, rule):
    assert cpp(inside(code), rule) == []


ALONE = [
    'DONE\n  motor("bow");',
    'DONE\n  boat.motor("bow");',
    'DONE  // why\n\n  Motor m(boat.motor("bow"));',
    'DONE\n  auto m = motor("bow");',
    'DONE\n  const char* n = "bow";\n  DONE\n  motor(n);',
    'switch (3) { case 3:\n  DONE\n  motor("bow"); }',
    'const char* bow = "bow"; switch (3) { case 3:\n  DONE\n  motor(bow); }',
]


@pytest.mark.parametrize("code", ALONE)
def test_a_macro_on_a_line_by_itself_hides_nothing(code, tmp_path, tool):
    program = f"#define DONE\nvoid run() {{\n  {code}\n}}"
    code_of_it = Code({"main.cpp": program})
    assert code_of_it.answers("main.cpp") == ["bow"]
    reading = code_of_it.reading("main.cpp")
    assert reading is not None and not reading.unsound
    assert said([program], tmp_path, tool) == [["bow"]]


def test_what_only_looks_like_a_macro_on_a_line_by_itself_is_read():
    names = 'const char* kAll[] = {\n  "a",\n  KB\n};\nconst char KB[] = "b";'
    assert cpp(f"{names}\nvoid f() {{ for (auto n : kAll) motor(n); }}") == ["a", "b"]
    assert cpp('void f() { FOO motor("bow"); }') == []


def test_programs_ask_for_what_is_found(tmp_path, tool):
    programs = [inside(code) for code, _, _ in FOUND]
    programs += [f"{code}\n{inside('A a;')}" for code, _ in CLASSES]
    names = [names for _, _, names in FOUND] + [names for _, names in CLASSES]
    assert said(programs, tmp_path, tool) == names


@pytest.mark.parametrize(
    "code",
    [
        "struct A { Sensor make(Boat, Name); };",
        "Sensor make(Boat& boat, const char* name);",
        "Sensor make(int, int);",
        'struct B { Sensor* bow_; B() : bow_(boat, "x") {} };',
        'struct B { Sensor bow_; }; struct C { Lamp bow_; C() : bow_(boat, "x") {} };',
    ],
)
def test_a_declaration_constructs_nothing(code):
    assert cpp(code, SENSOR) == []


@pytest.mark.parametrize(
    ("code", "rule", "kind"),
    [
        ('boat.get(Kind::Motor, "a");', BY_ARGUMENT, "motor"),
        ('boat.get(lib::Servo{}, "a");', BY_ARGUMENT, "servo"),
        ('boat.get(Lamp(), "a");', BY_ARGUMENT, None),
        ('boat.get<Motor>("a");', BY_TYPE, "motor"),
        ('ship->get<lib::Servo>("a");', BY_TYPE, "servo"),
        ('boat.template get<Motor>("a");', BY_TYPE, "motor"),
        ('club::get<const Motor*>("a");', BY_TYPE, "motor"),
        ('get<Motor, 3>("a");', BY_TYPE, "motor"),
        ('boat.get("a");', BY_TYPE, None),
        ('Motor m = boat.get("a");', BY_DECLARATION, "motor"),
        ('const lib::Motor& m = boat.get("a");', BY_DECLARATION, "motor"),
        ('Motor& bow{boat.get("a")};', BY_DECLARATION, "motor"),
        ('std::unique_ptr<Servo> m = boat.get("a");', BY_DECLARATION, "servo"),
        ('Motor m; m = boat.get("a");', BY_DECLARATION, "motor"),
        ('auto m = static_cast<Motor*>(boat.get("a"));', BY_DECLARATION, "motor"),
        ('auto m = (Motor*) boat.get("a");', BY_DECLARATION, "motor"),
        ('auto m = boat.get("a");', BY_DECLARATION, None),
        ('Motor m = f(boat.get("a"));', BY_DECLARATION, None),
        ('} struct A { Servo s; A() : s(boat.get("a")) {} }; void g() {', BY_DECLARATION, "servo"),
        ('} struct A { Servo s = boat.get("a"); }; void g() {', BY_DECLARATION, "servo"),
        ('} struct A { Servo s; void f() { this->s = boat.get("a"); } }; void g() {',
         BY_DECLARATION, "servo"),
    ],
)  # fmt: skip
def test_kind_that_is_asked_for(code, rule, kind):
    (site,) = Code({"main.cpp": inside(code)}, [rule]).sites("main.cpp")
    assert site.kind == kind


@pytest.mark.parametrize(
    ("code", "rule", "holder"),
    [
        ('Motor bow = motor("a");', MOTOR, "bow"),
        ('Motor* bow = &motor("a");', MOTOR, "bow"),
        ('Motor& bow{motor("a")};', MOTOR, "bow"),
        ('auto bow = (Motor*) (motor("a"));', MOTOR, "bow"),
        ('auto bow = static_cast<Motor*>(motor("a"));', MOTOR, "bow"),
        ('auto bow = std::move(motor("a"));', MOTOR, "bow"),
        ('this->bow = motor("a");', MOTOR, "bow"),
        ('bow = motor("a");', MOTOR, "bow"),
        ('if (auto* bow = motor("a")) {}', MOTOR, "bow"),
        ('A::A() : bow_(motor("a")) {}', MOTOR, "bow_"),
        ('f(motor("a"));', MOTOR, None),
        ('Motor all[] = {motor("a")};', MOTOR, None),
        ('auto x = motor("a").speed();', MOTOR, None),
        ('auto [a, b] = motor("a");', MOTOR, None),
        ('Sensor bow(boat, "a");', SENSOR, "bow"),
        ("Sensor bow(boat, kBow);", SENSOR, "bow"),
        ('auto bow = std::make_unique<Sensor>(boat, "a");', SENSOR, "bow"),
        ('std::vector<Sensor> bow{{boat, "a"}};', SENSOR, None),
        ('struct A : Sensor { A() : Sensor(boat, "a") {} };', SENSOR, None),
        ('struct A { Sensor bow{boat, "a"}; };', SENSOR, "bow"),
    ],
)
def test_what_a_device_is_put_into(code, rule, holder):
    code = code if code.startswith(("A::", "struct")) else inside(code)
    (site,) = Code({"main.cpp": code}, [rule]).sites("main.cpp")
    assert site.holder == holder


def test_scope_and_parameter():
    code = (
        "namespace a { struct B { Motor fetch(Name n) { return [=] { return motor(n); }(); } }; }"
    )
    (site,) = Code({"a.cpp": code}).sites("a.cpp")
    assert (site.scope, site.parameter) == (("a", "B", "fetch"), "fetch")


def test_a_name_put_together_with_a_parameter_is_not_the_parameter():
    (site,) = Code({"a.cpp": 'void f(std::string n) { motor(n + "x"); }'}).sites("a.cpp")
    assert site.parameter is None


@pytest.mark.parametrize(
    ("code", "function", "at"),
    [
        ("Motor wheel(const std::string& n) { return boat.motor(n); }", "wheel", 0),
        ("Motor wheel(Boat& b, const char* n) { return b.motor(n); }", "wheel", 1),
        ('Motor wheel(Boat& b, const char* n = "bow") { return b.motor(n); }', "wheel", 1),
        ("Motor Crew::wheel(Boat& b, const char n[]) { return b.motor(n); }", "wheel", 1),
        ("Crew::Crew(Boat& b, int i, Name n) : bow_(b.motor(n)) {}", "Crew", 2),
        ("template <class T> T& wheel(Name n) { return boat.motor(n); }", "wheel", 0),
    ],
)
def test_which_argument_fills_the_parameter(code, function, at):
    (site,) = Code({"main.cpp": code}).sites("main.cpp")
    assert (site.parameter, site.parameter_at, site.parameter_key) == (function, at, None)


WRAPPER = 'Motor wheel(Boat& b, Name n) { return b.motor(n); } Motor m = wheel(b, "x");'
CLASS = 'struct A { A(Boat& b, Name n) { b.motor(n); } }; A a(b, "x");'


@pytest.mark.parametrize(
    ("code", "rule", "names"),
    [
        (WRAPPER, LookupRule("call", "wheel", name_at=(1,)), ["x"]),
        (CLASS, LookupRule("new", "A", name_at=(1,)), ["x"]),
        (WRAPPER, LookupRule("new", "A", name_at=(1,)), ["[it is a parameter of `wheel`]"]),
    ],
)
def test_inside_a_function_that_is_declared_its_parameter_is_no_look_up(code, rule, names):
    assert cpp(code, MOTOR, rule) == names


def test_members_that_are_named_in_a_list():
    rule = LookupRule("new", "Fit", name_key="name")
    assert cpp(inside('Fit f{.boat = boat, .name = "bow"};'), rule) == ["bow"]
    assert cpp(inside('Fit f{.size = "bow"};'), rule) == []


def test_both_branches_of_the_preprocessor_are_read():
    code = '#ifdef POND\nauto m = motor("a");\n#else\nauto m = motor("b");\n#endif\n'
    assert cpp(code) == ["a", "b"]


@pytest.mark.parametrize(
    ("code", "names"),
    [
        ('#define BOW_MOTOR boat.motor("bow")', ["bow"]),
        ('#define START() do { boat.motor("a"); \\\n boat.motor("b"); } while (0)', ["a", "b"]),
        ("#define MOTOR(x) boat.motor(x)", ["[it is a parameter of `MOTOR`]"]),
        ("#define MOTOR(x) boat.motor(#x)", ["[a macro puts it together]"]),
        ('#define MOTOR(x) boat.motor("bow" #x)', ["[a macro puts it together]"]),
        ('#define K "a"\n#define MOTOR(x) boat.motor(K)', ["a"]),
        ("#define motor(x) x", []),
    ],
)
def test_look_ups_in_macros(code, names):
    assert cpp(code + "\n") == names


def test_a_macro_may_be_declared_as_a_look_up():
    code = '#define MOTOR(b, x) b.motor(x)\nauto m = MOTOR(boat, "bow");\n'
    assert cpp(code, MOTOR, LookupRule("call", "MOTOR", name_at=(1,))) == ["bow"]
    (site,) = Code({"main.cpp": code}).sites("main.cpp")
    assert (site.parameter, site.parameter_at) == ("MOTOR", 1)


HEADER = """
struct Heron {
  Heron();
  struct Part { Sensor inner_; Part(); };
  Sensor bow_; lib::Sensor stern_; Sensor* third_; Lamp lamp_; int count_; Gauge<int> gauge_;
};
"""
SOURCE = """
#include "heron.h"
#include "boatlib.h"
namespace { void other() {} }
Heron::Heron() : bow_(boat, "a"), stern_{boat, "b"}, third_(nullptr, "x"), lamp_(boat, "x"),
    count_(fast ? 1 : 2), gauge_(boat, "c"), unknown_(boat, "x") {}
Heron::Part::Part() : inner_(boat, "d") {}
"""


def test_members_that_a_header_declares_are_constructed():
    code = Code({"heron.h": HEADER, "heron.cpp": SOURCE}, [SENSOR, GAUGE])
    assert code.answers("heron.cpp") == ["a", "b", "c", "d"]
    assert [site.rule.called for site in code.sites("heron.cpp")] == ["Sensor"] * 2 + [
        "Gauge",
        "Sensor",
    ]
    on_lib = LookupRule("new", "Sensor", on="lib", name_at=(1,))
    assert Code({"heron.h": HEADER, "heron.cpp": SOURCE}, [on_lib]).answers("heron.cpp") == ["b"]
