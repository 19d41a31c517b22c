"""The text of a YAML file cannot be read, or uses a part of YAML that is refused."""

from __future__ import annotations

from namegen.model.findings import Example, FindingKind, Severity

KIND = FindingKind(
    name="bad-yaml",
    severity=Severity.ERROR,
    scope="text",
    what="The file is not YAML, or it uses something that is refused: tabs for indentation, "
    "anchors and aliases, tags, merge keys, braces around a name without quotes.",
    why="Nothing of the file can be trusted when its structure is in doubt.",
    example=Example(
        flagged="devices:\n  bowThruster: {kind: motor, port: bridge motor 1\n",
        mended="devices:\n  bowThruster: {kind: motor, port: bridge motor 1}\n",
    ),
    repair="None by itself: indent with blanks, close every bracket and quote, "
    "and write a value out where an alias stood.",
)
