"""A field or name is written twice in one place of a YAML file."""

from __future__ import annotations

from namegen.model.findings import Example, FindingKind, Severity

KIND = FindingKind(
    name="duplicate-key",
    severity=Severity.ERROR,
    scope="text",
    what="A device, controller or field is written twice under the same heading.",
    why="YAML readers keep one of the two without a word, so a device vanishes from the chart.",
    example=Example(
        flagged="devices:\n  bowThruster: {kind: motor, port: bridge motor 1}\n"
        "  bowThruster: {kind: motor, port: bridge motor 2}\n",
        mended="devices:\n  bowThruster: {kind: motor, port: bridge motor 1}\n"
        "  sternThruster: {kind: motor, port: bridge motor 2}\n",
    ),
    repair="None by itself: take one of the two out, or give it the name that was meant.",
)
