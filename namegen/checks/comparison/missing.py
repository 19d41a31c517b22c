"""``missing``: the later side lacks a device."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.comparison.sides import by_machine, found_at, plugged, thing
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.views import ComparisonView

KIND = FindingKind(
    name="missing",
    severity=Severity.ERROR,
    scope="robot",
    what="The first of the two has a device, or a controller, that the second lacks. One that is "
    "optional is a note.",
    why="A program that looks it up stops.",
    example=Example(
        flagged="name,kind,port\nrudder,servo,bridge servo 1",
        mended="name,kind,port\nrudder,servo,bridge servo 1\nnetWinch,motor,bridge motor 3",
    ),
    repair="None by itself: look at the plug, the wire, and the setup that is selected.",
)


def check(view: ComparisonView) -> Iterator[Finding]:
    """Yield each device that no device of the later side could be."""
    for device in view.missing:
        message = (
            f"{view.before.label} has {thing(device)} {plugged(device)}; {view.after.label} has "
            "no such device."
        )
        advice = "Look at the plug and the wire there, and whether the machine's configuration "
        advice = by_machine(view, f"{advice}has the name.")
        yield found_at(KIND, view, device, device.place(), message + advice)
