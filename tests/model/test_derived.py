"""Derived numbers against published worked examples."""

from __future__ import annotations

import math

import pytest

from namegen.model.boards import Part
from namegen.model.derived import (
    counts_per_mm,
    counts_per_output_turn,
    derived_numbers,
    largest_fuse_amps,
    no_load_rpm,
    us_per_degree,
    wire_area_mm2,
    wire_diameter_mm,
)
from namegen.model.manifests import Device


def encoder(cycles, decoding, gear=None, on="motor") -> Part:
    return Part("p", encoder_cycles=cycles, decoding=decoding, gear=gear, encoder_on=on)


def device(travel_mm=None) -> Device:
    return Device("bowThruster", "motor", travel_mm=travel_mm)


@pytest.mark.parametrize(
    ("cycles", "decoding", "gear", "counts"),
    [
        # Counts per cycle 1, 2, 4: US Digital glossary, "Cycle"; NI USB-621x manual, chapter 8.
        # 2000 lines give 2000, 4000 or 8000 counts: the example of that rule, list mail.
        (2000, 1, 1, 2000),
        (2000, 2, 1, 4000),
        (2000, 4, 1, 8000),
        # 250 lines give 1000 counts at four per cycle, as published in an answer.
        (250, 4, 1, 1000),
        # Gear trains of Shigley's Mechanical Engineering Design, chapter 13:
        # (88/16)^2 = 30.25 and 108/18 * 105/21 = 30; the product with 12 cycles is arithmetic.
        (12, 4, (88 / 16) ** 2, 1452),
        (12, 4, 108 / 18 * 105 / 21, 1440),
    ],
)
def test_counts_per_output_turn(cycles, decoding, gear, counts):
    assert counts_per_output_turn(encoder(cycles, decoding, gear)) == pytest.approx(counts)


def test_an_encoder_on_the_output_shaft_does_not_see_the_gear():
    assert counts_per_output_turn(encoder(360, 4, 27, on="output")) == 1440


@pytest.mark.parametrize(
    "part",
    [
        encoder(None, 4, 27),
        encoder(12, None, 27),
        encoder(12, 4, None),
        encoder(12, 4, 27, on=None),
    ],
)
def test_nothing_is_guessed_where_a_figure_is_missing(part):
    assert counts_per_output_turn(part) is None
    assert counts_per_mm(device(100), part) is None


def test_without_a_gear_the_shaft_does_not_matter():
    assert counts_per_output_turn(encoder(360, 4, None, on=None)) == 1440


def test_counts_per_mm_of_a_wheel():
    # Wheel of 80 mm, 1452 counts: 0.173091 mm per count, pi * D / counts, arithmetic.
    counts = counts_per_mm(device(math.pi * 80), encoder(12, 4, 30.25))
    assert counts is not None
    assert 1 / counts == pytest.approx(0.173091, abs=5e-7)
    assert counts_per_mm(device(), encoder(12, 4, 30.25)) is None


def test_speed_follows_the_voltage():
    # Nise, Control Systems Engineering, chapter 2: 12 V, 100 N m stall, 55 N m at 600 rad/s,
    # so 1333.3 rad/s without load and Kb = 0.009 V s / rad, a constant of the motor.
    rpm = 1333.333 * 60 / (2 * math.pi)
    part = Part("p", volts=12, no_load_rpm=rpm)
    for volts in (6.0, 12.0, 12.8):
        speed = no_load_rpm(part, volts)
        assert speed is not None
        assert volts / (speed * 2 * math.pi / 60) == pytest.approx(0.009, rel=1e-5)
    assert no_load_rpm(Part("p", no_load_rpm=rpm), 12) is None


def test_servo_numbers():
    # 1.0 to 2.0 ms: common practice, no source.
    part = Part("p", pulse_us=(1000, 2000), degrees=90)
    assert us_per_degree(part) == pytest.approx(1000 / 90)
    assert us_per_degree(Part("p", degrees=90)) is None


def test_numbers_carry_their_unit_and_come_in_one_order():
    part = Part(
        "p",
        encoder_cycles=12,
        decoding=4,
        gear=30.25,
        encoder_on="motor",
        volts=12,
        no_load_rpm=200,
    )
    found = derived_numbers(device(100), part, 12.8)
    assert [one.name for one in found] == ["counts_per_output_turn", "counts_per_mm", "no_load_rpm"]
    assert [one.value for one in found] == pytest.approx([1452, 14.52, 213.333], rel=1e-5)
    servo = derived_numbers(device(), Part("s", pulse_us=(620, 2380), degrees=180))
    assert [one.name for one in servo] == [
        "shortest_pulse_us",
        "longest_pulse_us",
        "travel_degrees",
        "us_per_degree",
    ]
    assert all(one.says.endswith(".") and one.formula for one in (*found, *servo))
    assert derived_numbers(device(), None, 12) == ()


# Diameter in inches and resistance in ohm per 1000 ft: HyperPhysics wire table, values from
# Floyd, Electric Circuit Fundamentals, 2nd edition.
HANDBOOK = [
    (10, 0.10189, 0.9989),
    (12, 0.0808, 1.588),
    (14, 0.06408, 2.525),
    (16, 0.05082, 4.016),
    (18, 0.0403, 6.385),
    (20, 0.03196, 10.15),
    (22, 0.02535, 16.14),
    (24, 0.0201, 25.67),
    (26, 0.01594, 40.81),
    (28, 0.01264, 64.9),
]


@pytest.mark.parametrize(("awg", "inches", "ohm_per_1000ft"), HANDBOOK)
def test_wire_sizes(awg, inches, ohm_per_1000ft):
    assert wire_diameter_mm(awg) == pytest.approx(inches * 25.4, rel=4e-4)
    # Copper of 58.0 MS/m at 20 C: IEC 60028.
    ohm_per_m = 1 / (58.0 * wire_area_mm2(awg))
    assert ohm_per_m == pytest.approx(ohm_per_1000ft / 304.8, rel=4e-4)


def test_the_largest_fuse_falls_with_the_wire():
    fuses = [largest_fuse_amps(awg) for awg in range(0, 41)]
    assert fuses == sorted(fuses, reverse=True)
    # NEC 240.4(D), from memory.
    assert [largest_fuse_amps(awg) for awg in (14, 13, 12, 10)] == [15, 15, 20, 30]
