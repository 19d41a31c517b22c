"""Files that nobody writes: names without end, and long lines that a search must pass once."""

from __future__ import annotations

import time

import pytest

from namegen.languages.cpp.grammar import readable
from namegen.languages.cpp.marks import initialises
from namegen.model.workspaces import LookupRule
from tests.languages.asking import BY_DECLARATION, Code, cpp

SENSOR = LookupRule("new", "Sensor", name_at=(1,))


def test_a_name_may_have_any_number_of_words():
    (answer,) = cpp(f"void f() {{ motor({'a.' * 5_000}b); }}")
    assert answer == "[`b` is not defined in code that was read]"
    (answer,) = cpp(f"void f() {{ motor({'a::' * 5_000}b); }}")
    assert answer == "[`b` is not defined in code that was read]"


def test_scopes_may_lie_deep_in_one_another():
    code = "namespace a { " * 470 + 'const char k[] = "x"; void f() { motor(k); }' + "}" * 470
    assert cpp(code) == ["x"]


def test_types_and_lists_may_lie_deep_in_one_another():
    code = f'{"V<" * 450}Motor{" >" * 450} m = get("a");'
    (site,) = Code({"main.cpp": code}, [BY_DECLARATION]).sites("main.cpp")
    assert site.kind == "motor"
    code = f'Sensor s[] = {"{" * 480}{{boat, "a"}}{"}" * 480};'
    assert Code({"main.cpp": code}, [SENSOR]).answers("main.cpp") == ["a"]


@pytest.mark.parametrize("length", [900, 5_000])
def test_types_that_lie_too_deep_do_no_harm(length):
    code = f'{"V<" * length}Motor{" >" * length} m = get("a");'
    Code({"main.cpp": code}, [BY_DECLARATION]).sites("main.cpp")


@pytest.mark.parametrize(
    "line",
    [
        b"#if" + b" __cplusplus" * 10_000,
        b"#if __cplusplus" + b"\n" * 128_000,
        b"class A" * 18_000,
        b"class " + b"A" * 128_000,
        b'"' + b" " * 128_000,
        b"a::b" + b")" * 128_000,
        b"a::b" + b") " * 64_000,
    ],
)
def test_a_long_line_is_searched_soon(line):
    started = time.perf_counter()
    readable(line)
    initialises(line)
    assert time.perf_counter() - started < 2  # each takes some hundredths of a second


@pytest.mark.parametrize(
    ("data", "answer"),
    [
        (b"A::A() : bow_(b) {}", True),
        (b"A::A(B& b) noexcept :\n  bow_{b} {}", True),
        (b"A::A(int n) noexcept :\n  bow_{b} {}", True),
        (b"x ? f(a) : b(c); A::B", True),
        (b"A::A() { f() :: g(); }", False),
        (b"case a::b: c(d);", False),
    ],
)
def test_a_constructors_list_is_told_from_bytes(data, answer):
    assert initialises(data) is answer


@pytest.mark.parametrize(
    "code",
    [
        "for (const auto& n : ) motor(n);",
        "for (auto& : n) motor(n);",
        "using A = ::; A n = k; motor(n); motor(A::n);",
        "motor(::); n = ::;",
        "struct K { template <class T> }; K n; motor(n.k()); motor(K::n);",
        "auto f() -> { return n; } motor(f()); motor(n);",
        "#define SET n)\nmotor(n);",
        "#define SET(x) = x(\nSET(n); motor(n);",
    ],
)
def test_code_that_breaks_off_is_read_all_the_same(code):
    """The parser supposes names where none stand: they are empty."""
    reading = Code({"main.cpp": f"void g() {{ {code} }}"})
    reading.answers("main.cpp")
    for word in ("n", "k", "f()", "A", "K", "x"):
        known = reading.reading("main.cpp")
        assert known is not None
        assert known.definitions(("nowhere", word)) == []
        known.definitions((word,))


@pytest.mark.parametrize("name", ["*this", "this[0]", "(*this)[0]", "(*this).at(0)"])
@pytest.mark.parametrize("around", ["", "struct Boat "])
def test_an_object_itself_has_elements_without_a_name(name, around):
    """Also where no class is around: in a file that breaks off, or behind a macro that opens it."""
    (answer,) = cpp(f"{around}{{ void go() {{ motor({name}); }} }};")
    assert answer in {"[it is made at run time]", "[it is taken out of a table]"}
