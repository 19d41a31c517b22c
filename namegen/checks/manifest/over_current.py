"""Currents that are more than a port, a fuse or a wire is made for: a screening."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from namegen.checks.wiring import setups_of, variants
from namegen.checks.wording import in_setups, listed, number, quoted, with_article
from namegen.model.derived import largest_fuse_amps
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.places import Place
from namegen.model.views import RobotView
from namegen.text.terminal import printable

KIND = FindingKind(
    name="over-current",
    severity=Severity.WARNING,
    scope="robot",
    what="A screening, no calculation of the installation. Warnings: a part's stall current is "
    "above the port's rating; the rated currents on one fuse add up to more than the fuse; the "
    "main fuse is larger than its wire bears. Note: only the stall currents add up to more than "
    "the fuse. Parts without figures are not counted, servos and sensors neither unless they "
    "have figures; a device counts for the controller of its first port.",
    why="A fuse that blows stops the robot at the worst moment; "
    "a wire that is too thin for its fuse burns before the fuse opens.",
    example=Example(
        flagged="devices:\n  netWinch: {port: bridge motor 1, part: winch-x}\n",
        mended="devices:\n  netWinch: {port: bridge motor 1, part: winch-c}\n",
    ),
    repair="None by itself: the maker's data and local rules decide. "
    "Accept it with a reason when they allow it.",
)


class _Load(Struct, frozen=True):
    """A current through one fuse in amperes, and whose it is."""

    amps: float
    names: tuple[str, ...]
    setup: str | None


def check(view: RobotView) -> Iterator[Finding]:
    """Yield the findings of ports, fuses and the battery's wire."""
    yield from _ports(view)
    for name, controller in view.manifest.controllers.items():
        board = view.board(name)
        if board is not None and board.fuse_amps is not None:
            place = controller.places.get("board") or controller.places[""]
            yield from _fuse(view, f"the fuse of {printable(name)}", board.fuse_amps, place, name)
    battery = view.manifest.battery
    if battery is not None and battery.fuse_amps is not None:
        place = battery.places.get("fuse_amps") or view.manifest.place("battery")
        yield from _fuse(view, "the main fuse", battery.fuse_amps, place, None)
        if battery.wire_awg is not None:
            yield from _wire(view, battery.fuse_amps, battery.wire_awg)


def _ports(view: RobotView) -> Iterator[Finding]:
    seen: set[tuple[str, str, str]] = set()
    for device in variants(view):
        part = view.catalogue.parts.get(device.part or "")
        for port in device.ports:
            board = view.board(port.controller)
            limit = board.port_amps.get(port.type) if board else None
            if part is None or part.stall_amps is None or limit is None:
                continue
            key = (device.name, part.name, f"{port.controller} {port.type}")
            if part.stall_amps <= limit or key in seen:
                continue
            seen.add(key)
            message = (
                f"{quoted(device.name)} draws up to {number(part.stall_amps)} A when it is blocked "
                f"(stall current of {quoted(part.name)}), but {with_article(port.type)} port of "
                f"{printable(port.controller)} is made for {number(limit)} A. Take a smaller part "
                "or a port that bears it; the maker's data and local rules decide."
            )
            yield KIND.finding(
                device.place("part"), message, found=part.name, robot=view.manifest.robot
            )


def _fuse(
    view: RobotView, fuse: str, amps: float, place: Place, controller: str | None
) -> Iterator[Finding]:
    """Judge a fuse by the setup that draws most through it."""
    rated = max((_load(view, setup, controller, False) for setup in setups_of(view)), key=_amps)
    stall = max((_load(view, setup, controller, True) for setup in setups_of(view)), key=_amps)
    if rated.amps > amps:
        message = (
            f"At their rated load the devices behind {fuse} draw {number(rated.amps)} A together"
            f"{in_setups([rated.setup])}, and it is a fuse of {number(amps)} A. They are "
            f"{listed(rated.names, most=12)}: run fewer at once or spread them over the "
            "controllers; the maker's data and local rules decide."
        )
        yield KIND.finding(place, message, robot=view.manifest.robot)
    elif stall.amps > amps:
        message = (
            f"If all devices behind {fuse} are blocked at once they draw {number(stall.amps)} A"
            f"{in_setups([stall.setup])}, and it is a fuse of {number(amps)} A. "
            "That seldom happens; remember it if the fuse blows."
        )
        yield KIND.finding(place, message, robot=view.manifest.robot, severity=Severity.NOTE)


def _load(view: RobotView, setup: str | None, controller: str | None, stalled: bool) -> _Load:
    """Return what a setup draws through a controller's fuse, or the main fuse (None)."""
    drawn: dict[str, float] = {}
    for device in view.manifest.devices_in(setup):
        part = view.catalogue.parts.get(device.part or "")
        if part is None or not device.ports:
            continue
        amps = part.stall_amps if stalled else part.rated_amps
        if amps is not None and controller in (None, device.ports[0].controller):
            drawn[device.name] = amps
    return _Load(sum(drawn.values()), tuple(drawn), setup)


def _amps(load: _Load) -> float:
    return load.amps


def _wire(view: RobotView, fuse_amps: float, awg: int) -> Iterator[Finding]:
    battery = view.manifest.battery
    limit = largest_fuse_amps(awg)
    if battery is not None and fuse_amps > limit:
        message = (
            f"The main fuse of {number(fuse_amps)} A is too large for its wire AWG {awg}, which "
            f"should have at most {number(limit)} A: the wire may burn before the fuse opens. "
            "Take a smaller fuse or a thicker wire; the maker's data and local rules decide."
        )
        place = battery.places.get("fuse_amps") or view.manifest.place("battery")
        yield KIND.finding(place, message, found=number(fuse_amps), robot=view.manifest.robot)
