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
        "inside it is rewritten."
    ),
    example=Example(
        flagged='bow = boat.motor("bowThruster"',
        mended='bow = boat.motor("bowThruster")',
    ),
    repair="None: what belongs there is for the one who wrote it to say.",
)


def finding(place: Place, why: str = "") -> Finding:
    """Return the finding about a stretch of code, or about a whole file with the reason why."""
    if why:
        return KIND.finding(
            place, f"This cannot be read: {printable(why)}. Look-ups in it are not checked."
        )
    return KIND.finding(
        place,
        "This is not valid code, so look-ups in it are not checked. Mend it (a bracket or a "
        "quote is often missing here or just before) and audit again.",
    )
