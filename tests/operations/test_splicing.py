"""Edits change their own stretch of text and nothing else."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from namegen.model.places import Edit, Place
from namegen.operations.splicing import Overlap, splice
from namegen.text.positions import Lines


def edit(line: int, start: int, end: int, text: str) -> Edit:
    return Edit(Place("a", line, start, line, end), text)


def test_edits_are_made_whatever_their_order():
    text = "one two\r\nthree four\rfive"
    edits = [edit(2, 7, 11, "4"), edit(1, 1, 4, "1"), edit(3, 1, 5, "5")]
    assert splice(text, edits) == "1 two\r\nthree 4\r5"


def test_the_same_edit_twice_counts_once():
    assert splice("abc", [edit(1, 2, 3, "x")] * 2) == "axc"


def test_different_edits_of_one_stretch_are_refused():
    with pytest.raises(Overlap):
        splice("abc", [edit(1, 1, 3, "x"), edit(1, 2, 3, "y")])


@given(st.text(), st.data())
def test_everything_outside_the_edit_stays(text: str, data: st.DataObject):
    start = data.draw(st.integers(0, len(text)))
    end = data.draw(st.integers(start, len(text)))
    if text[start - 1 : start + 1] == "\r\n" or text[end - 1 : end + 1] == "\r\n":
        return  # between the two characters of one line end there is no place
    lines = Lines(text)
    place = Place("a", *lines.locate(start, end))
    assert splice(text, [Edit(place, "new")]) == text[:start] + "new" + text[end:]
