"""A number in code that bears a figure's name is right to as many digits as it has."""

from __future__ import annotations

import math

import pytest
from msgspec.structs import replace

from namegen.checks.code import outdated_number
from namegen.checks.code.outdated_number import said
from tests.checks.code.boats import HERON, figures, view

TURN = "COUNTS_PER_OUTPUT_TURN"  # 234, whole
DEGREE = "us_per_degree"  # 1360 / 146 = 9.31506849...


def told(code: str) -> list[tuple[str | None, str | None]]:
    return [(one.found, one.expected) for one in outdated_number.check(view(code))]


@pytest.mark.parametrize(
    "name",
    [
        f"BOW_THRUSTER_{TURN}",
        "bow_thruster_counts_per_output_turn",
        "bowThrusterCountsPerOutputTurn",
        "BowThrusterCountsPerOutputTurn",
        "kBowThrusterCountsPerOutputTurn",
        "bow_thruster_counts_per_output_turn_",
        "m_bowThrusterCountsPerOutputTurn",
    ],
)
def test_a_figures_name_in_any_case_style_holds_its_value(name: str):
    assert told(f"{name} = 216") == [("216", "234")]
    assert told(f"{name} = 234") == told(f"{name} = 234.0") == []


@pytest.mark.parametrize(
    ("written", "right"),
    [
        ("9.315", True),
        ("9.31507", True),  # rounded
        ("9.31506", True),  # cut
        ("9.3", True),
        ("9", True),
        ("9.32", True),  # rounded at the third digit
        ("9.33", False),
        ("9.30", False),
        ("9.0", False),
        ("10", False),
        ("0", True),  # not yet filled
    ],
)
def test_a_number_may_be_rounded_or_cut_but_no_more(written: str, right: bool):
    assert (told(f"rudder_{DEGREE} = {written}") == []) == right


@pytest.mark.parametrize(
    "name",
    ["COUNTS_PER_OUTPUT_TURN", "BOW_COUNTS_PER_OUTPUT_TURN", "BOW_THRUSTER_COUNTS_PER_TURN", "BOW"],
)
def test_any_other_name_may_hold_any_number(name: str):
    assert told(f"{name} = 216") == []


def test_a_keyword_needs_the_devices_name_too():
    """Between motor and wheel a chain may lie, and a servo may be kept from its ends."""
    assert told("Hull(bow_thruster_counts_per_output_turn=216)") == [("216", "234")]
    assert told("Hull(bow_thruster_counts_per_output_turn=234)") == []
    assert told('Wheel(boat.motor("bowThruster"), counts_per_output_turn=648)') == []


def test_what_any_setup_gives_is_right():
    both = figures(HERON)
    other = replace(both[0], number=replace(both[0].number, value=216.0))
    code = view(f"BOW_THRUSTER_{TURN} = 216")
    assert list(outdated_number.check(replace(code, figures=(*both, other)))) == []


def test_a_device_may_have_an_identifier_of_its_own():
    one = figures(HERON)[0]
    named = replace(one, device=replace(one.device, identifiers={"java": "BOW_2"}))
    code = replace(view(f"BOW_2_{TURN} = 216"), figures=(named,))
    assert [found.found for found in outdated_number.check(code)] == ["216"]


def test_the_constant_is_named_only_where_it_is_built():
    code = view(f"BOW_THRUSTER_{TURN} = 216")
    (built,) = outdated_number.check(code)
    unbuilt = [replace(one, constants={}) for one in code.figures]
    (bare,) = outdated_number.check(replace(code, figures=unbuilt))
    assert "constant" in built.message
    assert "constant" not in bare.message and "Write 234;" in bare.message


@pytest.mark.parametrize(
    ("value", "shown"), [(234.0, "234"), (1360 / 146, "9.315068"), (math.pi / 1e5, "3.14159265")]
)
def test_a_number_is_shown_as_people_write_it(value: float, shown: str):
    assert said(value).startswith(shown)
