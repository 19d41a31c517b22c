"""``letter-case``: the name is a device's but for capital and small letters."""

from __future__ import annotations

from namegen.checks.code.candidates import Likeness, answer, same_letters
from namegen.model.findings import Example, Finding, FindingKind, Safety, Severity
from namegen.model.views import NameQuestion

KIND = FindingKind(
    name="letter-case",
    severity=Severity.ERROR,
    scope="look-up",
    rank=40,
    what="The name differs from a device's by capital and small letters alone.",
    why=(
        "Devices are looked up by exact text: to the machine a capital is another letter. The "
        "program stops when the robot is switched on."
    ),
    example=Example(
        flagged='bow = boat.motor("bowthruster")',
        mended='bow = boat.motor("bowThruster")',
    ),
    repair=(
        "Writes the device's name as the manifest has it. Safe when exactly one device has "
        "these letters and it is of the kind that the code asks for."
    ),
)

_LIKENESS = Likeness(
    one="It should be {} (capitals count)",
    several="Only capitals differ in these",
    safety=Safety.SAFE,
)


def judge(question: NameQuestion) -> Finding | None:
    """Return the finding when capitals alone keep the text from being a device."""
    if question.text in question.robot.devices:
        return None
    near = same_letters(question)
    return answer(KIND, question, near, _LIKENESS) if near else None
