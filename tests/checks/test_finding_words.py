"""The small pieces that messages are made of."""

from __future__ import annotations

import doctest

import pytest

from namegen.checks import wording
from namegen.checks.hints import did_you_mean, nearest
from namegen.checks.misreading import misread
from namegen.checks.wiring import ranges


def test_the_examples_in_the_docstrings_hold():
    assert doctest.testmod(wording).failed == 0


def test_a_name_can_do_nothing_on_a_terminal():
    assert "\x1b" not in wording.quoted("bow\x1b[2J")
    assert "\u202e" not in wording.listed(["bow\u202e"])


@pytest.mark.parametrize(
    ("labels", "shown"),
    [
        (("1", "2", "3"), "1-3"),
        (("1", "2"), "1, 2"),
        (("0", "1", "2", "5", "7", "8", "9"), "0-2, 5, 7-9"),
        (("A", "B", "C"), "A, B, C"),
        ((), ""),
    ],
)
def test_ranges_of_labels(labels, shown):
    assert ranges(labels) == shown


@pytest.mark.parametrize(
    ("value", "shown"), [(9.25, "9.25"), (15.0, "15"), (1200.0, "1200"), (2.5881, "2.59")]
)
def test_figures(value, shown):
    assert wording.number(value) == shown


@pytest.mark.parametrize(
    ("one", "other", "is_misread"),
    [
        ("rudder", "ruder", True),
        ("harbor", "harbour", True),
        ("netWinch", "netWnich", True),
        ("armMotor1", "armMotor2", False),
        ("winchA", "winchB", False),
        ("leftPump", "rightPump", False),
        ("winch", "winch2", False),
        ("bowLamp", "rowLamp", False),
    ],
)
def test_names_that_readers_take_for_one_another(one, other, is_misread):
    assert misread(one, other) is is_misread
    assert misread(other, one) is is_misread


def test_a_hint_is_given_only_for_one_clear_word():
    assert nearest("brigde", ["bridge", "stern"]) == "bridge"
    assert nearest("harbor", ["harbour", "lookout"]) == "harbour"
    assert nearest("thruster-z", ["thruster-a", "thruster-b"]) is None
    assert nearest("bow", ["stern"]) is None
    assert nearest("", ["bridge"]) is None
    assert did_you_mean(None) == ""
