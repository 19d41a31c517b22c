"""One port, one sort of device, two names."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from namegen.checks.fleet.holders import Holder, holders, named_at, robots_of
from namegen.checks.near_names import difference
from namegen.checks.wording import listed, quoted
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.manifests import Port
from namegen.model.views import FleetView

KIND = FindingKind(
    name="same-port-other-name",
    severity=Severity.NOTE,
    scope="fleet",
    what="The same port of the same controller has a device of the same kind and part on two "
    "robots, under two names of which neither robot knows the other's. What `does` says of the "
    "two does not set them apart.",
    why="They may well be one thing that was named twice, or renamed on one robot only. Code for "
    "both robots then finds it on one of them.",
    example=Example(
        flagged="robot: heron\ndevices:\n  netWinch: {kind: motor, port: bridge motor 1}\n"
        "---\nrobot: dipper\ndevices:\n  scoopHoist: {kind: motor, port: bridge motor 1}\n",
        mended="robot: heron\ndevices:\n  netWinch: {kind: motor, port: bridge motor 1}\n"
        "---\nrobot: dipper\ndevices:\n  netWinch: {kind: motor, port: bridge motor 1}\n",
    ),
    repair="None by itself: rename one of them, or say under `does` what each is for.",
)


def check(view: FleetView) -> Iterator[Finding]:
    """Yield a finding for each device whose port has another name on the robots before it.

    A name that one of them has there too is not the odd one: the finding is at the other.
    """
    at: dict[tuple[Port, ...], list[Holder]] = {}
    for held in holders(view).values():
        for one in held:
            if one.device.ports:
                at.setdefault(one.device.ports, []).append(one)
    order = {robot.robot: number for number, robot in enumerate(view.robots)}
    for some in at.values():
        some.sort(key=lambda one: order[one.robot.robot])
        for number, one in enumerate(some):
            before = [other for other in some[:number] if _one_thing(other, one)]
            again = any(other.device.name == one.device.name for other in some[:number])
            if before and not again:
                yield _finding(one, before)


def _finding(one: Holder, before: Sequence[Holder]) -> Finding:
    name, first = one.device.name, before[0].device.name
    same = [other for other in before if other.device.name == first]
    renamed = ""
    if first in one.device.formerly:
        renamed = f" It was called {quoted(first)} here too, and was renamed on this robot alone."
    elif name in before[0].device.formerly:
        renamed = f" It was called {quoted(name)} there too, and was renamed there alone."
    message = (
        f"What is plugged in at {listed(map(str, one.device.ports))} is {quoted(name)} here and "
        f"{quoted(first)} on {robots_of(same)}.{renamed} If it is one thing, give it one name with "
        "`namegen rename`; else say under `does` what each is for."
    )
    return KIND.finding(
        one.device.place(),
        message,
        found=name,
        robot=one.robot.robot,
        related=[named_at(before[0])],
    )


def _one_thing(other: Holder, one: Holder) -> bool:
    """Whether two devices at one port are likely the same thing under two names."""
    a, b = other.device, one.device
    same_sort = (a.kind, a.part, a.address) == (b.kind, b.part, b.address)
    set_apart = bool(a.does and b.does and a.does != b.does)
    known = a.name in one.robot.devices or b.name in other.robot.devices
    spelling = bool(difference(a.name, b.name))  # `spelling-differs` says that
    return same_sort and not (set_apart or known or spelling) and one.wired_like(other)
