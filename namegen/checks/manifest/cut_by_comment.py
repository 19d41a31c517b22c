"""A text that YAML cuts off at a number sign."""

from __future__ import annotations

from namegen.model.findings import Example, FindingKind, Severity

KIND = FindingKind(
    name="cut-by-comment",
    severity=Severity.WARNING,
    scope="text",
    what="A text without quotes has a blank and # in it: YAML takes the rest for a comment.",
    why="The end of the text is missing from the sheet and from names, and nothing says so.",
    example=Example(
        flagged="devices:\n"
        "  bowThruster: {kind: motor, port: bridge motor 1}\n"
        "  netWinch:\n    kind: motor\n    port: bridge motor 2\n    does: Pulls net #2 aboard\n",
        mended="devices:\n"
        "  bowThruster: {kind: motor, port: bridge motor 1}\n"
        '  netWinch:\n    kind: motor\n    port: bridge motor 2\n    does: "Pulls net #2 aboard"\n',
    ),
    repair="None by itself: put the text in double quotes, or move a real comment to its own line.",
)
