from __future__ import annotations

import json
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from rapidfuzz.distance import OSA

from namegen.text.distance import osa, script

PUBLISHED = json.loads(
    (Path(__file__).parent / "data" / "distances.json").read_text(encoding="utf-8")
)
SHORT = st.text("abAB ", max_size=8)


@pytest.mark.parametrize(("kind", "a", "b", "distance", "source"), PUBLISHED)
def test_published_distances(kind, a, b, distance, source):
    # Each row of data/distances.json names its source. Where a swap would be shorter than
    # plain Levenshtein, the row says so by its kind.
    if kind == "osa":
        assert osa(a, b) == len(script(a, b)) == distance, source
    else:
        assert osa(a, b) <= distance, source


@given(SHORT, SHORT)
def test_a_script_is_as_short_as_the_distance(found, expected):
    assert len(script(found, expected)) == OSA.distance(found, expected)


@given(st.text("abcAB", max_size=9), st.text("abcAB", max_size=9))
def test_a_script_makes_the_found_text_the_expected_one(found, expected):
    made, at = "", 0
    for step in script(found, expected):
        made += found[at : step.at]
        assert len(made) == step.to
        assert found[step.at : step.at + len(step.found)] == step.found
        assert expected[step.to : step.to + len(step.expected)] == step.expected
        made += step.expected
        at = step.at + len(step.found)
    assert made + found[at:] == expected


def test_of_two_short_scripts_the_plainer_one_is_taken():
    steps = script("hulltmp", "hullTemp")
    assert [(s.action, s.found, s.expected) for s in steps] == [
        ("replace", "t", "T"),
        ("insert", "", "e"),
    ]
