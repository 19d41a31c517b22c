"""Places follow their text through edits, whatever lines these take or bring."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from namegen.model.places import Edit, Place
from namegen.operations.moves import Moves
from namegen.operations.splicing import splice
from namegen.text.positions import Lines

pieces = st.lists(
    st.tuples(st.text("ab\n é", max_size=4), st.text("xy\n", min_size=1, max_size=3)), max_size=4
)


@given(pieces, st.lists(st.text("uv\n", min_size=1, max_size=4), min_size=4, max_size=4))
def test_each_letter_between_edits_is_found_again_there_and_back(stretches, new_texts):
    old, edits, kept = "", [], []
    for (between, edited), text in zip(stretches, new_texts, strict=False):
        kept += range(len(old), len(old) + len(between))
        start = len(old) + len(between)
        old += between + edited
        edits.append((start, len(old), text))
    lines = Lines(old)
    wanted = [Edit(Place("p", *lines.locate(start, end)), text) for start, end, text in edits]
    new = splice(old, wanted)
    moves, after = Moves(old, new, wanted), Lines(new)
    for at in kept:
        place = Place("p", *lines.locate(at, at + 1))
        now = moves.forward(place)
        start = after.index(now.line, now.column)
        assert new[start : start + 1] == old[at]
        if old[at] != "\n":
            assert after.index(now.end_line, now.end_column) - start == 1
            assert moves.back(now) == place
