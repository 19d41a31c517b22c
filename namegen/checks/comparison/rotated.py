"""``rotated``: three devices or more have changed places in turn."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.comparison.moves import of_length
from namegen.checks.comparison.sides import by_hand, differing, plugged, thing, things
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.views import ComparisonView

KIND = FindingKind(
    name="rotated",
    severity=Severity.WARNING,
    scope="robot",
    what="Three devices or more have one another's ports in turn, as when all plugs of a row are "
    "shifted by one.",
    why="Each name is found, and another machine moves.",
    example=Example(
        flagged="a,motor,bridge motor 2\nb,motor,bridge motor 3\nc,motor,bridge motor 1",
        mended="a,motor,bridge motor 1\nb,motor,bridge motor 2\nc,motor,bridge motor 3",
    ),
    repair="None by itself: put the plugs, or the names, back in their order.",
)


def check(view: ComparisonView) -> Iterator[Finding]:
    """Yield one finding for each ring of devices."""
    for ring in of_length(view, 3):
        where = ", ".join(f"{thing(pair.after)} {plugged(pair.after)}" for pair in ring)
        message = (
            f"{things([pair.after for pair in ring])} have changed places in turn: "
            f"{view.after.label} has {where}; {view.before.label} has each at the port that the "
            "one before it has now."
        )
        advice = by_hand(view, "Put the plugs, or the names, back in their order.")
        yield differing(KIND, view, ring[0], "port", message + advice)
