"""One device name at different ports."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.fleet.holders import Holder, holders, most_common, robots_of
from namegen.checks.wording import listed, quoted
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.places import Related
from namegen.model.views import FleetView

KIND = FindingKind(
    name="same-name-other-port",
    severity=Severity.NOTE,
    scope="fleet",
    what="A device is plugged in at another port than the devices of the same name and kind on "
    "most other robots that have the same controllers.",
    why="Robots that are wired alike can share cables, sheets and the hands that know them: who "
    "rewires one from memory of another finds each plug where it was there.",
    example=Example(
        flagged="robot: heron\ndevices:\n  rudder: {kind: servo, port: bridge servo 1}\n"
        "---\nrobot: dipper\ndevices:\n  rudder: {kind: servo, port: bridge servo 2}\n",
        mended="robot: heron\ndevices:\n  rudder: {kind: servo, port: bridge servo 1}\n"
        "---\nrobot: dipper\ndevices:\n  rudder: {kind: servo, port: bridge servo 1}\n",
    ),
    repair="None by itself: a plug is moved by hand. Where the hulls differ, accept the finding.",
)


def check(view: FleetView) -> Iterator[Finding]:
    """Yield a finding for each device that most robots have at another port."""
    for name, everyone in holders(view).items():
        kind = most_common(one.device.kind for one in everyone)
        held = [one for one in everyone if one.device.ports and one.device.kind == kind]
        if len({one.device.ports for one in held}) < 2:
            continue
        usual = most_common(one.device.ports for one in held)
        others = [one for one in held if one.device.ports == usual]
        for one in held:
            alike = [other for other in others if one.wired_like(other)]
            if one.device.ports == usual or not alike:
                continue
            message = (
                f"{quoted(name)} is plugged in at {_ports(one)} here and at {_ports(alike[0])} on "
                f"{robots_of(alike)}. Move the plug and this line, or accept the difference with "
                "its reason."
            )
            yield KIND.finding(
                one.device.place("port"),
                message,
                found=name,
                robot=one.robot.robot,
                related=[
                    Related(
                        alike[0].device.place("port"), f"plugged in here on {alike[0].robot.robot}"
                    )
                ],
            )


def _ports(one: Holder) -> str:
    return listed([str(port) for port in one.device.ports])
