from __future__ import annotations

import sys
import unicodedata

from namegen.text.characters import is_ignorable, is_typeable, is_visible, name_of


def test_ignorable_characters_are_unicodes():
    # Count of Default_Ignorable_Code_Point in DerivedCoreProperties.txt, Unicode 17.0.0.
    assert sum(is_ignorable(chr(code)) for code in range(sys.maxunicode + 1)) == 4174


def test_what_a_reader_sees():
    for char in "aé水 ~😀":
        assert is_visible(char)
    for char in "\t\n\x1b\x7f\u00a0\u00ad\u200b\u202e\u2028\ufeff\ud800\ue000\ufe0f\u3164\u0378":
        assert not is_visible(char), f"{ord(char):04X}"


def test_what_a_plain_keyboard_has():
    assert all(is_typeable(chr(code)) for code in range(0x20, 0x7F))
    assert not any(map(is_typeable, "\t\x7f\u00a0é"))


def test_every_character_has_a_name():
    assert name_of("\ud800") == "SURROGATE (U+D800)"
    assert name_of("\x01") == "CONTROL (U+0001)"
    assert name_of("\ue000") == "PRIVATE USE (U+E000)"
    for code in range(0, sys.maxunicode + 1, 97):
        assert unicodedata.name(chr(code), "") in name_of(chr(code))
