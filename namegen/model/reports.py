"""What a reporting command has to say, ready for any of the report formats."""

from __future__ import annotations

from collections.abc import Callable

from msgspec import Struct

from namegen.model.findings import Finding, Severity

SourceText = Callable[[str], str | None]
"""Gives the text of a workspace-relative path, or None where there is none to show."""


class Report(Struct, frozen=True):
    """All findings of one run, sorted by place, with the counts of what was read."""

    findings: tuple[Finding, ...]
    files: int
    lookups: int = 0
    accepted: tuple[Finding, ...] = ()
    """What was found in code and is not among the findings, because it was accepted once."""
    unread: tuple[str, ...] = ()
    """Paths of code in languages that are not read: nothing is known of the names in it."""

    def count(self, severity: Severity) -> int:
        """Return how many findings have this severity."""
        return sum(finding.severity is severity for finding in self.findings)

    @property
    def clean(self) -> bool:
        """Whether there is no error and no warning (exit code 0)."""
        return not (self.count(Severity.ERROR) or self.count(Severity.WARNING))
