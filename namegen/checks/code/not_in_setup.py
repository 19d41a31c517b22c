"""``not-in-setup``: the robot has the device, but not in the setup that the code is for."""

from __future__ import annotations

from namegen.checks.code.candidates import in_setup, left_out, quoted_robot, related
from namegen.checks.code.wording import quoted
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.places import Related
from namegen.model.views import NameQuestion

KIND = FindingKind(
    name="not-in-setup",
    severity=Severity.ERROR,
    scope="look-up",
    rank=20,
    what="The robot has the device, but the setup that the code is for leaves it out.",
    why=(
        "On the machine one setup is selected. A device that is not in it does not exist there, "
        "so the look-up fails when the robot is switched on."
    ),
    example=Example(
        flagged='winch = boat.motor("netWinch")   # setup tank-test is without netWinch',
        mended='bow = boat.motor("bowThruster")',
    ),
    repair="None: the code or the setup can be what is to change.",
)


def judge(question: NameQuestion) -> Finding | None:
    """Return the finding when the device is there, but not in the setup."""
    device = question.robot.devices.get(question.text)
    if device is None or in_setup(question, device):
        return None
    places = related(question.lookup, [device])
    setup = question.robot.setups.get(question.setup or "")
    if setup is not None:
        place = setup.places.get("without") or setup.places.get("only") or setup.places.get("")
        places += [Related(place, "setup chosen here")] if place else []
    return KIND.finding(
        question.lookup.place,
        f"{quoted(device.name)} is a device of {quoted_robot(question)}, but {left_out(question)}.",
        found=question.text,
        robot=question.robot.robot,
        related=places,
    )
