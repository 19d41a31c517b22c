"""``loose-literal``: the name is right, but typed by hand where a constant exists."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.code.places import within
from namegen.checks.code.wording import quoted
from namegen.model.findings import Example, Finding, FindingKind, Severity, UseConstant
from namegen.model.views import CodeView

KIND = FindingKind(
    name="loose-literal",
    severity=Severity.NOTE,
    scope="look-up",
    what="The name is right, but typed by hand where the generated constant could stand.",
    why=(
        "A typed name is right today and wrong after the next rename. A constant does not even "
        "compile when the device is gone."
    ),
    example=Example(
        flagged='bow = boat.motor("bowThruster")',
        mended="bow = boat.motor(Motor.BOW_THRUSTER)",
    ),
    repair=(
        "Writes the constant instead of the text and adds its import. Only on request, because "
        "it touches the import block; the program does the same before and after."
    ),
    on_request=True,
)


def check(view: CodeView) -> Iterator[Finding]:
    """Yield each literal of a look-up that is the exact name of a device of the kind asked for."""
    for lookup in view.lookups:
        device = view.robot.devices.get(lookup.text or "")
        if device is None or lookup.kind not in {None, device.kind}:
            continue
        if not lookup.literal or not within(lookup.place, lookup.at):
            continue
        yield KIND.finding(
            lookup.place,
            f"{quoted(device.name)} is right, but typed by hand. Use its constant, so that a "
            "later change of the name is found before the program runs.",
            found=device.name,
            robot=view.robot.robot,
            repair=UseConstant(view.robot.robot, device.name),
        )
