"""One device name for things of different kinds."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.fleet.holders import holders, most_common, named_at, robots_of
from namegen.checks.wording import a_device, quoted
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.views import FleetView

KIND = FindingKind(
    name="same-name-other-kind",
    severity=Severity.WARNING,
    scope="fleet",
    what="A device has another kind than the devices of the same name on most other robots.",
    why="Code that the robots share asks for one kind, and fails on the robot that has another. "
    "People who go from one robot to the next expect the same thing behind a name.",
    example=Example(
        flagged="robot: heron\ndevices:\n  bumpBow: {kind: switch, port: bridge digital 2}\n"
        "---\nrobot: dipper\ndevices:\n  bumpBow: {kind: distance, port: bridge i2c 1}\n",
        mended="robot: heron\ndevices:\n  bumpBow: {kind: switch, port: bridge digital 2}\n"
        "---\nrobot: dipper\ndevices:\n  rangeBow: {kind: distance, port: bridge i2c 1}\n",
    ),
    repair="None by itself: correct the kind, or rename the device.",
)


def check(view: FleetView) -> Iterator[Finding]:
    """Yield a finding for each device whose kind most robots do not share."""
    for name, everyone in holders(view).items():
        held = [one for one in everyone if one.device.kind]
        if len({one.device.kind for one in held}) < 2:
            continue
        usual = most_common(one.device.kind for one in held)
        others = [one for one in held if one.device.kind == usual]
        for one in held:
            if one.device.kind == usual:
                continue
            message = (
                f"{quoted(name)} is {a_device(one.device.kind)} here and {a_device(usual)} on "
                f"{robots_of(others)}; code for both would ask for one kind. Correct the kind, or "
                "give one of them a name of its own."
            )
            yield KIND.finding(
                one.device.place("kind"),
                message,
                found=name,
                robot=one.robot.robot,
                related=[named_at(others[0])],
            )
