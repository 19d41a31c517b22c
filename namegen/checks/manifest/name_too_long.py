"""A device name that is longer than the workspace allows."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.wording import quoted
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.views import RobotView

KIND = FindingKind(
    name="name-too-long",
    severity=Severity.WARNING,
    scope="device",
    what='A device name has more characters than namegen.yaml allows under "names: longest".',
    why="Long names are cut off on small screens and labels, and are mistyped more often.",
    example=Example(
        flagged="devices:\n  forwardStarboardBilgePump: {kind: motor, port: bridge motor 1}\n",
        mended="devices:\n  bilgePumpFore: {kind: motor, port: bridge motor 1}\n",
    ),
    repair="None by itself: namegen rename changes a name in the manifest, the code and the "
    "outputs; the machine must be told too.",
)


def check(view: RobotView) -> Iterator[Finding]:
    """Yield a finding for each name that is too long, counted in code points."""
    longest = view.names.longest
    if longest is None:
        return
    for device in view.manifest.devices.values():
        length = len(device.name)
        if length > longest:
            message = (
                f"{quoted(device.name)} has {length} characters; namegen.yaml allows {longest}. "
                f"Shorten it by {length - longest}."
            )
            yield KIND.finding(
                device.place(), message, found=device.name, robot=view.manifest.robot
            )
