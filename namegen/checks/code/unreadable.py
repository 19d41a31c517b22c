"""``unreadable``: a file or a stretch of it cannot be read as code."""

from __future__ import annotations

from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.places import Place
from namegen.text.terminal import printable

KIND = FindingKind(
    name="unreadable",
    severity=Severity.ERROR,
    scope="file",
    what="A file, or a stretch of it, cannot be read as code of its language.",
    why=(
        "Look-ups in it are not checked. Everything around a broken stretch is, and nothing "
        "inside it is rewritten. A file that can hold no look-up is not read, and nothing is said "
        "about it; nor about functions and classes that can hold none in a Python file over 32 KiB."
    ),
    example=Example(
        flagged='bow = boat.motor("bowThruster"',
        mended='bow = boat.motor("bowThruster")',
    ),
    repair="None: what belongs there is for the one who wrote it to say.",
)


def finding(place: Place, why: str = "this is not valid code") -> Finding:
    """Return the finding about a stretch of code, or about a file where the place is all of it.

    ``why`` is a clause, which may say the remedy too: ``it holds a NUL byte; save it as UTF-8``.
    """
    reason = printable(why)
    if place == Place(place.path):
        message = (
            f"This file cannot be read: {reason.removeprefix('cannot be read: ')}. Until that is "
            "put right, its look-ups are not checked."
        )
    else:
        message = (
            f"{reason[:1].upper()}{reason[1:]}, so look-ups in it are not checked. A bracket or a "
            "quote is often missing here or just before: put it right and audit again."
        )
    return KIND.finding(place, message)
