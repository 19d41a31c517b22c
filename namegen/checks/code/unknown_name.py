"""``unknown-name``: the robot has no such device, and none that was surely meant."""

from __future__ import annotations

from namegen.checks.code.candidates import of_kind, quoted_robot, related
from namegen.checks.code.likely import rivals, suggestion
from namegen.checks.code.wording import a, quoted, with_ports
from namegen.checks.wording import named
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.manifests import Device
from namegen.model.views import NameQuestion

KIND = FindingKind(
    name="unknown-name",
    severity=Severity.ERROR,
    scope="look-up",
    rank=80,
    what="The robot has no device of this name, and no device was surely meant by it.",
    why="The look-up finds nothing, and the program stops when the robot is switched on.",
    example=Example(
        flagged='horn = boat.lamp("fogHorn")',
        mended='lamp = boat.lamp("spareLamp")',
    ),
    repair=(
        "None: names that are near are shown, but each may be another machine than the one "
        "that was meant."
    ),
)


def judge(question: NameQuestion) -> Finding | None:
    """Return the finding for every name that is no device."""
    if question.text in question.robot.devices:
        return None
    near = rivals(question)
    return KIND.finding(
        question.lookup.place,
        f"{_lead(question)} {_hint(question, near)}",
        found=question.text,
        robot=question.robot.robot,
        related=related(question.lookup, near),
    )


def _lead(question: NameQuestion) -> str:
    if not question.text.strip():
        what = "blank" if question.text else "empty"
        return f"The name is {what}, and {quoted_robot(question)} has no such device."
    return f"{quoted_robot(question)} has no device {quoted(question.text)}."


def _hint(question: NameQuestion, near: tuple[Device, ...]) -> str:
    """Return what the nearest names are, or else which names there are."""
    if len(near) == 1 and not of_kind(question, near[0]) and question.asked:
        only = near[0]
        return (
            f"{quoted(only.name)} is near, but is {a(only.kind)}, and this code asks for "
            f"{a(question.asked)}. Find out which device is meant, then write its exact name."
        )
    if near:
        why = suggestion(question).why
        how = f"is near, but {why}" if len(near) == 1 else f"are near ({why})"
        return (
            f"{with_ports(near)} {how}. Find out which device is meant, then write its exact name."
        )
    way_out = f"Correct the name, or add the device to {question.robot.path}."
    return " ".join(filter(None, (_choice(question), way_out, _other_method(question))))


def _other_method(question: NameQuestion) -> str:
    """Return how a method that is only named like the look-up is left out, where it may be one."""
    rule = question.lookup.site.rule
    place = rule.places.get(rule.shape)
    if rule.shape != "call" or rule.on is not None or place is None:
        return ""
    return (
        f"If this {quoted(rule.called)} is a method of your own, write `on:` with the receiver "
        f"that counts into the row of {place.path}:{place.line}."
    )


def _choice(question: NameQuestion) -> str:
    asked = question.asked
    names = [d.name for d in question.devices if asked is None or d.kind == asked]
    if names:
        return f"Of kind {asked} it has {named(names)}." if asked else f"It has {named(names)}."
    return f"It has no device of kind {asked}." if asked else "It has no device at all."
