"""Which devices a name in code can mean, and the finding that says so.

Exact and folded names come from tables that are made once per list of names,
so that judging a name costs a few dictionary look-ups.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from functools import lru_cache

from msgspec import Struct

from namegen.checks.code.places import within
from namegen.checks.code.wording import a, quoted, with_ports
from namegen.model.findings import Finding, FindingKind, Rename, Safety
from namegen.model.manifests import Device, Manifest
from namegen.model.places import Related
from namegen.model.views import NameQuestion, ResolvedLookup
from namegen.text.characters import is_ignorable
from namegen.text.differences import spell_out
from namegen.text.lookalikes import skeleton
from namegen.text.words import convert

Table = Mapping[str, tuple[str, ...]]


def fits(question: NameQuestion) -> bool:
    """Whether the name is right: a device of the robot, of the kind asked for, in the setup."""
    device = question.robot.devices.get(question.text)
    return device is not None and of_kind(question, device) and in_setup(question, device)


def of_kind(question: NameQuestion, device: Device) -> bool:
    """Whether the device is of the kind that the look-up asks for, if it asks for one."""
    return question.asked is None or question.asked == device.kind


def in_setup(question: NameQuestion, device: Device) -> bool:
    """Whether the device is there in the setup of the code, or in any when none is named."""
    setups = question.robot.setups
    if not setups:
        return True
    if question.setup is not None:
        return question.setup not in setups or setups[question.setup].has(device.name)
    return any(setup.has(device.name) for setup in setups.values())


def same_letters(question: NameQuestion) -> tuple[Device, ...]:
    """Return the devices whose names differ from the text by capitals alone."""
    return _same_letters(question.text, question.robot)


def same_look(question: NameQuestion) -> tuple[Device, ...]:
    """Return the devices whose names look like the text, or differ by blanks (and capitals)."""
    return _same_look(question.text, question.robot)


def same_to_a_reader(question: NameQuestion) -> tuple[Device, ...]:
    """Return the devices that differ from the text by capitals or by what nobody sees."""
    return same_to_any_reader(question.text, question.robot)


def same_to_any_reader(text: str, robot: Manifest) -> tuple[Device, ...]:
    """Return the robot's devices that differ from a text by capitals or by what nobody sees."""
    found = _same_letters(text, robot) + _same_look(text, robot)
    return tuple({device.name: device for device in found}.values())


class Likeness(Struct, frozen=True):
    """How a kind of finding says that a text is near to names. ``{}`` is the device's name."""

    one: str
    several: str
    safety: Safety
    then: str = ""
    """What to do, where ``one`` does not say it."""


def answer(
    kind: FindingKind, question: NameQuestion, near: Sequence[Device], likeness: Likeness
) -> Finding:
    """Return the finding about a name that is not a device but near to one or more.

    Only one device that fits kind and setup gives a repair; it is safe only
    when no other device could be meant either.
    """
    fitting = [d for d in near if of_kind(question, d) and in_setup(question, d)]
    lead = f"{quoted_robot(question)} has no device {quoted(question.text)}."
    if len(fitting) == 1:
        name = fitting[0].name
        sure = likeness.safety if len(near) == 1 else Safety.SUGGESTED
        how = f"{likeness.one.format(quoted(name))}: {_difference(question.text, name)}."
        then = f" {likeness.then.format(quoted(name))}" if likeness.then else ""
        return _finding(kind, question, f"{lead} {how}{then}", near, Rename(name, sure))
    if len(near) == 1:
        return _finding(kind, question, f"{lead} {_unfit(question, near[0])}", near)
    several = with_ports(fitting or near)
    message = f"{lead} {likeness.several}: {several}. Write the one that is meant."
    return _finding(kind, question, message, near)


def _unfit(question: NameQuestion, device: Device) -> str:
    """Return why the only device that is near cannot be meant as the code stands."""
    how = f"{quoted(device.name)} is near ({_difference(question.text, device.name)})"
    if of_kind(question, device) or question.asked is None:
        return f"{how}, but {left_out(question)}."
    return (
        f"{how}, but is {a(device.kind)}, and this code asks for {a(question.asked)}. Find out "
        "which device is meant, then write its exact name."
    )


def left_out(question: NameQuestion) -> str:
    """Return the clause that says that a device is not in the setup, and then what to do."""
    path = question.robot.path
    if question.setup is None:
        return f"no setup has it. Take this look-up out, or add the device to a setup in {path}"
    return (
        f"setup {quoted(question.setup)}, which this code is for, leaves it out. Take this "
        f"look-up out, add the device to that setup in {path}, or, if the program is for another "
        "setup, write `setup: NAME` into its row of `code` in namegen.yaml"
    )


def _difference(text: str, name: str) -> str:
    """Return in words how a text differs from a name that is near."""
    phrase = spell_out(text, name)
    if phrase.endswith(" letters differ") and convert(text, "camelCase") == convert(
        name, "camelCase"
    ):
        return "the same words in another style"
    return phrase


def _finding(
    kind: FindingKind,
    question: NameQuestion,
    message: str,
    near: Sequence[Device],
    repair: Rename | None = None,
) -> Finding:
    return kind.finding(
        question.lookup.place,
        message,
        found=question.text,
        expected=repair.name if repair else None,
        robot=question.robot.robot,
        repair=repair if question.lookup.literal else None,
        related=related(question.lookup, near),
    )


def quoted_robot(question: NameQuestion) -> str:
    """Return the robot as messages name it."""
    return quoted(question.robot.robot)


def related(lookup: ResolvedLookup, devices: Iterable[Device] = ()) -> list[Related]:
    """Return the second places: the look-up where the name stands elsewhere, then devices."""
    said = "looked up here"
    if lookup.is_key:
        said += "; as it is a key, change it wherever code takes something by it"
    places = [] if within(lookup.place, lookup.at) else [Related(lookup.at, said)]
    return places + [Related(device.place(), "named here") for device in devices]


def _same_letters(text: str, robot: Manifest) -> tuple[Device, ...]:
    return _found(robot, _by_letters(tuple(robot.devices)), text.lower())


def _same_look(text: str, robot: Manifest) -> tuple[Device, ...]:
    names = tuple(robot.devices)
    alike = _found(robot, _by_look(names), skeleton(text))
    rounded = _found(robot, _by_round_look(names), _round_look(text))
    alike += tuple(device for device in rounded if device not in alike)
    return alike or _found(robot, _by_ink(names), _ink(text))


def _found(robot: Manifest, table: Table, key: str) -> tuple[Device, ...]:
    return tuple(robot.devices[name] for name in table.get(key, ()))


@lru_cache(maxsize=64)
def _by_letters(names: tuple[str, ...]) -> Table:
    return _table((name.lower(), name) for name in names)


@lru_cache(maxsize=64)
def _by_look(names: tuple[str, ...]) -> Table:
    return _table((skeleton(name), name) for name in names)


@lru_cache(maxsize=64)
def _by_round_look(names: tuple[str, ...]) -> Table:
    return _table((_round_look(name), name) for name in names)


@lru_cache(maxsize=64)
def _by_ink(names: tuple[str, ...]) -> Table:
    return _table((_ink(name), name) for name in names)


def _round_look(text: str) -> str:
    """Return what a text looks like to one who takes a zero for a small o.

    The table of the standard takes it for a capital O only.
    """
    return skeleton(text.replace("0", "o"))


def _ink(text: str) -> str:
    """Return what is left of a text without blanks, unseen characters and case."""
    seen = "".join(text.split())
    if not seen.isascii():
        seen = "".join(char for char in seen if not is_ignorable(char))
    return seen.lower()


def _table(rows: Iterable[tuple[str, str]]) -> Table:
    table: dict[str, tuple[str, ...]] = {}
    for key, name in rows:
        table[key] = (*table.get(key, ()), name)
    return table
