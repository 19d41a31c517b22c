"""A part whose voltage would harm its port, or the port it."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.wiring import exists, variants
from namegen.checks.wording import number, quoted, with_article
from namegen.model.boards import Board, Part
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.manifests import Device, Port
from namegen.model.views import RobotView

KIND = FindingKind(
    name="volts-unfit",
    severity=Severity.WARNING,
    scope="device",
    what="A part is made for a higher voltage than a signal port takes (by more than a tenth), "
    "or is fed with more than it is made for (by more than a quarter). "
    "A motor port is taken to give the battery's voltage unless the board says otherwise.",
    why="The port or the part may be destroyed the first time it is switched on.",
    example=Example(
        flagged="devices:\n  bilgeLevel: {port: bridge digital 1, part: float-5v}\n",
        mended="devices:\n  bilgeLevel: {port: bridge digital 1, part: float-3v}\n",
    ),
    repair="None by itself: take a part for the port's voltage or put a level shifter or "
    "regulator between. The maker's data and local rules decide.",
)

SIGNAL_MARGIN = 1.1
"""A port is taken to bear a tenth more than its voltage. Common practice, no source."""
SUPPLY_MARGIN = 1.25
"""A part is taken to bear a quarter more than its voltage, as a full battery gives it.
Common practice, no source."""
_POWERED = frozenset({"motor", "servo"})
"""Port types that feed the device and take no signal from it."""


def check(view: RobotView) -> Iterator[Finding]:
    """Yield a finding for each device whose port and part do not suit in voltage."""
    seen: set[tuple[str, str, Port]] = set()
    for device in variants(view):
        part = view.catalogue.parts.get(device.part or "")
        if part is None or part.volts is None:
            continue
        for port in device.ports:
            board = view.board(port.controller)
            if board and exists(view, port) and (device.name, part.name, port) not in seen:
                seen.add((device.name, part.name, port))
                yield from _judged(view, device, part, board, port)


def _judged(
    view: RobotView, device: Device, part: Part, board: Board, port: Port
) -> Iterator[Finding]:
    assert part.volts is not None
    volts, source = (
        board.port_volts.get(port.type),
        f"{with_article(port.type)} port of {board.name}",
    )
    battery = view.manifest.battery
    if volts is None and port.type == "motor" and battery:
        volts, source = battery.volts, "the battery"
    if volts is None:
        return
    who = f"{quoted(device.name)} (part {quoted(part.name)})"
    if port.type not in _POWERED and part.volts > volts * SIGNAL_MARGIN:
        message = (
            f"{who} works at {number(part.volts)} V, but {source} takes {number(volts)} V: its "
            "signal may destroy the port. Take a part for that voltage or a level shifter; "
            "the maker's data decides."
        )
    elif volts > part.volts * SUPPLY_MARGIN:
        message = (
            f"{who} is made for {number(part.volts)} V, but {source} gives {number(volts)} V: it "
            "may burn out. Take a part for that voltage or a regulator; the maker's data decides."
        )
    else:
        return
    yield KIND.finding(device.place("part"), message, found=part.name, robot=view.manifest.robot)
