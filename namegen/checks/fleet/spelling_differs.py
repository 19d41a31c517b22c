"""One thing with two spellings of its name."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.fleet.holders import holders, most_common, named_at, robots_of
from namegen.checks.near_names import difference, near
from namegen.checks.wording import quoted
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.views import FleetView

KIND = FindingKind(
    name="spelling-differs",
    severity=Severity.WARNING,
    scope="fleet",
    what="A name differs from another robot's name for a device of the same kind only by case, by "
    "letters that look alike, or by one slip of the finger, and neither robot has both.",
    why="Both are likely one thing. A program that is carried from robot to robot fails on one of "
    "them, over a difference that nobody sees.",
    example=Example(
        flagged="robot: heron\ndevices:\n  netWinch: {kind: motor, port: bridge motor 1}\n"
        "---\nrobot: dipper\ndevices:\n  netwinch: {kind: motor, port: bridge motor 3}\n",
        mended="robot: heron\ndevices:\n  netWinch: {kind: motor, port: bridge motor 1}\n"
        "---\nrobot: dipper\ndevices:\n  netWinch: {kind: motor, port: bridge motor 1}\n",
    ),
    repair="None by itself: `namegen rename` changes manifest, code and outputs together.",
)


def check(view: FleetView) -> Iterator[Finding]:
    """Yield a finding for each device that most robots spell in another way."""
    held = holders(view)
    for one, other in near([some[0].device for some in held.values()]):
        how = difference(one.name, other.name)
        few, many = sorted((held[one.name], held[other.name]), key=len)
        if len(few) == len(many):  # the robot that comes first is right
            many, few = held[one.name], held[other.name]
        kinds = [most_common(holder.device.kind for holder in some) for some in (few, many)]
        both = {holder.robot.robot for holder in few} & {holder.robot.robot for holder in many}
        if not how or both or kinds[0] != kinds[1]:
            continue
        right = many[0].device.name
        for holder in few:
            name, robot = holder.device.name, holder.robot.robot
            do = "does" if len(many) == 1 else "do"
            message = (
                f"{robot} has {quoted(name)}, {robots_of(many)} {quoted(right)}: {how}. If "
                f"they are one thing, spell it as {robots_of(many)} {do}, everywhere; else let the "
                "names differ by a word."
            )
            yield KIND.finding(
                holder.device.place(),
                message,
                found=name,
                expected=right,
                robot=robot,
                related=[named_at(many[0])],
            )
