"""It is not yet settled where a device is plugged in."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.wiring import free_ports
from namegen.checks.wording import quoted, sentences
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.views import RobotView

KIND = FindingKind(
    name="port-undecided",
    severity=Severity.WARNING,
    scope="device",
    what="A device's port is still undecided.",
    why="Programs can already use the name, but the sheet cannot say where to plug it in.",
    example=Example(
        flagged="devices:\n  spareLamp: {kind: lamp, port: undecided}\n",
        mended="devices:\n  spareLamp: {kind: lamp, port: bridge digital 1}\n",
    ),
    repair="None by itself: write the port once it is known. The message names free ports.",
)


def check(view: RobotView) -> Iterator[Finding]:
    """Yield a finding for each device whose port is written as undecided, not left out."""
    for device in view.manifest.devices.values():
        if device.undecided and "port" in device.places:
            part = view.catalogue.parts.get(device.part or "")
            kind = view.catalogue.kinds.get(device.kind)
            suitable = (part.ports if part else ()) or (kind.ports if kind else ())
            message = sentences(
                f"The port of {quoted(device.name)} is undecided: the sheet cannot say where "
                "it is plugged in. Write it here as soon as it is settled.",
                free_ports(view, "", suitable) if suitable else "",
            )
            yield KIND.finding(
                device.place("port"), message, found="undecided", robot=view.manifest.robot
            )
