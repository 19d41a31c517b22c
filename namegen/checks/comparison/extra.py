"""``extra``: the later side has a device more."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.comparison.sides import by_machine, found_at, plugged, thing
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.views import ComparisonView

KIND = FindingKind(
    name="extra",
    severity=Severity.WARNING,
    scope="robot",
    what="The second of the two has a device, or a controller, that the first lacks.",
    why="No manifest speaks of it: constants, sheet and programs do not know it.",
    example=Example(
        flagged="name,kind,port\nrudder,servo,bridge servo 1\nnetWinch,motor,bridge motor 3",
        mended="name,kind,port\nrudder,servo,bridge servo 1",
    ),
    repair="None by itself: add it to the manifest, or take it out of the machine.",
)


def check(view: ComparisonView) -> Iterator[Finding]:
    """Yield each device that no device of the earlier side could be."""
    for device in view.extra:
        where = f" {plugged(device)}" if device.ports else ""
        message = (
            f"{view.after.label} has {thing(device)}{where}; {view.before.label} has none such."
        )
        advice = by_machine(view, "Add it to the manifest, or take it out of the machine.")
        yield found_at(KIND, view, device, device.place(), message + advice)
