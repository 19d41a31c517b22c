"""``moved``: a device is plugged in somewhere else."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.comparison.moves import of_length
from namegen.checks.comparison.sides import by_hand, differing, plugged, thing
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.views import ComparisonView

KIND = FindingKind(
    name="moved",
    severity=Severity.WARNING,
    scope="robot",
    what="A device has another port, and no other device came to the port that it left.",
    why="The program still finds the name, and what is plugged in there moves.",
    example=Example(
        flagged="rudder,servo,bridge servo 2",
        mended="rudder,servo,bridge servo 1",
    ),
    repair="None by itself: only a person at the robot sees which of the two is right.",
)


def check(view: ComparisonView) -> Iterator[Finding]:
    """Yield each device that moved by itself."""
    for (pair,) in of_length(view, 1, 1):
        message = (
            f"{thing(pair.after)} is {plugged(pair.after)} in {view.after.label} and "
            f"{plugged(pair.before)} in {view.before.label}."
        )
        advice = by_hand(view, "Move the plug, or correct the manifest if the machine is right.")
        yield differing(KIND, view, pair, "port", message + advice)
