"""A bus address that no device may have."""

from __future__ import annotations

from collections.abc import Collection, Iterator

from msgspec.structs import replace

from namegen.checks.wiring import exists
from namegen.checks.wording import address as hexed
from namegen.checks.wording import quoted
from namegen.model.boards import Catalogue
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.places import Place
from namegen.model.views import RobotView

KIND = FindingKind(
    name="address-reserved",
    severity=Severity.ERROR,
    scope="device",
    what="An I2C address lies outside 0x08 to 0x77, where the standard lets devices be "
    "(NXP UM10204, table 3), or a CAN id does not fit 29 bits. "
    "An I2C address of ten bits, 0x80 to 0x3FF, is a warning.",
    why="Reserved addresses have a meaning of their own on the bus, so nothing will answer there. "
    "A figure above 0x77 is often the address with the read/write bit, twice the real one.",
    example=Example(
        flagged="devices:\n  rangeBow: {kind: distance, port: bridge i2c 1, address: 0x03}\n",
        mended="devices:\n  rangeBow: {kind: distance, port: bridge i2c 1, address: 0x3A}\n",
    ),
    repair="None by itself: look the address up in the maker's data.",
)

FIRST, LAST = 0x08, 0x77
"""First and last 7-bit address that a device may have: NXP UM10204, table 3."""
LAST_TEN_BIT = 0x3FF
"""Last 10-bit address: NXP UM10204, section 3.1.11."""
LAST_CAN = 0x1FFFFFFF
"""Largest 29-bit CAN identifier: ISO 11898-1, from memory."""


def check(view: RobotView) -> Iterator[Finding]:
    """Yield a finding for each address of a device or multiplexer that cannot be right."""
    for device in view.manifest.devices.values():
        if device.address is not None:
            types = [port.type for port in device.ports if exists(view, port) is not False]
            place = device.places.get("address") or device.place("port")
            found = _judged(quoted(device.name), types, device.address, place)
            yield from (replace(one, robot=view.manifest.robot) for one in found)
    for name, controller in view.manifest.controllers.items():
        if controller.address is not None and controller.uplink is not None:
            place = controller.places.get("address") or controller.places[""]
            who = f"The controller {quoted(name)}"
            found = _judged(who, [controller.uplink.type], controller.address, place)
            yield from (replace(one, robot=view.manifest.robot) for one in found)


def check_catalogue(catalogue: Catalogue) -> Iterator[Finding]:
    """Yield a finding for each address of a part or kind that cannot be right."""
    for part in catalogue.parts.values():
        kind = catalogue.kinds.get(part.kind or "")
        ports = part.ports or (kind.ports if kind else ())
        if part.address is not None:
            place = part.places.get("address") or part.places[""]
            yield from _judged(f"The part {quoted(part.name)}", ports, part.address, place)
    for kind in catalogue.kinds.values():
        if kind.address is not None and kind.places:
            place = kind.places.get("address") or kind.places[""]
            yield from _judged(f"The kind {quoted(kind.name)}", kind.ports, kind.address, place)


def _judged(who: str, types: Collection[str], address: int, place: Place) -> Iterator[Finding]:
    fault = None
    if "i2c" in types:
        fault = _on_i2c(address)
    elif "can" in types and not 0 <= address <= LAST_CAN:
        fault = f"is no CAN id; ids go up to {hexed(LAST_CAN)}"
    if fault is None:
        return
    half = address // 2
    remedy = (
        f"Perhaps it is written with the read/write bit; then the address is {hexed(half)}."
        if LAST < address <= 0xFF and FIRST <= half <= LAST
        else "Look it up in the maker's data."
    )
    ten_bit = "i2c" in types and 0x80 <= address <= LAST_TEN_BIT
    yield KIND.finding(
        place,
        f"{who} has address {hexed(address)}, which {fault}. {remedy}",
        found=hexed(address),
        severity=Severity.WARNING if ten_bit else None,
    )


def _on_i2c(address: int) -> str | None:
    """Return what is wrong with an I2C address."""
    usual = f"{hexed(FIRST)} to {hexed(LAST)}"
    if FIRST <= address <= LAST:
        return None
    if 0 <= address < 0x80:
        return f"is reserved on an I2C bus; devices have {usual}"
    if address <= LAST_TEN_BIT:
        return f"is right only for a device with a ten-bit address; others have {usual}"
    return f"is no I2C address; devices have {usual}"
