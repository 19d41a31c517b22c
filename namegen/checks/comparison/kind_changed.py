"""``kind-changed``: a device is another sort of thing."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.comparison.sides import by_hand, differing, thing
from namegen.checks.wording import a_device
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.views import ComparisonView

KIND = FindingKind(
    name="kind-changed",
    severity=Severity.ERROR,
    scope="robot",
    what="A device has another kind.",
    why="A program asks for a name and a kind, and finds nothing when one of them differs.",
    example=Example(
        flagged="bumpBow,distance,bridge digital 2",
        mended="bumpBow,switch,bridge digital 2",
    ),
    repair="None by itself: choose the kind on the machine, or correct the manifest.",
)


def check(view: ComparisonView) -> Iterator[Finding]:
    """Yield each device whose kinds both sides say, and differently."""
    for pair in view.pairs:
        old, new = pair.before.kind, pair.after.kind
        if old and new and old != new:
            message = (
                f"{thing(pair.after)} is {a_device(new)} in {view.after.label} and "
                f"{a_device(old)} in {view.before.label}."
            )
            advice = by_hand(view, "Choose the manifest's kind in the machine's configuration.")
            yield differing(KIND, view, pair, "kind", message + advice)
