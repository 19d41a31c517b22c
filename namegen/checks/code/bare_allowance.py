"""``bare-allowance``: a comment allows a finding, but gives no reason, or allows nothing."""

from __future__ import annotations

from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.places import Place

KIND = FindingKind(
    name="bare-allowance",
    severity=Severity.WARNING,
    scope="file",
    what="A comment allows a finding, but gives no reason, or nothing is found where it stands.",
    why=(
        "Whoever reads the line next season must see why it is right as it is. An allowance "
        "that is no longer needed would hide the next mistake on its line."
    ),
    example=Example(
        flagged='old = boat.motor("oldWinch")  # namegen: allow unknown-name',
        mended=(
            'old = boat.motor("oldWinch")  '
            "# namegen: allow unknown-name because the club's spare boat still has it"
        ),
    ),
    repair="None: only its writer knows the reason.",
)


def finding(place: Place, why: str) -> Finding:
    """Return the finding about an allowance; ``why`` is what is wrong with it."""
    return KIND.finding(
        place,
        f"This allowance {why}. An allowance is written `namegen: allow KIND because REASON`.",
    )
