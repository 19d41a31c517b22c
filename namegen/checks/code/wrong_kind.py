"""``wrong-kind``: the name is a device, but of another kind than the code asks for."""

from __future__ import annotations

from namegen.checks.code.candidates import of_kind, quoted_robot, related
from namegen.checks.code.wording import a, quoted
from namegen.checks.wording import named
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.views import NameQuestion

KIND = FindingKind(
    name="wrong-kind",
    severity=Severity.ERROR,
    scope="look-up",
    rank=10,
    what="The name is a device of the robot, but not of the kind that the code asks for.",
    why=(
        "A look-up goes by name and kind together. A servo's name is not found among the "
        "motors, so the program stops when the robot is switched on."
    ),
    example=Example(
        flagged='rudder = boat.motor("rudder")',
        mended='rudder = boat.servo("rudder")',
    ),
    repair=(
        "None: either the name or the kind can be what was meant, and only the one who wrote "
        "the line knows."
    ),
)


def judge(question: NameQuestion) -> Finding | None:
    """Return the finding when the device has another kind than asked for."""
    device = question.robot.devices.get(question.text)
    if device is None or question.asked is None or of_kind(question, device):
        return None
    others = [d.name for d in question.devices if d.kind == question.asked]
    choice = f"Ask for {a(device.kind)}"
    if others:
        choice += f", or write the name of {a(question.asked)}: {named(others, 'or')}"
    else:
        choice += f"; {quoted_robot(question)} has no {question.asked}"
    return KIND.finding(
        question.lookup.place,
        f"{quoted(device.name)} on {quoted_robot(question)} is {a(device.kind)}, but this code "
        f"asks for {a(question.asked)}. {choice}.",
        found=question.text,
        robot=question.robot.robot,
        related=related(question.lookup, [device]),
    )
