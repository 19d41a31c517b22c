"""A field that must be there is not."""

from __future__ import annotations

from namegen.model.findings import Example, FindingKind, Severity

KIND = FindingKind(
    name="missing-field",
    severity=Severity.ERROR,
    scope="text",
    what="A field that cannot be left out is missing: a controller's board, a device's port, "
    "its kind when no part decides it.",
    why="The sheet and the programs need it, and a guess may move the wrong machine.",
    example=Example(
        flagged="devices:\n  bowThruster: {port: bridge motor 1}\n",
        mended="devices:\n  bowThruster: {kind: motor, port: bridge motor 1}\n",
    ),
    repair="None by itself: add the field; a port that is not settled is written port: undecided.",
)
