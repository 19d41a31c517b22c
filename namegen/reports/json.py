"""The report for programs: JSON in the fixed form ``namegen-report/1``."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

from namegen.model.findings import Finding, FindingKind, Fix, Severity
from namegen.model.places import Place
from namegen.model.reports import Report, SourceText

NAME = "json"
FORMAT = "namegen-report/1"


def render(
    report: Report,
    source: SourceText,
    kinds: Mapping[str, FindingKind],
    *,
    width: int = 80,
    colour: bool = False,
) -> str:
    """Return the report as JSON in pure ASCII, so that no terminal or pipe can spoil it.

    A lone surrogate of a file name or a literal stays what it is, as an escape.
    """
    del source, kinds, width, colour
    return json.dumps(document(report), ensure_ascii=True, indent=1) + "\n"


def document(report: Report) -> dict[str, Any]:
    """Return the report as plain data; keys come in the order of the format."""
    summary: dict[str, int] = {severity.value: report.count(severity) for severity in Severity}
    return {
        "format": FORMAT,
        "findings": [_finding(finding) for finding in report.findings],
        "summary": {**summary, "files": report.files, "lookups": report.lookups},
    }


def _finding(finding: Finding) -> dict[str, Any]:
    return {
        "kind": finding.kind,
        "severity": finding.severity.value,
        "message": finding.message,
        **_span(finding.place),
        "found": finding.found,
        "expected": finding.expected,
        "robot": finding.robot,
        "fix": _fix(finding.fix) if finding.fix else None,
        "related": [
            {
                "path": related.place.path,
                "line": related.place.line,
                "column": related.place.column,
                "message": related.message,
            }
            for related in finding.related
        ],
    }


def _fix(fix: Fix) -> dict[str, Any]:
    edits = [{**_span(edit.place), "text": edit.text} for edit in fix.edits]
    return {"safety": fix.safety.value, "edits": edits}


def _span(place: Place) -> dict[str, Any]:
    return {
        "path": place.path,
        "line": place.line,
        "column": place.column,
        "end_line": place.end_line,
        "end_column": place.end_column,
    }
