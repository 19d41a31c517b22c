from __future__ import annotations

import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from namegen.text.terminal import printable


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("bowThruster", "bowThruster"),
        ("Écran 水温 мотор 😀", "Écran 水温 мотор 😀"),
        ("a\x1b]0;title\x07", r"a\u{1B}]0;title\u{7}"),
        ("\u202eevird", r"\u{202E}evird"),
        ("bow\ud800", r"bow\u{D800}"),
        ("a\r\n\tb", r"a\r\n\tb"),
        ("a\u00a0b\u3000", r"a\u{A0}b\u{3000}"),
        ("\x9b31m", r"\u{9B}31m"),
    ],
)
def test_hostile_characters_become_visible(text, shown):
    assert printable(text) == shown


@given(st.text())
def test_what_is_shown_can_do_nothing(text):
    shown = printable(text)
    assert shown.isprintable()
    assert not any(unicodedata.category(char)[0] == "C" for char in shown)
    assert printable(shown) == shown
    shown.encode("utf-8")
