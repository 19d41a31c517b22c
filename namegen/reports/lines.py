"""The report for editors and logs: one line for each finding."""

from __future__ import annotations

from collections.abc import Mapping

from namegen.model.findings import FindingKind
from namegen.model.reports import Report, SourceText
from namegen.text.terminal import printable

NAME = "lines"


def render(
    report: Report,
    source: SourceText,
    kinds: Mapping[str, FindingKind],
    *,
    width: int = 80,
    colour: bool = False,
) -> str:
    """Return ``path:line:column: severity: message``, one line each; nothing when all is well."""
    del source, kinds, width, colour
    return "".join(
        printable(f"{finding.place}: {finding.severity.value}: {finding.message}") + "\n"
        for finding in report.findings
    )
