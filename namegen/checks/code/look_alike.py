"""``look-alike``: the name looks like a device's but holds other characters."""

from __future__ import annotations

from namegen.checks.code.candidates import Likeness, answer, same_look
from namegen.model.findings import Example, Finding, FindingKind, Safety, Severity
from namegen.model.views import NameQuestion

KIND = FindingKind(
    name="look-alike",
    severity=Severity.ERROR,
    scope="look-up",
    rank=50,
    what=(
        "The name looks like a device's, but holds a blank too many or few, or a character "
        "that is easily taken for another: 0 and O, 1 and l and I, letters of other alphabets."
    ),
    why=(
        "Nobody sees the difference on a screen or on paper, and the machine compares exact "
        "text: the program stops when the robot is switched on."
    ),
    example=Example(
        flagged='level = boat.level("bi1geLevel")',
        mended='level = boat.level("bilgeLevel")',
    ),
    repair=(
        "Writes the device's name as the manifest has it. Safe when exactly one device looks "
        "like this and it is of the kind that the code asks for. Looks are judged by the table "
        "of Unicode Technical Standard #39."
    ),
)

_LIKENESS = Likeness(
    one="It looks like {} but is not",
    several="These look the same",
    safety=Safety.SAFE,
    then="Write {}.",
)


def judge(question: NameQuestion) -> Finding | None:
    """Return the finding when the text only looks like a device's name."""
    if question.text in question.robot.devices:
        return None
    near = same_look(question)
    return answer(KIND, question, near, _LIKENESS) if near else None
