"""A value that its field cannot have; among them, finding kinds that cannot be accepted."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks import kind, kinds
from namegen.checks.hints import did_you_mean, nearest
from namegen.checks.wording import quoted, sentences
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.views import RobotView

KIND = FindingKind(
    name="wrong-value",
    severity=Severity.ERROR,
    scope="text",
    what="A value is not what its field takes: a text where a number belongs, a word that is "
    "none of the choices, a port that is not controller, type and label, an accepted finding "
    "kind that does not exist or that is an error.",
    why="A value that is not understood would be ignored or guessed.",
    example=Example(
        flagged="devices:\n  bowThruster: {kind: motor, port: bridge motor 1, reversed: yess}\n",
        mended="devices:\n  bowThruster: {kind: motor, port: bridge motor 1, reversed: true}\n",
    ),
    repair="None by itself: the message says what the field takes.",
)


def check(view: RobotView) -> Iterator[Finding]:
    """Yield a finding for each acceptance of a kind that is unknown or an error."""
    for acceptance in view.manifest.accepts:
        found = kind(acceptance.kind)
        if found is None:
            guess = nearest(acceptance.kind, kinds())
            message = sentences(
                f"There is no finding kind {quoted(acceptance.kind)} to accept.",
                did_you_mean(guess)
                or "Write the kind as it stands in the finding's report, such as port-undecided.",
            )
        elif found.severity is Severity.ERROR:
            guess = None
            message = (
                f"{quoted(acceptance.kind)} is an error and cannot be accepted: the outputs would "
                "be wrong. Mend what it reports; only warnings and notes can be accepted."
            )
        else:
            continue
        yield KIND.finding(
            acceptance.places.get("finding") or view.manifest.place("accept"),
            message,
            found=acceptance.kind,
            expected=guess,
            robot=view.manifest.robot,
        )
