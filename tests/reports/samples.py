"""Findings with everything in them that a report must be able to show."""

from __future__ import annotations

from namegen.model.findings import Finding, Fix, Rename, Safety, Severity
from namegen.model.places import Edit, Place, Related
from namegen.model.reports import Report

MAIN, YAML = "code/heron/main.py", "robots/heron.yaml"
SOURCES = {
    MAIN: "\n".join(
        [
            'bow = boat.motor("bowthruster")',
            '\tstern = boat.motor("sternThurster")',
            'print("\u6c34\u6c34 e\u0301"); boat.motor("netWinch\u200b")',
            "x = 1; " * 40 + 'boat.servo("rduder")' + "; y = 2" * 40,
            "def broken(:",
            "    pass \x1b[2J",
            'boat.motor("bowthruster"); boat.motor("bowthruster"); boat.motor("bowthruster")',
        ]
    ),
    YAML: "robot: heron\r\ndevices:\r\n  bowThruster: {}\r\n  netWinch: {}\r\n",
}


def place(line: int, text: str, path: str = MAIN, nth: int = 0) -> Place:
    """Return where a text stands in a line of the samples."""
    source = SOURCES[path].split("\n")[line - 1]
    column = -1
    for _ in range(nth + 1):
        column = source.index(text, column + 1)
    return Place(path, line, column + 1, line, column + 1 + len(text))


def finding(where: Place, found: str, expected: str, safety: Safety = Safety.SAFE) -> Finding:
    """Return a finding about a name, with its fix and the device that is meant."""
    return Finding(
        "letter-case",
        Severity.ERROR,
        f'"heron" has no device "{found}". It should be "{expected}".',
        where,
        found=found,
        expected=expected,
        robot="heron",
        repair=Rename(expected, safety),
        fix=Fix(safety, (Edit(where, expected),)),
        related=(Related(place(3, "bowThruster", YAML), "named here"),),
    )


FULL = Report(
    (
        finding(place(1, "bowthruster"), "bowthruster", "bowThruster"),
        finding(place(2, "sternThurster"), "sternThurster", "sternThruster", Safety.SUGGESTED),
        finding(place(3, "netWinch\u200b"), "netWinch\u200b", "netWinch"),
        finding(place(4, "rduder"), "rduder", "rudder", Safety.SUGGESTED),
        Finding(
            "unreadable",
            Severity.ERROR,
            "This is not valid code.",
            Place(MAIN, 5, 1, 6, 9),
        ),
        *(finding(place(7, "bowthruster", nth=n), "bowthruster", "bowThruster") for n in range(3)),
        Finding(
            "unreadable", Severity.ERROR, "This file cannot be read.", Place("code/a b#\u00fc.py")
        ),
        Finding(
            "unused-device",
            Severity.WARNING,
            'No code looks up "netWinch".',
            place(4, "netWinch", YAML),
            found="netWinch",
            robot="heron",
        ),
        Finding("double-lookup", Severity.NOTE, "Twice.", Place(MAIN, 1, 99, 1, 99)),
    ),
    files=3,
    lookups=12,
)
EMPTY = Report((), files=1)
