"""Numbers that programs need and that follow from the figures of parts and devices.

A number is None where a figure that it needs was not given: nothing is guessed.
Above all it is not guessed whether an encoder's figure counts cycles or counts,
and on which shaft the encoder sits; makers use the same abbreviations for both.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from msgspec import Struct

from namegen.model.boards import Catalogue, Part
from namegen.model.manifests import Device, Manifest


class DerivedNumber(Struct, frozen=True):
    """One constant for programs. ``name`` is in snake_case and ends in the unit.

    ``says`` is a sentence for its documentation and ``formula`` what it comes from.
    Where a formula is published stands at its function: outputs name no makers and no books.
    """

    name: str
    value: float
    says: str
    formula: str


def counts_per_output_turn(part: Part) -> float | None:
    """Return the encoder counts in one turn of the output shaft.

    Cycles per turn of the encoder's shaft, times 1, 2 or 4 counts per cycle
    (US Digital glossary, "Cycle"; NI USB-621x manual, chapter 8), times the
    gear ratio when the encoder sits on the motor's shaft. An encoder on the
    output shaft turns with it, so the gear does not count.
    """
    if part.encoder_cycles is None or part.decoding is None:
        return None
    if part.encoder_on is None and part.gear not in (None, 1):
        return None
    gear = part.gear if part.encoder_on == "motor" else 1.0
    return None if gear is None else part.encoder_cycles * part.decoding * gear


def counts_per_mm(device: Device, part: Part) -> float | None:
    """Return the encoder counts in one millimetre of travel.

    Counts per output turn divided by the travel of one output turn in
    millimetres, for a wheel or drum its circumference, pi times the diameter.
    """
    counts = counts_per_output_turn(part)
    if counts is None or not device.travel_mm:
        return None
    return counts / device.travel_mm


def no_load_rpm(part: Part, supply_volts: float) -> float | None:
    """Return the output shaft's speed without load at a supply, in turns per minute.

    Proportional to the voltage: without load a DC motor turns at V / Kb
    (Nise, Control Systems Engineering, chapter 2). Under load it is slower.
    """
    if part.no_load_rpm is None or not part.volts:
        return None
    return part.no_load_rpm * supply_volts / part.volts


def us_per_degree(part: Part) -> float | None:
    """Return by how many microseconds a servo's pulse changes per degree of travel."""
    if part.pulse_us is None or not part.degrees:
        return None
    shortest, longest = part.pulse_us
    return (longest - shortest) / part.degrees


def derived_numbers(
    device: Device, part: Part | None, supply_volts: float | None = None
) -> tuple[DerivedNumber, ...]:
    """Return every number that follows from a device's figures, always in the same order.

    ``supply_volts`` is the battery's voltage, where it is known.
    """
    if part is None:
        return ()
    speed = None if supply_volts is None else no_load_rpm(part, supply_volts)
    shortest, longest = part.pulse_us or (None, None)
    rows = (
        (
            "counts_per_output_turn",
            counts_per_output_turn(part),
            "Encoder counts in one turn of the output shaft.",
            "cycles x counts per cycle x gear before the encoder",
        ),
        (
            "counts_per_mm",
            counts_per_mm(device, part),
            "Encoder counts in one millimetre of travel.",
            "counts per output turn / travel in mm of one output turn",
        ),
        (
            "no_load_rpm",
            speed,
            "Turns per minute of the output shaft without load, at the battery's voltage.",
            "the maker's speed x battery volts / the maker's volts",
        ),
        (
            "shortest_pulse_us",
            shortest,
            "Shortest control pulse in microseconds.",
            "the maker's data",
        ),
        ("longest_pulse_us", longest, "Longest control pulse in microseconds.", "the maker's data"),
        (
            "travel_degrees",
            part.degrees,
            "Degrees that the servo turns from the shortest pulse to the longest.",
            "the maker's data",
        ),
        (
            "us_per_degree",
            us_per_degree(part),
            "Microseconds of pulse for one degree of travel.",
            "(longest pulse - shortest pulse) / degrees of travel",
        ),
    )
    return tuple(
        DerivedNumber(name, value, says, formula)
        for name, value, says, formula in rows
        if value is not None
    )


def numbers_of(
    device: Device, manifest: Manifest, catalogue: Catalogue
) -> tuple[DerivedNumber, ...]:
    """Return the numbers that programs of this robot get for a device."""
    battery, part = manifest.battery, catalogue.parts.get(device.part or "")
    numbers = derived_numbers(device, part, battery.volts if battery else None)
    return tuple(number for number in numbers if math.isfinite(number.value))


def figures(manifest: Manifest, catalogue: Catalogue) -> Iterator[tuple[Device, DerivedNumber]]:
    """Yield every number of a robot with its device, as it is in any setup."""
    for device in manifest.devices.values():
        variants = {
            setup.applied_to(device).part: setup.applied_to(device)
            for setup in manifest.setups.values()
        }
        for variant in ({device.part: device} | variants).values():
            for number in numbers_of(variant, manifest, catalogue):
                yield device, number


_NEC_FUSES = {18: 7.0, 16: 10.0, 14: 15.0, 12: 20.0, 10: 30.0}
"""Largest fuse in amperes for a copper wire: NEC (NFPA 70) 240.4(D), from memory."""
_AMPS_PER_MM2 = 5.0
"""Beyond the table: amperes per square millimetre. Common practice, no source."""


def wire_diameter_mm(awg: int) -> float:
    """Return the diameter of a solid wire in millimetres: ASTM B258, 0.127 * 92^((36 - n) / 39)."""
    return 0.127 * math.pow(92, (36 - awg) / 39)


def wire_area_mm2(awg: int) -> float:
    """Return the cross-section of a solid wire in square millimetres, from its diameter."""
    return math.pi / 4 * wire_diameter_mm(awg) ** 2


def largest_fuse_amps(awg: int) -> float:
    """Return the largest fuse for a copper wire in amperes, for screening.

    The table of NEC 240.4(D) for AWG 18 to 10 (odd sizes as the next thinner one),
    for other wires 5 A for each square millimetre. Compared one to one with the
    rating of the fuse: the table allows for what a fuse bears beyond its rating
    for some minutes (a blade fuse 135 % for up to 10 minutes: ISO 8820-3,
    second-hand). Bundles, heat and thin insulation are not considered.
    """
    tabled = _NEC_FUSES.get(awg) or _NEC_FUSES.get(awg + 1)
    if tabled is not None and awg >= min(_NEC_FUSES):
        return tabled
    return wire_area_mm2(awg) * _AMPS_PER_MM2
