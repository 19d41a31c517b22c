"""``swapped``: two devices have each other's ports."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.comparison.moves import of_length
from namegen.checks.comparison.sides import by_hand, differing, plugged, thing
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.views import ComparisonView

KIND = FindingKind(
    name="swapped",
    severity=Severity.WARNING,
    scope="robot",
    what="Two devices have each other's ports: two plugs, or two names, were exchanged.",
    why="Each name is found, and the other machine moves.",
    example=Example(
        flagged="bowThruster,motor,bridge motor 2\nnetWinch,motor,bridge motor 1",
        mended="bowThruster,motor,bridge motor 1\nnetWinch,motor,bridge motor 2",
    ),
    repair="None by itself: exchange the plugs or the names, whichever is wrong.",
)


def check(view: ComparisonView) -> Iterator[Finding]:
    """Yield one finding for each two devices that changed places."""
    for one, other in of_length(view, 2, 2):
        message = (
            f"{thing(one.after)} and {thing(other.after)} have changed places: {view.after.label} "
            f"has the one {plugged(one.after)} and the other {plugged(other.after)}, "
            f"{view.before.label} has them the other way round."
        )
        advice = by_hand(view, "Exchange the two plugs, or the two names in the configuration.")
        yield differing(KIND, view, one, "port", message + advice)
