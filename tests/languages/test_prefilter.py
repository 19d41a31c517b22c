"""The tests on bytes that spare most files, and places in them, the parser.

Checked against the full reading by the tree-sitter grammars, in which every
identifier is looked at, on snippets that hypothesis puts together and on shapes
that are easily overlooked.
"""

from __future__ import annotations

from collections.abc import Sequence

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from namegen import languages
from namegen.languages import readings
from namegen.languages.prefilters import LooksUp
from namegen.languages.sources import occurrences
from namegen.model.facts import Reading
from namegen.model.places import Span
from namegen.model.workspaces import LookupRule

RULES = (
    LookupRule("call", "motor"),
    LookupRule("call", "fitted", on="boat"),
    LookupRule("new", "Winch"),
    LookupRule("annotation", "Fit"),
    LookupRule("subscript", "parts"),
)

PYTHON = [
    "list(map(motor, parts))",
    "f(x, boat.fitted)",
    "f(x, # why\n boat.fitted, # why\n)",
    "class A(Winch):\n def __init__(self): super().__init__('a')",
    "Winch.__init__(self, 'a')",
    'motor("a")',
    'x.motor ("a")',
    'x.motor\\\n  ("a")',
    '(x.motor  # why\n  ("a"))',
    'motor[Drive]("a")',
    'boat.fitted("a")',
    'the.boat . fitted("a")',
    '(boat  # the old one\n .fitted("a"))',
    'harbour().boat().fitted("a")',
    'boats.boat[0].fitted("a")',
    'parts["a"]',
    "from boatlib import motor as drive\ndrive('a')",
    "drive = boat.motor\ndrive('a')",
    "drive = motor ; drive('a')",
    "drive = \\\n    motor\ndrive('a')",
    "drive = \\\n    motor  # short\ndrive('a')",
    "from boatlib.boat import fitted\nfitted('a')",
    "class C:\n    @Fit('a')\n    def f(self): pass\n",
    "drive = motor\r\ndrive('a')",
    "drive = motor\rdrive('a')",
    "drive =# short\nmotor\ndrive('a')",
]
JAVA = [
    'class A { void f() { motor("a"); } }',
    'class A { void f() { x.motor /* why */ ("a"); } }',
    'class A { void f() { x.motor // why\n ("a"); } }',
    'class A { void f() { boat.<Drive>fitted("a"); } }',
    'class A { void f() { boat\n  .fitted("a"); } }',
    'class A { void f() { boat./* ** */fitted("a"); } }',
    'class A { Object o = new Winch("a"); }',
    'class A { Object o = new Winch<>("a"); }',
    'class A { Object o = new Winch <Big> ("a"); }',
    'class A { @Fit("a") int x; }',
    "class A { Object o = f(x::motor, Winch::new, boat::fitted); }",
    "class A { Object o = f(x:: // why\n motor, boat::<Drive<Big>> /* ** */ fitted); }",
    'class A extends Winch { A() { super("a"); } }',
    'class A extends lib.Winch<Big> implements B { A() { super("a"); } }',
    'class Winch { Winch() { this("a"); } }',
    'class Winch extends A { Winch() { this("a"); } }',
    'enum Winch implements A { A("a"); }',
]
KOTLIN = [
    'val a = motor("a")',
    'val a = x?.motor /* why */ ("a")',
    'val a = boat.fitted<Drive>("a")',
    'val a = boat\n  ?.fitted("a")',
    'val a = boat./* /* ** */ */fitted("a")',
    'val a = boat!!.fitted("a")',
    'val a = boat fitted "a"',
    'val a = boat fitted\n "a"',
    "val a = boat motor NAME",
    "val a = boat motor 'a'",
    'val a = x motor "a" + B',
    'val a = with(boat) { fitted("a") }',
    'val a = boat.let { it.fitted("a") }',
    'val a = boat.run { this.fitted("a") }',
    'import boatlib.motor as drive\nval a = drive("a")',
    'import boatlib.motor /* why */ as drive\nval a = drive("a")',
    'import boatlib.boat.fitted\nval a = fitted("a")',
    'val a = Winch<Big>("a")',
    'class A : Winch("a")',
    'val a = object : Winch ("a") { }',
    '@Fit("a") val a = 1',
    '@field:Fit /* why */ ("a") val a = 1',
    'val a = parts["a"]',
    'val a = parts ["a"]',
    "val a = f(x::motor, ::Winch, boat::fitted)",
    "val a = f(x:: // why\n motor)",
    'val a = x.`motor`("a")',
    'val a = `motor` ("a")',
    'class A : Winch { constructor() : super("a") }',
    'class A : Winch, B { constructor() : super("a") }',
    'class A : B, Winch where T : C { constructor() : super("a") }',
    'class Winch private constructor(val n: String) { constructor() : this("a") }',
    'class Winch : A() { constructor() : this("a") }',
    'enum class Winch(val n: String) { A("a") }',
]
CPP = [
    'auto m = motor("a");',
    'auto m = x->motor /* why */ ("a");',
    'auto m = x.motor // why\n ("a");',
    'auto m = x.motor \\\n ("a");',
    'auto m = boat.fitted<Drive>("a");',
    'auto m = boat->template fitted < Drive > ("a");',
    'auto m = boat::fitted("a");',
    'auto m = boat\n  .fitted("a");',
    'using namespace boat; auto m = fitted("a");',
    'Winch w("a");',
    'Winch w{"a"};',
    'Winch<Big> w{"a"};',
    "auto w = std::make_unique<lib::Winch>(name);",
    'struct A { Winch w_; A() : w_("a") {} };',
    "Winch\tw(kName);",
    'std::vector<Winch> w{{"a"}};',
    'auto m = parts["a"];',
    'auto m = parts // why\n ["a"];',
]
NOT_PYTHON = [
    "motor = 1",
    "def run(motor, parts): pass",
    "# a motor, see above",
    'stern.fitted("a")',
    "boat.fit('a')",
    "from boatlib import motor\n",
]
NOT_CPP = [
    "int motor = 1;",
    "int motor;",
    "// a motor.",
    'auto m = stern.fitted("a");',
    "auto m = f(parts);",
]
NOT_JAVA = [
    "class A { int motor; }",
    'class A { void f() { stern.fitted("a"); boat.run(); } }',
    "import boatlib.Winch;",
]
NOT_KOTLIN = [
    "val motor = 1",
    "fun f(motor: Motor, parts: Parts) { go(motor) }",
    'val a = stern.fitted("a"); boat.run()',
    "import boatlib.Winch\nimport boatlib.motor\n\nval a = 1",
    "// a motor, fitted",
]


def everywhere(utf8: bytes, rules: Sequence[LookupRule], _looks_up: LooksUp) -> list[Span]:
    """Return each place of a word that a rule calls, however unlikely a look-up there."""
    return sorted({place for rule in rules for place in occurrences(utf8, rule.called)})


def in_full(language: str, text: str) -> Reading:
    """Return the reading that looks at every identifier."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(readings, "candidates", everywhere)
        return languages.named(language).read(text.encode(), RULES)


def _asked(language: str, text: str) -> tuple[bool, int]:
    """Return what the test on bytes says, and how many look-ups the full reading finds."""
    return languages.named(language).prefilter(RULES)(text.encode()), len(
        in_full(language, text).lookups
    )


def quick(language: str, text: str) -> Reading:
    """Return the reading as an audit asks for it."""
    return languages.named(language).read(text.encode(), RULES)


@pytest.mark.parametrize(
    ("language", "text"),
    [
        *(("python", t) for t in PYTHON),
        *(("java", t) for t in JAVA),
        *(("kotlin", t) for t in KOTLIN),
        *(("cpp", t) for t in CPP),
    ],
)
def test_a_lookup_is_never_ruled_out(language, text):
    may_hold, lookups = _asked(language, text)
    assert lookups
    assert may_hold
    assert list(quick(language, text).lookups) == list(in_full(language, text).lookups)


@pytest.mark.parametrize(
    ("language", "text"),
    [
        *(("python", t) for t in NOT_PYTHON),
        *(("java", t) for t in NOT_JAVA),
        *(("kotlin", t) for t in NOT_KOTLIN),
        *(("cpp", t) for t in NOT_CPP),
    ],
)
def test_a_word_alone_is_not_parsed(language, text):
    assert _asked(language, text) == (False, 0)


GAPS = st.lists(
    st.sampled_from([" ", "\n", "\\\n", "\t", "# c\n", "/* c */", "// boat\n", "\r", "\f", "."]),
    max_size=2,
).map("".join)
SHAPES = st.sampled_from(
    [
        ["boat", ".", "fitted", "(", '"a"', ")"],
        ["stern", ".", "fitted", "(", '"a"', ")"],
        ["boat", "(", ")", ".", "fitted", "(", '"a"', ")"],
        ["x", ".", "motor", "(", '"a"', ")"],
        ["motor", "[", "Drive", "]", "(", '"a"', ")"],
        ["x", "=", "motor", "\n", "x", "(", '"a"', ")"],
        ["new ", "Winch", "<", ">", "(", '"a"', ")"],
        ["parts", "[", '"a"', "]"],
        ["boat", "?.", "fitted", "<", "Drive", ">", "(", '"a"', ")"],
        ["boat ", "fitted", ' "a"'],
        ["boat", ".", "let", "{", "it", ".", "fitted", "(", '"a"', ")", "}"],
        ["import x.", "motor", " as ", "m", "\n", "val x = m(", '"a"', ")"],
    ]
)


@st.composite
def spaced(draw: st.DrawFn) -> str:
    """Return a look-up, or nearly one, with blanks and comments wherever they may be."""
    tokens = draw(SHAPES)
    return draw(GAPS) + "".join(token + draw(GAPS) for token in tokens)


WRAPPED = {
    "python": "({text})\n{text}",
    "java": "class A {{ B b = {text}; }}",
    "kotlin": "{text}\nval b = {text}\n",
    "cpp": "auto b = {text};",
}


@pytest.mark.parametrize("language", WRAPPED)
@settings(max_examples=400, deadline=None)
@given(text=spaced())
def test_what_is_ruled_out_has_no_lookup_however_it_is_spaced(language, text):
    wrapped = WRAPPED[language].format(text=text)
    may_hold, lookups = _asked(language, wrapped)
    full = in_full(language, wrapped)
    assert may_hold or not lookups or full.unsound
    assert list(quick(language, wrapped).lookups) == list(full.lookups) or full.unsound


def test_another_name_that_is_not_there_yet_is_looked_for_nowhere():
    """The parser supposes an empty name before the `=`; it stands everywhere and nowhere."""
    assert not list(occurrences(b"motor", ""))
    _asked("python", 'x\n\t=motor\n// boat\n x("a")')


def test_a_long_gap_before_a_word_is_no_reason_to_rule_it_out():
    assert _asked("python", "drive = " + "\\\n" * 300 + "motor\ndrive('a')")[0]
    assert _asked("python", "boat." + " " * 400 + 'fitted("a")')[0]
