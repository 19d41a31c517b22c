"""``unused-device``: the manifest has the device, but no code looks it up."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.code.wording import plugged, quoted
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.views import CodeView

KIND = FindingKind(
    name="unused-device",
    severity=Severity.WARNING,
    scope="robot",
    what="The manifest has the device, but no code of the robot looks it up.",
    why=(
        "Somebody wires and configures a device that does nothing, or the code that should use "
        "it was forgotten or uses another one."
    ),
    example=Example(
        flagged='boat.motor("bowThruster")   # the manifest also has sternThruster',
        mended='boat.motor("bowThruster")\nboat.motor("sternThruster")',
    ),
    repair=(
        "None. It is said only when all code of the robot was read and every name in it is "
        "known; a device that is there on purpose can be accepted in the manifest."
    ),
)


def check(view: CodeView) -> Iterator[Finding]:
    """Yield each device that no look-up names and whose constant no code mentions."""
    used = {lookup.text for lookup in view.lookups}
    if not view.complete or not used:
        return
    devices = view.robot.devices_in(view.setup) if view.setup else view.robot.devices.values()
    for device in devices:
        if device.name in used or device.name in view.mentioned:
            continue
        yield KIND.finding(
            device.place(),
            f"No code of {quoted(view.robot.robot)} looks up {quoted(device.name)} "
            f"({device.kind}, {plugged(device)}). Use it, or take it out of the manifest; if it "
            "is meant to be so, accept it there with the reason.",
            found=device.name,
            robot=view.robot.robot,
        )
