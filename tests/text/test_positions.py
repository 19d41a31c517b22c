from __future__ import annotations

import time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from namegen.text.positions import Lines

TEXTS = st.text(st.sampled_from("ab é水😀\r\n\x0b\x0c\u2028\t"))


def counted(text: str, index: int) -> tuple[int, int]:
    """Return line and column by reading the text letter by letter."""
    line = column = 1
    for at, char in enumerate(text[:index]):
        if char == "\n" or (char == "\r" and text[at + 1 : at + 2] != "\n"):
            line, column = line + 1, 1
        else:
            column += 1
    return line, column


@given(TEXTS, st.data())
def test_places_are_those_of_a_reader_who_counts(text, data):
    start = data.draw(st.integers(0, len(text)))
    end = data.draw(st.integers(start, len(text)))
    assert Lines(text).locate(start, end) == (*counted(text, start), *counted(text, end))


@given(TEXTS, st.data())
def test_bytes_and_letters_give_the_same_places(text, data):
    index = data.draw(st.integers(0, len(text)))
    offset = len(text[:index].encode())
    lines, of_bytes = Lines(text), Lines.of_utf8(text.encode())
    assert of_bytes.position(offset) == lines.position(index)
    assert len(of_bytes) == len(lines)
    assert [of_bytes.line(n + 1) for n in range(len(lines))] == [
        lines.line(n + 1) for n in range(len(lines))
    ]


@given(TEXTS, st.data())
def test_a_place_leads_back_to_its_offset(text, data):
    index = data.draw(st.integers(0, len(text)))
    if text[index - 1 : index + 1] == "\r\n":
        return  # between the two there is no column
    lines, of_bytes = Lines(text), Lines.of_utf8(text.encode())
    assert lines.index(*lines.position(index)) == index
    offset = len(text[:index].encode())
    assert of_bytes.index(*of_bytes.position(offset)) == offset


@given(TEXTS)
def test_lines_hold_everything_but_their_ends(text):
    lines = Lines(text)
    joined = "".join(lines.line(number + 1) for number in range(len(lines)))
    assert joined == text.replace("\r", "").replace("\n", "")


@pytest.mark.parametrize("make", [Lines, lambda text: Lines.of_utf8(text.encode())])
def test_places_outside_the_text_are_refused(make):
    lines = make("é\nbow\n")
    assert len(lines) == 3
    assert lines.line(3) == ""
    for line, column in [(0, 1), (4, 1), (2, 0), (2, 5), (1, 3)]:
        with pytest.raises(IndexError):
            lines.index(line, column)
    with pytest.raises(IndexError):
        lines.line(4)
    assert lines.position(999) == (3, 1)


def test_bytes_that_are_no_utf8_count_one_column_each():
    lines = Lines.of_utf8(b"\xffab\n\xc3x")
    assert lines.locate(1, 2) == (1, 2, 1, 3)
    assert lines.locate(5, 6) == (2, 2, 2, 3)
    assert lines.index(2, 2) == 5


def test_a_big_text_is_cheap():
    data = ("x = 'é'\n" * 200_000).encode()
    start = time.process_time()
    lines = Lines.of_utf8(data)
    for offset in range(0, len(data), 900):
        lines.locate(offset, offset + 5)
    assert time.process_time() - start < 2
