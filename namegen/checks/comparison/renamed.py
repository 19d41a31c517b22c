"""``renamed``: a device has another name."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.comparison.matching import how_renamed
from namegen.checks.comparison.sides import by_machine, differing, thing
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.views import ComparisonView

KIND = FindingKind(
    name="renamed",
    severity=Severity.WARNING,
    scope="robot",
    what="What has one name on one side has another on the other: it is at the same port and of "
    "the same kind, or the manifest knows the other as an old name.",
    why="A program that looks up one of the names does not find the other.",
    example=Example(
        flagged="frontThruster,motor,bridge motor 1",
        mended="bowThruster,motor,bridge motor 1",
    ),
    repair="None by itself: type the manifest's name into the machine, or `namegen rename`.",
)


def check(view: ComparisonView) -> Iterator[Finding]:
    """Yield each pair whose names have nothing in common but what they name."""
    for pair in view.pairs:
        if how_renamed(pair) == KIND.name:
            message = (
                f"{view.after.label} has {thing(pair.after)} where {view.before.label} has "
                f"{thing(pair.before)}."
            )
            advice = by_machine(view, "Type the name that the manifest has into the machine.")
            yield differing(KIND, view, pair, "", message + advice)
