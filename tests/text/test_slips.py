from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from namegen.text.distance import osa
from namegen.text.slips import (
    ANY,
    DOUBLED,
    FIRST,
    HEARD,
    LOOKS,
    NEIGHBOUR,
    SOUND,
    SWAPPED,
    slip_cost,
    typing_cost,
)

WORD = st.text("abcdeimno01l", max_size=8)


@pytest.mark.parametrize(
    ("found", "expected", "cost"),
    [
        ("rudder", "rudder", 0),
        ("ruder", "rudder", DOUBLED),
        ("rudddder", "rudder", 2 * DOUBLED),
        ("rduder", "rudder", SWAPPED),
        ("urdder", "rudder", SWAPPED),
        ("rudfer", "rudder", NEIGHBOUR),
        ("ruddar", "rudder", SOUND),
        ("ruddqr", "rudder", ANY),
        ("qudder", "rudder", ANY + FIRST),
        ("lamp0", "lampo", LOOKS),
        ("\u00e9cran", "ecran", LOOKS),
    ],
)
def test_easy_slips_cost_less(found, expected, cost):
    assert typing_cost(found, expected) == pytest.approx(cost)


@pytest.mark.parametrize(
    ("found", "expected"),
    [
        ("fotograf", "photograph"),
        ("rickoshay", "ricochet"),
        ("nockout", "knockout"),
        ("akselerometer", "accelerometer"),
        ("kwartz", "quartz"),
    ],
)
def test_what_sounds_alike_is_nearer_than_its_letters_are(found, expected):
    assert HEARD <= slip_cost(found, expected) <= typing_cost(found, expected) - 0.5


def test_short_words_sound_alike_by_chance():
    assert slip_cost("foks", "phox") == typing_cost("foks", "phox")
    assert slip_cost("ruder", "rudder") == DOUBLED < HEARD


@given(WORD, WORD)
def test_cost_keeps_within_the_plain_distance(found, expected):
    edits = osa(found, expected)
    assert slip_cost(found, expected) <= edits * ANY + FIRST + 1e-9
    assert (slip_cost(found, expected) == 0) == (found == expected)


@given(WORD, WORD)
def test_cost_is_the_same_both_ways(found, expected):
    assert slip_cost(found, expected) == pytest.approx(slip_cost(expected, found))
