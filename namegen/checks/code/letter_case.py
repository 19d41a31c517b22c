"""``letter-case``: the name is a device's but for capital and small letters."""

from __future__ import annotations

from namegen.checks.code.candidates import Likeness, answer, same_letters, same_to_a_reader
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
    several="These differ by capitals or look alike",
    safety=Safety.SAFE,
)


def judge(question: NameQuestion) -> Finding | None:
    """Return the finding when capitals alone keep the text from being a device."""
    if question.text in question.robot.devices:
        return None
    if not same_letters(question):
        return None
    return answer(KIND, question, same_to_a_reader(question), _LIKENESS)
