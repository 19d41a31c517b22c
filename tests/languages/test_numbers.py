"""Numbers that are written out: their values, judged by Python itself and by javac."""

from __future__ import annotations

import ast
import subprocess
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from namegen import languages
from namegen.languages.numbers import written

JAVA = [
    "1296",
    "1_296L",
    "0x1F",
    "0xFFL",
    "017",
    "0b1_01",
    "5.50f",
    "5.5d",
    "5.",
    ".5",
    "1e3",
    "2.5e-2D",
    "0",
    "7f",
]

KOTLIN = [
    *("1296", "1_296L", "0x1F", "0xFFL", "0b1_01", "5.50f"),
    *("5.5", ".5", "1e3", "2.5e-2", "0", "7f"),
]


@given(st.integers(0, 10**12) | st.floats(0, 1e12, allow_subnormal=False))
def test_a_number_that_python_wrote_has_its_value(number: float):
    known = written(repr(number))
    assert known is not None and known[0] == pytest.approx(number)


@pytest.mark.parametrize(
    "text", ["1_296", "0x1F", "0b101", "0o17", "5.50", "5.", ".5", "1e3", "1E-2", "0_0"]
)
def test_pythons_ways_to_write_a_number(text: str):
    known = written(text)
    assert known is not None and known[0] == ast.literal_eval(text)


@pytest.mark.parametrize(
    "text", ["3j", "", ".", "_", "1__e", "0xZ", "nan", "1" * 50, "1e9999", "\u0661"]
)
def test_what_is_no_plain_number_is_not_known(text: str):
    assert written(text, "lfd") is None


@pytest.mark.parametrize(
    ("text", "unit"), [("5.50", 0.01), ("5", 1), ("1e3", 1000), ("2.5e-2", 0.001), ("0x10", 1)]
)
def test_the_last_digit_says_how_exact_a_number_is(text: str, unit: float):
    known = written(text)
    assert known is not None and known[1] == pytest.approx(unit)


def test_javas_ways_to_write_a_number(tmp_path: Path, tool):
    calls = "".join(f"System.out.println((double) {text});" for text in JAVA)
    source = tmp_path / "Main.java"
    source.write_text(f"class Main {{ public static void main(String[] a) {{ {calls} }} }}")
    subprocess.run([tool("javac"), "-d", str(tmp_path), str(source)], check=True)
    done = subprocess.run(
        [tool("java"), "-cp", str(tmp_path), "Main"], capture_output=True, text=True, check=True
    )
    values = [float(line) for line in done.stdout.split()]
    known = [written(text, "lfd") for text in JAVA]
    assert [one[0] if one else None for one in known] == pytest.approx(values, rel=1e-6)


@pytest.mark.xdist_group("kotlinc")
def test_kotlins_ways_to_write_a_number(tmp_path: Path, tool):
    calls = "".join(f"    println({text}.toDouble())\n" for text in KOTLIN)
    source, jar = tmp_path / "Main.kt", tmp_path / "all.jar"
    source.write_text(f"fun main() {{\n{calls}}}\n")
    command = [tool("kotlinc"), source, "-include-runtime", "-d", jar]
    subprocess.run(command, capture_output=True, check=True)
    done = subprocess.run(
        [tool("java"), "-cp", jar, "MainKt"], capture_output=True, text=True, check=True
    )
    values = [float(line) for line in done.stdout.split()]
    code = "".join(f"val n{place} = {text}\n" for place, text in enumerate(KOTLIN))
    names = [f"n{place}" for place in range(len(KOTLIN))]
    known = [value for _, value in numbers("kotlin", code, *names)]
    assert known == pytest.approx(values, rel=1e-6)


CPP = [
    "1296",
    "1'296ul",
    "0x1'F",
    "0xFFULL",
    "017",
    "0b1'01u",
    "5.50f",
    "5.5L",
    "5.",
    ".5F",
    "1e3",
    "2.5e-2",
    "0",
    "7LL",
]


def test_cpps_ways_to_write_a_number(tmp_path: Path, tool):
    calls = "".join(f"say({text});" for text in CPP)
    source = tmp_path / "main.cpp"
    say = 'template <class T> void say(T n) { std::printf("%.17g\\n", double(n)); }'
    source.write_text(f"#include <cstdio>\n{say}\nint main() {{ {calls} }}\n")
    subprocess.run([tool("g++"), str(source), "-o", str(tmp_path / "main")], check=True)
    done = subprocess.run([tmp_path / "main"], capture_output=True, text=True, check=True)
    values = [float(line) for line in done.stdout.split()]
    known = [one for text in CPP for one in numbers("cpp", f"auto A = {text};", "A")]
    assert [value for _, value in known] == pytest.approx(values, rel=1e-6)


PYTHON_CODE = """
A = 48 * 26.9
class Gears:
    B: int = (1_296)
    def set(self):
        self.B = 12 * 4 * 27
        A = -3
B = A
for B in 3, 4: pass
B, A = 5, 6.50
B += 3
# A = 7
"A = 8"
A = 9 if B else 10
"""
PYTHON_GIVEN = """
f(A=1, B=A, **{"A": 2})
def f(A=3, B: float = 4.0, *, C=5): pass
lambda A=6: A
table = {"A": 7, 'B': 8, A: 9, "A B": 10, f"{A}A": 11, "C": "A"}
table["A"] = 12
table["A"] += 13
table["A"], B = 14, 15
box.lid.A = 16
box.A.lid = 17
class Box:
    def f(self): self.A = 18
f("A", 19); A(20); set_A(21); table.get("A", 22); A == 23; box.A == 24; {"B", 25}; f(*A, 26)
"""
JAVA_GIVEN = """
class Gears {
  double Aa;
  void f() {
    box.setAa(1); box.withAa(2.5).setAa(3, 4); box.Aa(5); box.setAab(6); setAa(-7); box.setAa();
    box.Aa = 8; this.Aa = 9; box.Aa += 10; box.Aa.b = 11;
    table.put("Aa", 12); table.put("Aa", "Bb"); table.put(13, "Aa"); table.put("Aa", 14, 15);
    f("Aa", 16); log("setAa(17)"); // setAa(18)
  }
}
"""
CPP_GIVEN = """
struct Box : Lid {
  Box() : Aa(1), Lid(2) {}
  void f() {
    box.setAa(3); box->withAa(2.5).SetAa(3, 4); box.Aa(5); setAab(6); setAa(-7); box.setAa();
    box.Aa = 8; this->Aa = 9; box->Aa += 10; box.Aa.b = 11; Drive d{.Aa = 12};
    table["Aa"] = 13; table["Aa"] += 14; Table t{{"Aa", 15}, {"Ab", 16}, {17, "Aa"}};
    f("Aa", 18); log("setAa(19)"); // setAa(20)
  }
};
"""
CPP_CODE = """
#define A 1'296
constexpr int B = 12*(4*27); static const double c{5.50f};
struct Gears { static constexpr long A = 0x10L; double c = 3.f; enum { B = 4 }; };
void f() { A = 2 + 3; int B(5); g(A + 2); /* A = 4 */ A += 5; A = 8 / 3; }
"""
JAVA_CODE = """
class Gears {
  static final int A = 1_296, B = 12*(4*27);
  final double c = 5.50f;
  void f() { A = 0x10; int A = B; this.c = 3L; g(A + 2); /* A = 4 */ A += 5; A = 8 / 3; }
}
"""
KOTLIN_CODE = """
const val A = 1_296
class Gears(val c: Double = 5.50, a: Int) {
  private val B: Int = 12 * (4 * 27)
  fun f(A: Int = 0x10) { var B = 7; B = 9; this.c = 3f; g(A + 2) }
  fun g() { /* A = 4 */ B += 5; val A = 8 / 3 }
}
"""
KOTLIN_GIVEN = """
fun f() {
  box.setAa(1); box.withAa(2.5).setAa(3, 4); box.Aa(5); box.setAab(6); setAa(-7); box.setAa()
  box.Aa = 8; this.Aa = 9; box.Aa += 10; box.Aa.b = 11; box?.Aa = 12
  table.put("Aa", 13); table.put("Aa", "Bb"); table.put(14, "Aa"); table["Aa"] = 15
  mapOf("Aa" to 16, "Bb" to 17, "Aa" or 18, "Aab" to 19); f(Aa = 20, Bb = 21)
  Gears(Bb = 22, Aa = 23)
  f("Aa", 24); log("setAa(25)"); table["Aa"] += 26; "$Aa" to 27; Aa == 28 // setAa(29)
}
"""


def numbers(language: str, code: str, *names: str) -> list[tuple[str, float]]:
    reading = languages.named(language).read(code.encode(), ())
    return [(one.name, round(one.value, 6)) for one in reading.numbers(names)]


def test_a_number_counts_where_a_name_is_filled_with_it_and_nothing_else():
    assert numbers("python", PYTHON_CODE, "A", "B") == [
        ("A", 1291.2),
        ("B", 1296),
        ("B", 1296),
        ("B", 5),
        ("A", 6.5),
    ]
    assert numbers("java", JAVA_CODE, "A", "B", "c") == [
        ("A", 1296),
        ("B", 1296),
        ("c", 5.5),
        ("A", 16),
        ("c", 3),
    ]
    assert numbers("kotlin", KOTLIN_CODE, "A", "B", "c") == [
        ("A", 1296),
        ("c", 5.5),
        ("B", 1296),
        ("A", 16),
        ("B", 7),
        ("B", 9),
        ("c", 3),
    ]
    assert numbers("cpp", CPP_CODE, "A", "B", "c") == [
        ("A", 1296),
        ("B", 1296),
        ("c", 5.5),
        ("A", 16),
        ("c", 3),
        ("B", 4),
        ("B", 5),
    ]


def test_a_number_counts_where_it_is_given_to_an_argument_a_key_or_another_ones_field():
    """`python/test_named_numbers.py` holds Python's own `ast` against it."""
    found = numbers("python", PYTHON_GIVEN, "A", "B", "C")
    named = {"A": [1, 2, 3, 6, 7, 12, 16, 18], "B": [4, 8, 15], "C": [5]}
    assert sorted(found) == [(name, one) for name, some in named.items() for one in some]
    assert [value for _, value in numbers("java", JAVA_GIVEN, "Aa")] == [1, 2.5, 8, 9, 12]
    found = [value for _, value in numbers("kotlin", KOTLIN_GIVEN, "Aa")]
    assert found == [1, 2.5, 8, 9, 12, 13, 15, 16, 20, 23]
    found = [value for _, value in numbers("cpp", CPP_GIVEN, "Aa")]
    assert found == [1, 3, 2.5, 8, 9, 12, 13, 15]


@pytest.mark.parametrize("code", ['"A', "f(A=", '{"A":', '["A"] = 3', "A =", 'x["A"', "{{@c A o"])
def test_broken_code_names_no_number_and_stops_nothing(code: str):
    assert numbers("python", code, "A") == []
    assert numbers("java", code, "A") == []
    assert numbers("kotlin", code, "A") == []
    assert numbers("cpp", code, "A") == []


def test_a_product_is_as_exact_as_its_factors():
    reading = languages.named("python").read(b"A = 48 * 26.9\nB = 48 * 27\n", ())
    assert [one.unit for one in reading.numbers(["A", "B"])] == pytest.approx([4.8, 1])


def test_a_broken_stretch_has_no_numbers_and_a_long_product_is_no_figure():
    assert numbers("python", "A = 5 5 5\nB = 6\n", "A", "B") == [("B", 6)]
    assert numbers("python", "A = " + "*".join("2" * 21), "A") == []
    assert numbers("python", "A = " + "(" * 3000 + "2" + ")" * 3000, "A") in ([], [("A", 2)])
