"""A field that this place of the file does not have."""

from __future__ import annotations

from namegen.model.findings import Example, FindingKind, Severity

KIND = FindingKind(
    name="unknown-field",
    severity=Severity.ERROR,
    scope="text",
    what="A field name is misspelt, has a capital, or belongs somewhere else.",
    why="What it says would be ignored.",
    example=Example(
        flagged="devices:\n  bowThruster: {kind: motor, port: bridge motor 1, exspect: It turns}\n",
        mended="devices:\n  bowThruster: {kind: motor, port: bridge motor 1, expect: It turns}\n",
    ),
    repair="None by itself: the message names the nearest field.",
)
