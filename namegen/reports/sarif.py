"""The report for code hosts and editors: SARIF 2.1.0, the OASIS standard."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from typing import Any
from urllib.parse import quote

from namegen.model.findings import Finding, FindingKind, Fix, Severity
from namegen.model.places import Place, Related
from namegen.model.reports import Report, SourceText

NAME = "sarif"
SCHEMA = (
    "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
)
_BASE = "WORKSPACE"
_LEVEL = {Severity.ERROR: "error", Severity.WARNING: "warning", Severity.NOTE: "note"}


def render(
    report: Report,
    source: SourceText,
    kinds: Mapping[str, FindingKind],
    *,
    width: int = 80,
    colour: bool = False,
) -> str:
    """Return the report as SARIF; every kind is a rule, whether it was found or not."""
    del source, width, colour
    return json.dumps(document(report, kinds), ensure_ascii=True, indent=1) + "\n"


def document(report: Report, kinds: Mapping[str, FindingKind]) -> dict[str, Any]:
    """Return the report as plain data in the shape of the standard."""
    index = {name: number for number, name in enumerate(kinds)}
    run = {
        "tool": {"driver": {"name": "namegen", "rules": [_rule(k) for k in kinds.values()]}},
        "originalUriBaseIds": {_BASE: {"description": {"text": "The folder with namegen.yaml."}}},
        "columnKind": "unicodeCodePoints",
        "results": [_result(finding, index) for finding in report.findings],
    }
    return {"$schema": SCHEMA, "version": "2.1.0", "runs": [run]}


def _rule(kind: FindingKind) -> dict[str, Any]:
    example = f"Wrong:\n{kind.example.flagged}\n\nRight:\n{kind.example.mended}"
    return {
        "id": kind.name,
        "shortDescription": {"text": kind.what},
        "fullDescription": {"text": f"{kind.what} {kind.why}"},
        "help": {"text": f"{kind.what}\n\n{kind.why}\n\n{example}\n\nRepair: {kind.repair}"},
        "defaultConfiguration": {"level": _LEVEL[kind.severity]},
    }


def _result(finding: Finding, index: Mapping[str, int]) -> dict[str, Any]:
    result: dict[str, Any] = {"ruleId": finding.kind}
    if finding.kind in index:
        result["ruleIndex"] = index[finding.kind]
    result |= {
        "level": _LEVEL[finding.severity],
        "message": {"text": finding.message},
        "locations": [{"physicalLocation": _location(finding.place)}],
    }
    if finding.related:
        result["relatedLocations"] = _related(finding.related)
    if finding.fix:
        result["fixes"] = [_fix(finding.fix)]
    details = {"found": finding.found, "expected": finding.expected, "robot": finding.robot}
    known = {name: value for name, value in details.items() if value is not None}
    return {**result, "properties": known} if known else result


def _related(places: Sequence[Related]) -> list[dict[str, Any]]:
    """Return second places in order; a place that helps twice is listed once."""
    return [
        {
            "id": number,
            "physicalLocation": _location(related.place),
            "message": {"text": related.message},
        }
        for number, related in enumerate(dict.fromkeys(places), 1)
    ]


def _fix(fix: Fix) -> dict[str, Any]:
    paths = dict.fromkeys(edit.place.path for edit in fix.edits)
    changes = [
        {
            "artifactLocation": _artifact(path),
            "replacements": [
                {"deletedRegion": _region(edit.place), "insertedContent": {"text": edit.text}}
                for edit in fix.edits
                if edit.place.path == path
            ],
        }
        for path in paths
    ]
    return {"description": {"text": f"A {fix.safety.value} fix."}, "artifactChanges": changes}


def _location(place: Place) -> dict[str, Any]:
    """Return a place; one that stands for a whole file has no region."""
    location: dict[str, Any] = {"artifactLocation": _artifact(place.path)}
    return location if place == Place(place.path) else {**location, "region": _region(place)}


def _region(place: Place) -> dict[str, int]:
    return {
        "startLine": place.line,
        "startColumn": place.column,
        "endLine": place.end_line,
        "endColumn": place.end_column,
    }


def _artifact(path: str) -> dict[str, str]:
    try:
        uri = quote(path, safe="/", errors="surrogateescape")
    except UnicodeEncodeError:
        uri = quote(path, safe="/", errors="surrogatepass")
    return {"uri": uri, "uriBaseId": _BASE}
