"""Decoded text knows the way back to its bytes."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from namegen.errors import UnusableInput
from namegen.languages.encodings import Decoded, decode_as


@given(st.text(alphabet=st.characters(exclude_categories=["Cs"], exclude_characters="\0")))
def test_utf8_comes_back_to_the_byte(text):
    data = text.encode()
    decoded = decode_as(data, "utf-8")
    assert decoded.survives(data)
    assert decoded.mark + decoded.utf8 == data


@pytest.mark.parametrize(
    ("data", "encoding", "words"),
    [
        (b"\xff", "utf-8", r"it is not text in UTF-8 \(invalid start byte at byte 0\)\n"),
        (b"a", "no-such", "not known"),
        (b"a\0", "utf-8", "NUL"),
        (b"a", "hex", "not known"),
    ],
)
def test_refusals_say_what_is_wrong(data, encoding, words):
    with pytest.raises(UnusableInput, match=words) as raised:
        decode_as(data, encoding)
    assert raised.value.remedy


def test_half_a_character_has_no_utf8():
    with pytest.raises(UnusableInput, match="half a character"):
        _ = Decoded("\ud800", "utf-8").utf8
