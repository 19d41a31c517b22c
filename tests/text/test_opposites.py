from __future__ import annotations

import itertools

import pytest

from namegen.text.opposites import opposed, telling


@pytest.mark.parametrize(
    ("a", "b"),
    [
        ("left", "right"),
        ("bow", "stern"),
        ("port", "starboard"),
        ("upper", "lower"),
        ("open", "close"),
        ("front", "back"),
        ("in", "out"),
        ("Light", "dark"),
        ("light", "heavy"),
    ],
)
def test_counterparts(a, b):
    assert opposed(a, b) and opposed(b, a)
    assert telling(a) and telling(b)


def test_a_word_is_not_its_own_counterpart_and_groups_are_apart():
    assert not opposed("left", "Left")
    assert not opposed("left", "stern")
    assert not opposed("heavy", "dark")
    assert not telling("rudder")


def test_every_word_has_a_counterpart():
    from namegen.text.opposites import _groups_of

    words = _groups_of()
    assert all(any(opposed(a, b) for b in words) for a in words)
    for a, b in itertools.islice(itertools.combinations(words, 2), 2000):
        assert opposed(a, b) == opposed(b, a)
