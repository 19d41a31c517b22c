"""``loose-literal``: the name is right, but typed by hand where a constant exists."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.code.candidates import related
from namegen.checks.code.wording import quoted
from namegen.model.findings import Example, Finding, FindingKind, Severity, UseConstant
from namegen.model.places import Place
from namegen.model.views import CodeView, ResolvedLookup

KIND = FindingKind(
    name="loose-literal",
    severity=Severity.NOTE,
    scope="look-up",
    what=(
        "The name is right, but typed by hand where the generated constant could stand: in the "
        "look-up itself, or in a constant, a list or an enum of your own that look-ups take it "
        "from."
    ),
    why=(
        "A typed name is right today and wrong after the next rename. A constant does not even "
        "compile when the device is gone."
    ),
    example=Example(
        flagged='bow = boat.motor("bowThruster")',
        mended="bow = boat.motor(Motor.BOW_THRUSTER)",
    ),
    repair=(
        "Writes the constant instead of the text and adds its import. A constant of your own "
        'stays and is filled from the generated one (BOW = "bowThruster" becomes BOW = '
        "Motor.BOW_THRUSTER), so that it says the same text wherever else it is used. Only on "
        "request, because it touches the import block; the program does the same before and "
        "after. Left alone: what several robots run or look up, and names that no look-up is "
        "seen to take, such as those in a table with keys."
    ),
    on_request=True,
)


def check(view: CodeView) -> Iterator[Finding]:
    """Yield each literal that is the exact name of a device of the kind that look-ups ask for.

    A literal that several look-ups take is told once, and only if it is right in all of them.
    """
    found: dict[Place, list[ResolvedLookup]] = {}
    for lookup in view.lookups:
        if lookup.literal:
            found.setdefault(lookup.place, []).append(lookup)
    for place, lookups in found.items():
        device = view.robot.devices.get(lookups[0].text or "")
        if device is None or any(one.kind not in {None, device.kind} for one in lookups):
            continue
        yield KIND.finding(
            place,
            f"{quoted(device.name)} is right, but typed by hand. Use its constant, so that a "
            "later change of the name is found before the program runs.",
            found=device.name,
            robot=view.robot.robot,
            repair=UseConstant(view.robot.robot, device.name),
            related=related(lookups[0]),
        )
