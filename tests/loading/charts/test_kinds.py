"""Kinds in the user's words. Common practice, no source."""

from __future__ import annotations

import pytest

from namegen.errors import UnusableInput
from namegen.loading.charts.kinds import WORDS, answers, kind_of
from namegen.model.boards import KINDS


def test_every_known_kind_has_its_words():
    assert set(WORDS) == set(KINDS)


@pytest.mark.parametrize(
    ("cell", "kind"),
    [
        ("Motor", "motor"), ("motors", "motor"), ("DC motor", "motor"), ("Servo motor", "servo"),
        ("distnace", "distance"), ("Temp. sensor", "temperature"),
        ("temperature sensor", "temperature"),
        ("big green button", "switch"), ("range-finder", "distance"), ("colour sensor", "light"),
        ("prop", None), ("", None), ("sensor", None), ("meter", None), ("lamp relay", None),
    ],
)  # fmt: skip
def test_kinds_are_taken_only_where_they_are_sure(cell: str, kind: str | None):
    assert kind_of(cell) == kind


def test_answers():
    assert answers(["prop=motor", "a=b=servo"]) == {"prop": "motor", "a=b": "servo"}
    for text in ("prop", "=motor", "prop=", "prop=two words"):
        with pytest.raises(UnusableInput, match="--kind"):
            answers([text])
