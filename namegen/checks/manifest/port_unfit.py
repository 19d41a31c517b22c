"""A device is plugged into a port of a type that does not suit it."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.wiring import PortUse, exists, free_ports, written_uses
from namegen.checks.wording import a_device, listed, quoted, sentences, to_write, with_article
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.places import Related
from namegen.model.views import RobotView
from namegen.text.terminal import printable

KIND = FindingKind(
    name="port-unfit",
    severity=Severity.ERROR,
    scope="device",
    what="A port's type suits neither the device's kind nor its part, a built-in device is "
    "given another kind than it has, or controllers' uplinks run in a circle.",
    why="The plug does not fit, or fits and does nothing, and the program asks the wrong port.",
    example=Example(
        flagged="devices:\n  hatchServo: {kind: servo, port: bridge motor 1}\n",
        mended="devices:\n  hatchServo: {kind: servo, port: bridge servo 1}\n",
    ),
    repair="None by itself: correct the port or the kind. If the pairing is right, "
    "say so in the catalogue: ports of the kind, or of the part.",
)


def check(view: RobotView) -> Iterator[Finding]:
    """Yield a finding for each existing port that does not suit its device.

    A part that lists its ports decides for every port of the device. Otherwise
    one port that suits the kind is enough: a motor may have an encoder's port too.
    """
    for use in written_uses(view):
        if use.device is None or exists(view, use.port) is not True:
            continue
        if use.port.label is None:
            yield from _built_in(view, use)
        else:
            yield from _plugged(view, use)
    yield from _circles(view)


def _built_in(view: RobotView, use: PortUse) -> Iterator[Finding]:
    board = view.board(use.port.controller)
    kind = board.built_in[use.port.type] if board else ""
    if use.device and use.device.kind and use.device.kind != kind:
        message = (
            f"{use.who} is {a_device(use.device.kind)}, but {quoted(str(use.port))} is "
            f"{a_device(kind)} that is built in. Write {to_write(f'kind: {kind}')}, "
            "or correct the port."
        )
        yield KIND.finding(use.place, message, found=str(use.port), robot=view.manifest.robot)


def _plugged(view: RobotView, use: PortUse) -> Iterator[Finding]:
    device = use.device
    assert device is not None
    part = view.catalogue.parts.get(device.part or "")
    kind = view.catalogue.kinds.get(device.kind)
    if part and part.ports:
        suitable, owner = part.ports, f"the part {quoted(part.name)}"
        fits = use.port.type in suitable
    else:
        suitable, owner = kind.ports if kind else (), a_device(device.kind)
        first = next(port for port in device.ports if port.label is not None)
        fits = use.port != first or any(
            port.type in suitable or not exists(view, port) for port in device.ports
        )
    if suitable and not fits:
        message = sentences(
            f"{use.who} is plugged into {quoted(str(use.port))}, but {owner} needs "
            f"{with_article(listed(suitable, last='or'))} port.",
            free_ports(view, use.port.controller, suitable),
        )
        yield KIND.finding(use.place, message, found=str(use.port), robot=view.manifest.robot)


def _circles(view: RobotView) -> Iterator[Finding]:
    """Yield one finding for each circle of uplinks: uplinks must form a tree."""
    controllers = view.manifest.controllers
    done: set[str] = set()
    for start in controllers:
        path: list[str] = []
        name: str | None = start
        while name is not None and name in controllers and name not in path and name not in done:
            path.append(name)
            uplink = controllers[name].uplink
            name = uplink.controller if uplink else None
        done.update(path)
        if name is None or name not in path:
            continue
        circle = path[path.index(name) :]
        places = [
            controllers[one].places.get("uplink") or controllers[one].places[""] for one in circle
        ]
        message = (
            f"The uplinks of {listed(circle)} run in a circle."
            if len(circle) > 1
            else f"The uplink of {printable(circle[0])} leads to itself."
        ) + " Take out the `uplink` of the controller that is connected to the computer or radio."
        related = [Related(place, "the circle goes on here") for place in places[1:]]
        yield KIND.finding(places[0], message, robot=view.manifest.robot, related=related)
