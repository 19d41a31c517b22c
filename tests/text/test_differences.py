from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from namegen.text.differences import marks, spell_out
from namegen.text.terminal import printable


@pytest.mark.parametrize(
    ("found", "expected", "under_found", "under_expected"),
    [
        ("bowthruster", "bowThruster", "   ^", "   ^"),
        ("bowTruster", "bowThruster", "", "    ^"),
        ("bowTThruster", "bowThruster", "    ^", ""),
        ("bwoThruster", "bowThruster", " ^^", " ^^"),
        ("bow\u200bLamp", "bowLamp", "   ^^^^^^^^", ""),
        ("\u202eevird", "drive", "^^^^^^^^^   ^", "^   ^"),
        ("bow", "bow", "", ""),
        ("", "bow", "", "^^^"),
        ("bow ", "bow", "   ^", ""),
        ("rightWhel ", "rightWheel", "         ^", "        ^"),
    ],
)
def test_carets_stand_below_the_letters_that_differ(found, expected, under_found, under_expected):
    if found.startswith("\u202e"):
        assert marks(found, expected)[0].startswith("^" * len(printable("\u202e")))
    else:
        assert marks(found, expected) == (under_found, under_expected)


@given(st.text(max_size=12), st.text(max_size=12))
def test_carets_fit_below_the_text_as_it_is_shown(found, expected):
    for line, text in zip(marks(found, expected), (found, expected), strict=True):
        assert len(line) <= len(printable(text))
        assert set(line) <= {"^", " "}
    assert (marks(found, expected) == ("", "")) == (found == expected)


@pytest.mark.parametrize(
    ("found", "expected", "phrase"),
    [
        ("bowThruster", "bowThruster", "no difference"),
        ("bowThruster", "bowthruster", "capital T instead of small t at letter 4"),
        ("rdder", "rudder", 'letter 2 "u" is missing'),
        ("rduder", "rudder", "letters 2 and 3 are swapped"),
        ("ruddder", "rudder", '"d" at letter 5 is too much'),
        ("rudders", "rudder", '"s" at the end is too much'),
        ("b\u043ew", "bow", "Cyrillic \u043e (U+043E) instead of o at letter 2"),
        ("bow ", "bow", "a blank at the end"),
        (" bow", "bow", "a blank at the start"),
        ("rightWhel ", "rightWheel", 'letter 9 "e" is missing, a blank at the end'),
        (" ightWheel", "rightWheel", 'a blank at the start, letter 1 "r" is missing'),
        (
            "  bwoLamp ",
            "bowLamp",
            "2 blanks at the start, letters 4 and 5 are swapped, a blank at the end",
        ),
        ("bow  ", "bow", "2 blanks at the end"),
        ("bow\u00a0", "bow", "an invisible NO-BREAK SPACE (U+00A0) at the end"),
        ("bow\u200bLamp", "bowLamp", "an invisible ZERO WIDTH SPACE (U+200B) at letter 4"),
        ("netwinch", "net winch", "a blank at letter 4 is missing"),
        ("arm0", "armO", "digit 0 instead of capital O at letter 4"),
        ("level1", "levell", "digit 1 instead of small l at letter 6"),
        ("hullTempSensor", "hullTemp", '"Sensor" at the end is too much'),
        ("hull", "hullTemp", '"Temp" at the end is missing'),
        ("BOW_THRUSTER", "bowThruster", "the same words in another style"),
        ("winchNet", "netWinch", "the same words in another order"),
        ("BOWTHRUSTER", "bowthruster", "the same words in another style"),
        ("bOwThRuStEr", "bowthruster", "the case of 5 letters differs"),
        ("rudder", "heading", "6 letters differ"),
        ("x" * 301, "bow", "a different text"),
    ],
)
def test_a_difference_in_words(found, expected, phrase):
    assert spell_out(found, expected) == phrase


@given(st.text(max_size=10), st.text(max_size=10))
def test_a_phrase_is_safe_to_print(found, expected):
    phrase = spell_out(found, expected)
    assert phrase and phrase.isprintable()
