"""``look-alike``: a device's name differs by what looks the same."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.comparison.spellings import respelt
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.views import ComparisonView

KIND = FindingKind(
    name="look-alike",
    severity=Severity.ERROR,
    scope="robot",
    what="A device's name differs by what looks the same: blanks, 0/O, 1/l/I, letters of another "
    "script.",
    why="Devices are looked up by exact text: the program does not find what the machine has.",
    example=Example(
        flagged="b0wThruster,motor,bridge motor 1",
        mended="bowThruster,motor,bridge motor 1",
    ),
    repair="None by itself: type the name into the machine as the manifest has it.",
)


def check(view: ComparisonView) -> Iterator[Finding]:
    """Yield each device that is spelt so on the later side."""
    yield from respelt(KIND, view)
