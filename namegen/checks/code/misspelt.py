"""``misspelt``: the name is near exactly one device's name."""

from __future__ import annotations

from namegen.checks.code.candidates import Likeness, answer
from namegen.checks.code.likely import suggestion
from namegen.model.findings import Example, Finding, FindingKind, Safety, Severity
from namegen.model.views import NameQuestion

KIND = FindingKind(
    name="misspelt",
    severity=Severity.ERROR,
    scope="look-up",
    rank=70,
    what="The name is no device of the robot, but a slip of the keyboard away from exactly one.",
    why=(
        "Devices are looked up by exact text. One letter swapped, doubled or left out stops the "
        "program when the robot is switched on."
    ),
    example=Example(
        flagged='stern = boat.motor("sternThurster")',
        mended='stern = boat.motor("sternThruster")',
    ),
    repair=(
        "Writes the device's name. Only suggested, because likeness is no proof. Nothing is "
        "suggested when a second name is about as near, or when the difference is a number, a "
        "lone letter or an opposing word such as left and right: that may be another machine."
    ),
)

_LIKENESS = Likeness(
    one="It should probably be {}",
    several="These are near",
    safety=Safety.SUGGESTED,
)


def judge(question: NameQuestion) -> Finding | None:
    """Return the finding when one device was surely meant."""
    if question.text in question.robot.devices:
        return None
    best = suggestion(question).best
    if best is None:
        return None
    return answer(KIND, question, [question.robot.devices[best]], _LIKENESS)
