"""``retired-name``: the device had this name once and has another now."""

from __future__ import annotations

from collections.abc import Sequence

from namegen.checks.code.candidates import (
    in_setup,
    left_out,
    of_kind,
    quoted_robot,
    related,
    same_to_a_reader,
)
from namegen.checks.code.likely import slip_of_old_name
from namegen.checks.code.wording import a, quoted, with_ports
from namegen.model.findings import Example, Finding, FindingKind, Rename, Safety, Severity
from namegen.model.manifests import Device
from namegen.model.views import NameQuestion
from namegen.text.differences import spell_out

KIND = FindingKind(
    name="retired-name",
    severity=Severity.ERROR,
    scope="look-up",
    rank=30,
    what="The name is one that a device of this robot had before it was renamed, or a slip of it.",
    why=(
        "The machine is configured with the new name. Code that still has the old one finds "
        "nothing when the robot is switched on."
    ),
    example=Example(
        flagged='bow = boat.motor("frontThruster")   # formerly: [frontThruster]',
        mended='bow = boat.motor("bowThruster")',
    ),
    repair=(
        "Writes the new name. Safe when exactly one device had the old name and it is of the "
        "kind that the code asks for; only suggested when the code names no kind, because the "
        "manifest does not tell of which kind the device was then, or when the text is only near "
        "to the old name."
    ),
)


def judge(question: NameQuestion) -> Finding | None:
    """Return the finding when the text is a former name and no present one."""
    if question.text in question.robot.devices:
        return None
    owners = question.robot.retired.get(question.text, ())
    if not owners:
        return _slip(question)
    fitting = [d for d in owners if of_kind(question, d) and in_setup(question, d)]
    near = [d for d in same_to_a_reader(question) if d not in owners]
    repair = None
    if len(owners) == 1 and fitting and not near:
        safety = Safety.SAFE if question.asked is not None else Safety.SUGGESTED
        repair = Rename(owners[0].name, safety)
    return KIND.finding(
        question.lookup.place,
        _near_too(question, owners, near)
        if near
        else _message(question, question.text, owners, fitting),
        found=question.text,
        expected=repair.name if repair else None,
        robot=question.robot.robot,
        repair=repair if question.lookup.literal else None,
        related=related(question.lookup, [*owners, *near]),
    )


def _slip(question: NameQuestion) -> Finding | None:
    """Return the finding when the text is surely a slip of a former name, and of no present one."""
    old = slip_of_old_name(question.text, question.robot, question.asked)
    if old is None or _is_elsewhere(question):
        return None
    owners = question.robot.retired[old]
    fitting = [d for d in owners if of_kind(question, d) and in_setup(question, d)]
    sure = len(owners) == 1 and bool(fitting)
    repair = Rename(owners[0].name, Safety.SUGGESTED) if sure else None
    near = f"{quoted(question.text)} is near {quoted(old)}: {spell_out(question.text, old)}."
    return KIND.finding(
        question.lookup.place,
        f"{near} {_message(question, old, owners, fitting)}",
        found=question.text,
        expected=repair.name if repair else None,
        robot=question.robot.robot,
        repair=repair if question.lookup.literal else None,
        related=related(question.lookup, owners),
    )


def _is_elsewhere(question: NameQuestion) -> bool:
    """Whether another robot has a device of exactly this name."""
    return any(question.text in other.devices for other in question.fleet)


def _near_too(question: NameQuestion, owners: Sequence[Device], near: Sequence[Device]) -> str:
    return (
        f"{quoted_robot(question)} has no device {quoted(question.text)}. It is an old name of "
        f"{with_ports(owners)}, but {with_ports(near)} looks like it too. Write the one that is "
        "meant."
    )


def _message(
    question: NameQuestion, name: str, owners: Sequence[Device], fitting: Sequence[Device]
) -> str:
    old, robot = quoted(name), quoted_robot(question)
    if len(owners) > 1:
        return (
            f"No device of {robot} is called {old} any more. {with_ports(owners)} had that name "
            "once. Write the one that is meant."
        )
    device = owners[0]
    new = quoted(device.name)
    lead = f"{old} is an old name: on {robot} this device is called {new} now"
    if fitting:
        return f"{lead}. Write {new}."
    if not of_kind(question, device) and question.asked is not None:
        return (
            f"{lead}. It is {a(device.kind)}, but this code asks for {a(question.asked)}: "
            "find out which device is meant before you write its name."
        )
    return f"{lead}, but {left_out(question)}."
