"""A bus address that no device may have."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.manifest.buses import address_of
from namegen.checks.wiring import exists, variants
from namegen.checks.wording import quoted
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
    """Yield a finding for each device or multiplexer whose address cannot be right."""
    seen: set[tuple[str, int]] = set()
    for device in variants(view):
        address = address_of(view, device)
        types = [port.type for port in device.ports if exists(view, port) is not False]
        place = device.places.get("address") or device.place("port")
        if address is not None and (device.name, address) not in seen:
            seen.add((device.name, address))
            yield from _judged(view, quoted(device.name), types, address, place)
    for name, controller in view.manifest.controllers.items():
        if controller.address is not None and controller.uplink is not None:
            place = controller.places.get("address") or controller.places[""]
            who = f"The controller {quoted(name)}"
            yield from _judged(view, who, [controller.uplink.type], controller.address, place)


def _judged(
    view: RobotView, who: str, port_types: list[str], address: int, place: Place
) -> Iterator[Finding]:
    severity = Severity.ERROR
    if "i2c" in port_types and not FIRST <= address <= LAST:
        reason = f"is reserved on an I2C bus; devices have {FIRST:#04x} to {LAST:#04x}"
        if LAST < 0x80 <= address <= LAST_TEN_BIT:
            severity = Severity.WARNING
            reason = (
                "is right only for a device with a ten-bit address; "
                f"others have {FIRST:#04x} to {LAST:#04x}"
            )
        elif address < 0 or address > LAST_TEN_BIT:
            reason = f"is no I2C address; devices have {FIRST:#04x} to {LAST:#04x}"
        half = address // 2
        remedy = (
            f"Perhaps it is written with the read/write bit; then the address is {half:#04x}."
            if LAST < address <= 0xFF and FIRST <= half <= LAST
            else "Look it up in the maker's data."
        )
    elif "can" in port_types and not 0 <= address <= LAST_CAN:
        reason = "is no CAN id; ids go from 0 to 0x1FFFFFFF"
        remedy = "Look it up in the maker's data."
    else:
        return
    message = f"{who} has address {address:#04x}, which {reason}. {remedy}"
    yield KIND.finding(
        place, message, found=f"{address:#04x}", robot=view.manifest.robot, severity=severity
    )
