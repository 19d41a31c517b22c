"""What programs must print of a robot's constants, as read from its manifest."""

from __future__ import annotations

import math
from collections.abc import Iterator

from namegen.model.derived import derived_numbers
from namegen.model.manifests import Manifest
from namegen.model.sheet_mark import sheet_mark
from namegen.targets.aliases import former_constants
from namegen.targets.schemes import naming_schemes
from targets.boats import CATALOGUE

KINDS = {"motor": "Motor", "servo": "Servo", "switch": "Switch", "net-winch": "NetWinch"}


def texts_of(manifest: Manifest, language: str) -> Iterator[tuple[tuple[str, str], str]]:
    """Yield (kind's type, constant) and the device's name, former constants included."""
    former = former_constants(manifest, naming_schemes()[language])
    for one in manifest.devices.values():
        yield (KINDS[one.kind], one.identifiers[language]), one.name
        for _, constant in former.get(one.name, ()):
            yield (KINDS[one.kind], constant), one.name


def numbers_of(manifest: Manifest, language: str) -> Iterator[tuple[str, float]]:
    """Yield the constant and the value of each number; devices as the selected setup has them."""
    scheme = naming_schemes()[language]
    wired = {one.name: one for one in manifest.devices_in()}
    volts = manifest.battery.volts if manifest.battery else None
    for one in manifest.devices.values():
        device = wired.get(one.name, one)
        part = CATALOGUE.parts.get(device.part or "")
        for number in derived_numbers(device, part, volts):
            if math.isfinite(number.value):
                yield scheme.number(device, number.name), number.value


def header_of(manifest: Manifest) -> tuple[str, str, str]:
    """Return robot, setup and sheet mark."""
    return manifest.robot, manifest.selected or "", sheet_mark(manifest)


def rows_of(manifest: Manifest) -> Iterator[tuple[str, str, str, bool, bool]]:
    """Yield the rows of the table of devices."""
    for one in manifest.devices_in():
        yield one.name, one.kind, ", ".join(map(str, one.ports)), one.reversed, one.optional


def hex_of(text: str) -> str:
    """Return the bytes of a text in UTF-8 as hexadecimal digits between colons."""
    return f":{text.encode().hex()}:"


SEEN = """\
harvest
bowThruster, motor, bridge motor 1, reversed
rudder, servo, stern servo 3
234 counts per output turn, 1.3 per mm, 2140 us
"""
"""What a small program of heron prints in each language, from constants alone.

9 cycles x 2 counts x gear 13 = 234 counts in a turn; a turn is 180 mm of travel; the hinge's data
say 2140 us.
"""
