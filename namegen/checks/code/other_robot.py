"""``other-robot``: the name is a device of another robot of the workspace."""

from __future__ import annotations

from namegen.checks.code.candidates import quoted_robot, related
from namegen.checks.code.likely import suggestion
from namegen.checks.code.wording import quoted
from namegen.checks.wording import named
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.views import NameQuestion

KIND = FindingKind(
    name="other-robot",
    severity=Severity.ERROR,
    scope="look-up",
    rank=60,
    what="The robot that the code runs on has no such device, but another robot has.",
    why=(
        "Code is often copied from one robot to the next. What exists on one only stops the "
        "program on the other when it is switched on."
    ),
    example=Example(
        flagged='flag = boat.servo("flagServo")   # only kingfisher has one',
        mended='hatch = boat.servo("hatchServo")',
    ),
    repair=(
        "None: the code may be meant for the other robot, or the device may be missing in this "
        "robot's manifest."
    ),
)


def judge(question: NameQuestion) -> Finding | None:
    """Return the finding when only other robots have a device of this name."""
    if question.text in question.robot.devices:
        return None
    text = question.text
    owners = [m for m in question.fleet if text in m.devices and m.robot != question.robot.robot]
    if not owners:
        return None
    best = suggestion(question).best
    hint = f" On {quoted_robot(question)} the nearest name is {quoted(best)}." if best else ""
    return KIND.finding(
        question.lookup.place,
        f"{quoted_robot(question)} has no device {quoted(text)}; it is a device of "
        f"{named([m.robot for m in owners])}.{hint} Write a name of "
        f"{quoted_robot(question)}, or add the device to {question.robot.path}.",
        found=text,
        robot=question.robot.robot,
        related=related(question.lookup, [owners[0].devices[text]]),
    )
