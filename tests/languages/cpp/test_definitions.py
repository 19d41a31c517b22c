"""What a name of a C++ file stands for, told by the look-up that it reaches."""

from __future__ import annotations

import pytest

from tests.languages.asking import Code, cpp
from tests.languages.cpp.listening import names as heard
from tests.languages.cpp.listening import output, said

RUN = "void run() {{ {} }}"
FOLLOWED = [
    ('constexpr char kBow[] = "bow";', "motor(kBow);", ["bow"]),
    ('inline constexpr char kBow[] = "bow";', "motor(kBow);", ["bow"]),
    ('const char kBow[]{"bow"};', "motor(kBow);", ["bow"]),
    ('static const char* const kBow = "bow";', "motor(kBow);", ["bow"]),
    ('const char *kBow = "bow", *kStern = "stern";', "motor(kBow); motor(kStern);",
     ["bow", "stern"]),
    ('constexpr std::string_view kBow = "bow";', "motor(kBow);", ["bow"]),
    ('constexpr std::string_view kBow{"bow"};', "motor(kBow);", ["bow"]),
    ('const std::string kBow("bow");', "motor(kBow);", ["bow"]),
    ('const std::string kBow = std::string("bow") + "Thruster";', "motor(kBow);", ["bowThruster"]),
    ('const std::string kSide = "bow";', 'motor(kSide + "Thruster");', ["bowThruster"]),
    ('const std::string kBow{"bow"};', "motor(kBow.c_str()); motor(kBow.data());", ["bow", "bow"]),
    ('using namespace std::literals; const auto kBow = "bow"sv;', "motor(kBow);", ["bow"]),
    ('using namespace std::literals; const auto kBow = "bow"s;', "motor(kBow);", ["bow"]),
    ("", 'motor(std::string_view{"bow"}); motor(std::string("bow"));', ["bow", "bow"]),
    ("", 'const char* n = "bow"; motor(n);', ["bow"]),
    ("", 'auto n = ("bow"); motor(n);', ["bow"]),
    ("", 'const char* n; n = "bow"; motor(n);', ["bow"]),
    ("", '{ auto n = "a"; motor(n); } { auto n = "b"; motor(n); }', ["a", "b"]),
    ("", 'std::string a("bow"), b(a); motor(b);', ["bow"]),
    ("", 'const std::string a = "bow"; std::string b(a); motor(b);', ["bow"]),
    ("", 'motor(std::move("bow")); motor(static_cast<const char*>("bow"));', ["bow", "bow"]),
    ("", 'const char* n; motor(n = "bow");', ["bow"]),
    ("", 'auto go = [n = "bow"] { motor(n); }; go();', ["bow"]),
    ("", 'auto go = [] { auto n = "bow"; motor(n); }; go();', ["bow"]),
    ('const char* const kAll[] = {"a", "b"};', "for (auto n : kAll) motor(n);", ["a", "b"]),
    ('const std::vector<std::string> kAll{"a", "b"};', "for (const auto& n : kAll) motor(n);",
     ["a", "b"]),
    ("", 'for (auto n : std::array{"a", "b"}) motor(n);', ["a", "b"]),
    ("", 'for (const char* n : {"a"}) motor(n);', ["a"]),
    ('namespace names { constexpr char kBow[] = "bow"; }', "motor(names::kBow);", ["bow"]),
    ('namespace a::b { constexpr char kBow[] = "bow"; }', "motor(a::b::kBow);", ["bow"]),
    ('namespace a { namespace b { constexpr char kBow[] = "bow"; } }', "motor(a::b::kBow);",
     ["bow"]),
    ('namespace a { const char k[] = "x"; } namespace a { const char j[] = "y"; }',
     "motor(a::k); motor(a::j);", ["x", "y"]),
    ('namespace { constexpr char kBow[] = "bow"; }', "motor(kBow);", ["bow"]),
    ('namespace a { inline namespace v1 { constexpr char kBow[] = "bow"; } }',
     "motor(a::kBow); motor(a::v1::kBow);", ["bow", "bow"]),
    ('namespace a { constexpr char kBow[] = "bow"; } using namespace a;', "motor(kBow);", ["bow"]),
    ('namespace a { constexpr char kBow[] = "bow"; } using a::kBow;', "motor(kBow);", ["bow"]),
    ('namespace a { constexpr char kBow[] = "bow"; }', "using namespace a; motor(kBow);", ["bow"]),
    ('namespace a::b { constexpr char kBow[] = "bow"; } namespace n = a::b;', "motor(n::kBow);",
     ["bow"]),
    ('namespace a { struct B { static constexpr char k[] = "bow"; }; } using a::B;',
     "motor(B::k);", ["bow"]),
    ('namespace a { struct B { static constexpr char k[] = "bow"; }; } using M = a::B;',
     "motor(M::k);", ["bow"]),
    ('namespace a { struct B { static constexpr char k[] = "bow"; }; } typedef a::B M;',
     "motor(M::k);", ["bow"]),
    ('namespace a { const char k[] = "x"; namespace b { const char* f() { return k; } } }',
     "motor(a::b::f());", ["x"]),
    ('const char k[] = "out"; namespace a { const char k[] = "in"; void go() { motor(k); } }',
     "motor(k); a::go();", ["in", "out"]),
    ('struct K { static constexpr char kBow[] = "bow"; };', "motor(K::kBow);", ["bow"]),
    ('struct K { static const char* kBow; }; const char* K::kBow = "bow";', "motor(K::kBow);",
     ["bow"]),
    ('struct K { static inline const std::string kBow = "bow"; };', "motor(K::kBow);", ["bow"]),
    ('struct K { const char* n = "bow"; }; K k;', "motor(k.n);", ["bow"]),
    ('struct K { const char* n{"bow"}; } ; K k{};', "motor(k.n);", ["bow"]),
    ('struct K { static constexpr char n[] = "bow"; } ; K k, *j = &k;', "motor(j->n);", ["bow"]),
    ('struct K { std::string n = "bow"; void go() { motor(n); motor(this->n); } };',
     "K().go();", ["bow", "bow"]),
    ('struct K { std::string n; K() : n("bow") {} void go() { motor(n); } };', "K().go();",
     ["bow"]),
    ('struct K { std::string n; K() { this->n = "bow"; } void go(); }; void K::go() { motor(n); }',
     "K().go();", ["bow"]),
    ('struct B { const char* n = "bow"; }; struct K : B { void go() { motor(n); } };',
     "K().go();", ["bow"]),
    ('struct B { static constexpr char k[] = "bow"; }; struct K : public B {};', "motor(K::k);",
     ["bow"]),
    ('const char* name() { return "bow"; }', "motor(name());", ["bow"]),
    ('struct K { static const char* name() { return "bow"; } };', "motor(K::name());", ["bow"]),
    ('struct K { const char* n = "bow"; const char* name() const { return n; } }; K k;',
     "motor(k.name());", ["bow"]),
    ('struct K : Boat { static constexpr std::array<const char*, 2> kAll{"a", "b"};'
     " void go() { for (auto n : K::kAll) motor(n); } };", "K().go();", ["a", "b"]),
    ('#define PROGMEM\nconst char kBow[] PROGMEM = "bow";', "motor(kBow);", ["bow"]),
    ('#define BOW "bow"', "motor(BOW);", ["bow"]),
    ('#define SIDE "bow"', 'motor(SIDE "Thruster"); motor("the" SIDE);', ["bowThruster", "thebow"]),
    ('#define SIDE "bow"', 'motor("a" SIDE "b"); motor("x" "y");', ["abowb", "xy"]),
    ('#define SIDE "bow"\n#define BOW SIDE "Thruster"', "motor(BOW);", ["bowThruster"]),
    ('constexpr char kBow[] = "bow";\n#define BOW (kBow)  // why', "motor(BOW);", ["bow"]),
    ('#define BOW \\\n  "bow"', "motor(BOW);", ["bow"]),
]  # fmt: skip
EITHER = [
    ("", 'motor(fast ? "a" : "b");', ["a", "b"]),
    ('#ifdef A\n#define K "a"\n#elif B\n#define K "b"\n#else\n#define K "c"\n#endif', "motor(K);",
     ["a", "b", "c"]),
    ('#if A\nconst char k[] = "a";\n#else\nconst char k[] = "b";\n#endif', "motor(k);", ["a", "b"]),
]  # fmt: skip
CHANGED = [
    "std::string n = \"a\"; n.append(1, 'x'); motor(n);",
    "std::string n = \"a\"; n[0] = 'b'; motor(n);",
    'std::string n = "a"; std::cin >> n; motor(n);',
    'std::string n = "a"; std::getline(std::cin, (n)); motor(n);',
    'std::string n = "a", m = "b"; std::swap(n, m); motor(m);',
    'std::string n = "a"; auto& m = n; m = "b"; motor(n);',
    'std::string n = "a"; std::string* m = &n; *m = "b"; motor(n);',
    'auto n = "abc"; n++; motor(n);',
    'auto n = "abc"; ++n; motor(n);',
    'char n[8] = ""; strcpy(n, "b"); motor(n);',
    'char n[8] = ""; snprintf(n, sizeof n, "b%d", 1); motor(n);',
    'struct { std::string n = "a"; } k; k.n.clear(); motor(k.n);',
    'std::vector<std::string> all{"a"}; all.push_back("b"); for (auto n : all) motor(n);',
]
NOT_CHANGED = [
    'for (auto n : {"a"}) motor(n); for (auto n : {"a"}) motor(n);',
    'auto boat = fit(); boat.n = 3; auto n = "a"; motor(n);',
    'const std::string n = "a"; tell(&n); motor(n);',
    'std::string n = "a"; tell(n.size(), n[0], n.find("x")); motor(n);',
    'std::string n = "a"; const auto& m = n; motor(m); std::cout << n;',
    'constexpr const char* n = "a"; const char* const* m = &n; motor(n);',
    'std::string n = "a", m = "b"; m.append(n); motor(n);',
    'std::string n = "a"; text[n] = 3; motor(n);',
    'const char* all[] = {"a"}; for (auto& n : all) motor(n);',
]
LOST = [
    ("void f() { motor(n); }", "`n` is not defined in code that was read"),
    ('void f() { auto n = "a"; n = "b"; motor(n); }', "`n` is assigned more than once"),
    ('void f() { std::string n = "a"; n += "b"; motor(n); }', "`n` is changed in line 1"),
    ('auto n = "a"; void f() { motor(n); const char* n = "b"; tell(n); }',
     "the word is another name further up in the block"),
    ('namespace s { Name n = "a"; } void g() { s::n = "b"; } void f() { motor(s::n); }',
     "`n` is assigned more than once"),
    ('namespace s { Name n = "a"; } using s::n; void g() { n = "b"; } void f() { motor(s::n); }',
     "`n` is assigned more than once"),
    ("const char* n = n; void f() { motor(n); }", "`n` is defined by itself"),
    ("void f(Name n) { motor(n); }", "it is a parameter of `f`"),
    ("void f() { g([](auto n) { motor(n); }); }", "it is a parameter"),
    ("void f() { motor(names[0]); }", "it is taken out of a table"),
    ('void f() { motor(make("a")); }', "it is made at run time by `make()`"),
    ("void f() { motor(boat.name()); }", "it is made at run time by `name()`"),
    ('struct K { virtual const char* n() { return "a"; } }; K k; void f() { motor(k.n()); }',
     "it is made at run time by `n()`"),
    ('void f() { motor(std::string("abc", 2)); }', "it is made at run time by `string()`"),
    ('std::string n("abc", 2); void f() { motor(n); }', "it is put together from several values"),
    ("void f() { auto it = find(); motor(it->name); }", "it is made at run time"),
    ("void f(Part p) { motor(p.name()); }", "it is made at run time by `name()`"),
    ('auto n = "a"; void f() { std::string n; read(n); motor(n); }', "it is made at run time"),
    ('auto n = "a"; struct K { Name n; void f() { motor(n); } };', "it is made at run time"),
    ('auto n = "a"; void f() { try {} catch (const char* n) { motor(n); } }',
     "it is a parameter"),
    ('struct K { Name n = "a"; }; K k; void g() { k.n = "b"; } void f() { motor(k.n); }',
     "`n` is assigned more than once"),
    ('struct K { Name n = "a"; void f() { motor(n); } }; void g(K* k) { k->n += "b"; }',
     "`n` is changed in line 1"),
    ('void fill(Name& n);\nvoid f() { Name n = "a"; fill(n); motor(n); }',
     "`n` is changed in line 2"),
    ('struct K { Name n = "a"; }; K k{"b"}; void f() { motor(k.n); }',
     "a list of values may give an object another one"),
    ("void f() { motor(nullptr); }", "it is null"),
    (r'void f() { motor("bow\0x"); }', r"it holds the letter `\0`, at which a text may end"),
    ("void f() { motor(3); }", "it is a number, not text"),
    ("void f() { motor('a'); }", "it is one letter, not text"),
    ('void f() { motor("a"_x); }', "it is made at run time"),
    ("enum class E { BOW }; void f() { motor(E::BOW); }", "an enumerator is a number, not text"),
    ("enum E { BOW }; void f() { motor(BOW); }", "an enumerator is a number, not text"),
    ("auto [n, m] = g(); void f() { motor(n); }", "it is a part of something else"),
    ("void f() { for (auto n : all()) motor(n); }", "it runs over values that are not written out"),
    ("#define F(x) x\nvoid f() { motor(F(\"a\")); }", None),
    ("#define BOW\nvoid f() { motor(BOW); }", "it is a macro without a text"),
]  # fmt: skip


@pytest.mark.parametrize("code", CHANGED)
def test_what_is_changed_in_place_is_not_known(code):
    (answer,) = {*cpp(f"void f() {{ {code} }}")}
    assert answer.startswith("[")


@pytest.mark.parametrize("code", NOT_CHANGED)
def test_what_is_only_read_is_known(code):
    assert {*cpp(f"void f() {{ {code} }}")} == {"a"}


@pytest.mark.parametrize(("code", "statement", "names"), [*FOLLOWED, *EITHER])
def test_names_are_followed(code, statement, names):
    assert cpp(f"{code}\n{RUN.format(statement)}") == names


def test_programs_ask_for_what_is_followed(tmp_path, tool):
    """Names come in the order of the run, which a function further up may change."""
    programs = [f"{code}\n{RUN.format(statement)}" for code, statement, _ in FOLLOWED]
    asked = said(programs, tmp_path, tool)
    for (code, statement, names), got in zip(FOLLOWED, asked, strict=True):
        assert sorted(got) == sorted(names), (code, statement)


@pytest.mark.parametrize(("code", "why"), LOST)
def test_names_that_only_the_program_tells(code, why):
    (answer,) = cpp(code)
    if why is not None:
        assert answer == f"[{why}]"


HEADER = """\
#pragma once
#include <array>
namespace heron {
struct Names { static constexpr char kBow[] = "bow"; };
extern const char kStern[];
}
"""
FILES = {
    "names.h": HEADER,
    "names.cpp": '#include "names.h"\nnamespace heron { const char kStern[] = "stern"; }\n',
    "all.h": '#ifndef ALL_H\n#define ALL_H\n#include "names.h"\nusing namespace heron;\n#endif\n',
    "types.h": """
        #pragma once
        #include <string>
        #include <string_view>
        using namespace std;
        using Text = const char*;
        typedef std::string Name;
        struct Tag { Tag(const char*) {} operator string_view() const { return "stern"; } };
        struct String { String(const char*) {} operator string_view() const { return "stern"; } };
        struct Base {};
        struct Config {
          const char* left = "bow";
          static constexpr char kMid[] = "mid";
          const char* side() const { return "side"; }
        };
        extern Config config;
        struct Deck : Base { Config own; void go(); };
        """,
    "types.cpp": '#include "types.h"\nConfig config;\n',
    "short.h": '#include "names.h"\nnamespace n = heron;\nusing heron::Names;\n',
}


@pytest.mark.parametrize(
    ("code", "names"),
    [
        ('#include "names.h"\nauto m = motor(heron::Names::kBow);', ["bow"]),
        ('#include "names.h"\nauto m = motor(heron::kStern);', ["stern"]),
        ('#include "names.h"\nusing namespace heron;\nauto m = motor(Names::kBow);', ["bow"]),
        ('#include "names.h"\nnamespace h = heron;\nauto m = motor(h::Names::kBow);', ["bow"]),
        ('#include "names.h"\nusing M = heron::Names;\nauto m = motor(M::kBow);', ["bow"]),
        ('#include "names.h"\nnamespace heron { auto m = motor(Names::kBow); }', ["bow"]),
        (
            '#include "names.h"\nauto m = [] { using namespace heron; return motor(kStern); }();',
            ["stern"],
        ),
        ('#include "all.h"\nauto m = motor(Names::kBow);', ["bow"]),
        ('#include "all.h"\nauto m = motor(heron::Names::kBow);', ["bow"]),
        ('#include "short.h"\nauto m = motor(n::Names::kBow);', ["bow"]),
        ('#include "types.h"\nText n = "bow";\nauto m = motor(n);', ["bow"]),
        (
            '#include "types.h"\nName n = "bow";\nauto m = motor(n), o = motor(Name("a"));',
            ["bow", "a"],
        ),
        (
            '#include "types.h"\nstring n = "bow";\nauto m = motor(n), o = motor(string{"a"});',
            ["bow", "a"],
        ),
        ('#include "types.h"\nauto m = motor(config.left);', ["bow"]),
        (
            '#include "types.h"\nConfig c{"x"};\nauto m = motor(c.kMid), o = motor(c.side());',
            ["mid", "side"],
        ),
        (
            '#include "types.h"\nvoid Deck::go() { motor(own.left); }\nint i = (Deck().go(), 0);',
            ["bow"],
        ),
        ('#include "types.h"\nConfig* c = new Config;\nauto m = motor(c->left);', ["bow"]),
        ('#include "types.h"\nauto& c = config;\nauto m = motor(c.left);', ["bow"]),
        (
            '#include "types.h"\nauto f(const Config& c) { return motor(c.left); }\n'
            "Config d;\nauto m = f(d);",
            ["bow"],
        ),
        (
            '#include "types.h"\nstruct Part { Config own; int side; };\nPart p{{}, 3};\n'
            "auto m = motor(p.own.left);",
            ["bow"],
        ),
        ('#include "short.h"\nauto m = motor(Names::kBow);', ["bow"]),
        ("#  include <names.h>  // ours\nauto m = motor(heron::Names::kBow);", ["bow"]),
    ],
)
def test_names_are_followed_through_includes(code, names, tmp_path, tool):
    assert Code({**FILES, "main.cpp": code}).answers("main.cpp") == names
    files = {**FILES, "main.cpp": code + "\nint main() {}\n"}
    assert heard(output(files, tmp_path, tool)) == names


@pytest.mark.parametrize(
    "code",
    [
        'Tag n = "bow"; auto m = motor(n);',
        'auto m = motor(Tag("bow"));',
        'String n = "bow"; auto m = motor(n);',
        'auto m = motor(String("bow"));',
        'Config c{"stern"}; auto m = motor(c.left);',
        'Config c{"stern"}, *d = &c; auto m = motor(d->left);',
        'auto f = [](Config c) { c.left = "stern"; return motor(c.left); }; auto m = f({});',
        'void f(Config& c) { c.left = "stern"; } Config d; auto m = (f(d), motor(d.left));',
        'struct P { int side; Config own; }; P p{3, {"stern"}}; auto m = motor(p.own.left);',
        'struct P { Config own; }; P p{"stern"}, &q = p; auto m = motor(q.own.left);',
        'struct P : Config {}; P p{{"stern"}}, &q = p; auto m = motor(q.left);',
        'Config f() { return {"stern"}; } auto m = motor(f().left);',
        'auto c = new Config{"stern"}; auto m = motor(c->left);',
        'auto go = [](const Config& c) { return motor(c.left); }; auto m = go({"stern"});',
    ],
)
def test_types_of_other_files_tell_what_is_not_known(code, tmp_path, tool):
    code = f'#include "types.h"\n{code}'
    (answer,) = Code({**FILES, "main.cpp": code}).answers("main.cpp")
    assert answer.startswith("[")
    files = {**FILES, "main.cpp": code + "\nint main() {}\n"}
    assert heard(output(files, tmp_path, tool)) == ["stern"]


ARM = """\
#include <string>
class Arm { std::string name = "a"; Arm(); void go(); };
inline std::string kWhole = "b";
"""


@pytest.mark.parametrize(
    ("code", "answer"),
    [
        ("void Arm::go() { motor(name); }", "a"),
        ("void f() { motor(kWhole); }", "b"),
        ('Arm::Arm() : name("z") {} void Arm::go() { motor(name); }', None),
        ('Arm::Arm() { name = "z"; } void Arm::go() { motor(name); }', None),
        ('Arm::Arm() { this->name = "z"; } void Arm::go() { motor(name); }', None),
        ('void f() { kWhole = "z"; motor(kWhole); }', None),
    ],
)
def test_what_a_source_gives_to_what_its_header_declares(code, answer):
    files = {"arm.h": ARM, "arm.cpp": f'#include "arm.h"\n{code}\n'}
    (found,) = Code(files).resolved("arm.cpp")
    assert found.text == answer


ROBOT = 'struct Robot { std::string left = "a"; void go() { motor(left); } };\n'


@pytest.mark.parametrize(
    ("code", "answer"),
    [
        (ROBOT + "void f() { move({1, 2}); steps.push_back({1.5, true}); }", "a"),
        (ROBOT + "std::pair<double, double> f(double x) { return {x, 0}; }", "a"),
        (ROBOT + 'void f() { table.insert({"x", 2}); }', "a"),
        (ROBOT + 'Robot f() { return {"z"}; }', None),
        (ROBOT + 'void f() { take({"z"}); }', None),
        ('const char* n = "a"; void f() { Log l; l.n = "x"; motor(n); }', "a"),
        ('void f() { std::string s; s = "left"; motor(s + "Motor"); }', "leftMotor"),
        ('void f() { std::string s; if (g()) s = "left"; motor(s + "Motor"); }', None),
        ('struct A { std::string n; A() { n = "a"; } void f() { motor(n); } };', "a"),
        ('struct A { std::string n; void g() { n = "a"; } void f() { motor(n); } };', None),
    ],
)
def test_lists_of_others_and_texts_without_a_value(code, answer):
    (found,) = Code({"main.cpp": f"#include <string>\n{code}\n"}).resolved("main.cpp")
    assert found.text == answer
