"""Literals of C++: their value and their spelling, judged by g++ and a run of the program."""

from __future__ import annotations

import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from namegen import languages
from namegen.languages.cpp.literals import value_of
from namegen.model.facts import Text
from namegen.model.places import Span
from namegen.model.workspaces import LookupRule
from tests.languages.cpp.listening import names, output

CPP = languages.named("cpp")
RULES = (LookupRule("call", "hear"),)
OPENINGS = ['"', 'u8"', 'L"', 'u"', 'U"']
RAW = ['R"(', 'R"x(', 'u8R"--(', 'LR"(', 'UR"(', 'uR"(']
WRITTEN = [
    r'"\a\b\t\n\v\f\r\"\'\?\\"',
    r'"\1 \7 \07 \101 \1011 \18 \x41 \x7e"',
    r'"\303\251 \xc3\xa9 \u00e9 \U0001F600 \u0041"',
    '"é字😀"',
    'u8"\\u00e9é\\x41"',
    'L"\\xe9\\u00e9é\\101😀"',
    'u"\\xe9\\u00e9é\\101"',
    'U"\\x1F600\\U0001F600é"',
    '"bow\\\nThruster"',
    '"bow\\\r\nThruster"',
    'R"(a\\n"b)"',
    'R"x(a)"b)x"',
    'R"(a\nb)"',
    'u8R"(é\\u00e9)"',
    'LR"--(é)--"',
    '"%d {} $1 // no /* no */ comment"',
    '"??/"',
]
SIDE_BY_SIDE = ['"a" "b"', 'u8"a" "b"', 'R"(a)" "b" /* c */ "d"', '"\\x4" "1"', 'L"a" L"b"']
HEAR = """\
#pragma once
#include <type_traits>
template <class Letter> void hear(const Letter* text) {
  std::string bytes;
  for (; *text; ++text) {
    auto code = static_cast<unsigned long>(std::make_unsigned_t<Letter>(*text));
    if (sizeof(Letter) == 1 || code < 0x80) { bytes += static_cast<char>(code); continue; }
    if (code < 0x800) bytes += static_cast<char>(0xC0 | code >> 6);
    else if (code < 0x10000) bytes += static_cast<char>(0xE0 | code >> 12);
    else bytes += static_cast<char>(0xF0 | code >> 18);
    if (code >= 0x10000) bytes += static_cast<char>(0x80 | (code >> 12 & 63));
    if (code >= 0x800) bytes += static_cast<char>(0x80 | (code >> 6 & 63));
    bytes += static_cast<char>(0x80 | (code & 63));
  }
  heard(bytes);
}
inline void hear(const char8_t* text) { hear(reinterpret_cast<const char*>(text)); }
inline void hear(const char16_t* text) { hear(reinterpret_cast<const unsigned short*>(text)); }
inline void hear(const char32_t* text) { hear(reinterpret_cast<const unsigned*>(text)); }
inline void hear(const wchar_t* text) { hear(reinterpret_cast<const unsigned*>(text)); }
"""


def random_texts() -> list[str]:
    """Return texts of every kind of character but NUL, which ends a text, the same every time."""
    chance = random.Random(20)
    letters = [*map(chr, range(1, 256)), *"éяﾊ字אعœ\u2028\u202e\ufeff"]
    return ["".join(chance.choices(letters, k=chance.randrange(12))) for _ in range(200)]


def plain(opening: str) -> Text:
    return Text("", Span(0, 0), opening)


def test_literals_mean_what_the_program_gets(tmp_path, tool):
    texts = random_texts()
    spelt = [(CPP.spell(one, plain(opening)), opening) for one in texts for opening in OPENINGS]
    assert all(spelling is not None for spelling, _ in spelt)
    literals = [f'{opening}{spelling}"' for spelling, opening in spelt] + WRITTEN + SIDE_BY_SIDE
    calls = "".join(f"hear({one});\n" for one in literals)
    main = f'#include "hear.h"\nint main() {{\n{calls}}}\n'
    got = names(output({"hear.h": HEAR, "main.cpp": main}, tmp_path, tool))
    assert got[: len(spelt)] == [one for one in texts for _ in OPENINGS]
    read = [_whole(site.name) for site in CPP.read(main.encode(), RULES).lookups]
    assert read == got


def _whole(name) -> str | None:
    parts = name.parts if hasattr(name, "parts") else (name,)
    return (
        "".join(part.value for part in parts) if all(isinstance(p, Text) for p in parts) else None
    )


@given(
    st.text(st.characters(exclude_categories=["Cs"], exclude_characters="\0")),
    st.sampled_from(OPENINGS),
)
def test_spelling_reads_back(value, opening):
    spelling = CPP.spell(value, plain(opening))
    assert spelling is not None
    assert value_of(spelling, opening) == value
    (site,) = CPP.read(f'void f() {{ hear({opening}{spelling}"); }}'.encode(), RULES).lookups
    assert isinstance(site.name, Text)
    assert (site.name.value, site.name.opening) == (value, opening)


def test_a_text_that_would_end_early_is_not_spelt():
    assert CPP.spell("bow\0x", plain('"')) is None


@pytest.mark.parametrize("opening", RAW)
def test_raw_texts_are_spelt_where_they_can_say_it(opening):
    assert CPP.spell('a\\n"b', plain(opening)) == 'a\\n"b'
    ending = ")" + opening.partition("R")[2][1:-1] + '"'
    assert CPP.spell(f"a{ending}b", plain(opening)) is None
    assert CPP.spell("a\nb", plain(opening)) is None


@pytest.mark.parametrize(
    "body", [r"\q", r"\u12", r"\x", r"\U0011FFFF", r"\ud800", r"\400", r"\xfff"]
)
def test_escapes_that_no_compiler_takes_have_no_value(body):
    assert value_of(body, '"') is None


@pytest.mark.parametrize("opening", ["'", 'X"', 'R"a b(', ""])
def test_other_quotes_are_not_rewritten(opening):
    assert CPP.spell("bow", plain(opening)) is None
    assert value_of("bow", opening) is None


def test_bytes_that_are_no_text_have_no_value():
    assert value_of(r"\xff", '"') is None
    assert value_of(r"\xff", 'L"') == "ÿ"


def test_latin_1_is_read_where_utf_8_fails():
    decoded = CPP.decode('void f() { hear("é"); }'.encode("latin-1"))
    (site,) = CPP.read(decoded.utf8, RULES).lookups
    assert isinstance(site.name, Text)
    assert (site.name.value, decoded.encoding) == ("é", "latin-1")
