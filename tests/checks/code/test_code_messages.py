"""All messages about code, collected so that they can be read through as a student would."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from namegen.checks.code import (
    crossed_names,
    double_lookup,
    loose_literal,
    not_checkable,
    outdated_number,
    unreadable,
    unused_device,
)
from namegen.checks.naming import judge_lookup
from namegen.model.facts import PASSED_ON
from namegen.model.findings import Finding
from namegen.model.places import Place
from namegen.model.views import NameQuestion
from tests.checks.code.boats import (
    FLEET,
    HERON,
    device,
    judged,
    lookup,
    lookups,
    manifest,
    view,
)

NAMES = [
    ("bowthruster", "motor", None),
    ("bowthruster", "servo", None),
    ("netwinch", "motor", "tank-test"),
    ("netWinch ", "motor", None),
    ("bi1geLevel", "level", None),
    ("b\u043ewThruster", "motor", None),
    ("rud\u200bder", "servo", None),
    ("frontThruster", "motor", None),
    ("frontThruster", None, None),
    ("frontThruster", "servo", None),
    ("scoopWinch", "motor", "tank-test"),
    ("rudder", "motor", None),
    ("rangeBow", "encoder", None),
    ("netWinch", "motor", "tank-test"),
    ("flagServo", "servo", None),
    ("reedCutter", "motor", None),
    ("sternThurster", "motor", None),
    ("BOW_THRUSTER", "motor", None),
    ("netWich", "motor", "tank-test"),
    ("rduder", "motor", None),
    ("rangeStern", "distance", None),
    ("bowThruster2", "motor", None),
    ("rudderB", "servo", None),
    ("fogHorn", "lamp", None),
    ("fogHorn", "gyro", None),
    ("fogHorn", None, None),
    ("", None, None),
    ("  ", "motor", None),
    ("a\n\x1b[2J", "lamp", None),
    ("x" * 1000, "lamp", None),
]
TWINS = manifest(
    "heron",
    [
        device("armA", "motor", "bridge motor 1"),
        device("arma", "motor", "bridge motor 2"),
        device("arm1", "motor", "stern motor J"),
        device("armI", "motor", "stern motor K"),
        device("left", "servo", "stern servo 7", formerly=["arm"]),
        device("right", "servo", "stern servo 8", formerly=["arm", "Winch"]),
        device("winch", "motor", "bridge motor 3"),
    ],
)


def shown(finding: Finding | None) -> str:
    """Return a finding in lines: message, repair, related places."""
    assert finding is not None
    lines = [f"{finding.severity.value} {finding.kind}: {finding.message}"]
    if finding.repair:
        lines.append(f"    repair: {finding.repair}")
    return "\n".join(lines + [f"    {r.message}: {r.place}" for r in finding.related])


def test_messages_about_one_name(snapshot):
    text = "\n\n".join(shown(judged(name, kind, HERON, setup)) for name, kind, setup in NAMES)
    assert text == snapshot


def test_messages_about_names_that_two_devices_can_be_meant_by(snapshot):
    names = [
        ("ArmA", "motor"),
        ("ArmA", "servo"),
        ("arml", "motor"),
        ("arm", None),
        ("Winch", None),
    ]
    assert "\n\n".join(shown(judged(name, kind, TWINS)) for name, kind in names) == snapshot


def test_messages_about_code_for_two_robots(snapshot):
    def both(text: str, kind: str) -> Finding | None:
        asked = lookup(text, kind)
        return judge_lookup(asked, [NameQuestion(asked, text, b, None, FLEET) for b in FLEET])

    names = [("bowthruster", "motor"), ("netWinch", "motor"), ("fogHorn", "lamp")]
    assert "\n\n".join(shown(both(*name)) for name in names) == snapshot


def _beside_naming() -> Iterator[Finding]:
    yield from crossed_names.check(view('stern_thruster = boat.motor("bowThruster")'))
    yield from double_lookup.check(
        view('class Boat:\n    a = boat.motor("netWinch")\n    b = boat.motor("netWinch")')
    )
    yield from double_lookup.check(
        view('def go():\n    boat.motor("netWinch").on()\n    boat.motor("netWinch").off()')
    )
    yield from outdated_number.check(view("BOW_THRUSTER_COUNTS_PER_OUTPUT_TURN = 216"))
    yield from loose_literal.check(view('boat.motor("bowThruster")'))
    robot = manifest("heron", [device("rudder", "servo", "stern servo 7"), device("lamp", "lamp")])
    yield from unused_device.check(view('boat.servo("rudder")', robot))
    for code in (
        "def start(name):\n    boat.motor(name)",
        "class Winch:\n    def __init__(self, name):\n        boat.motor(name)",
        "def start(name):\n    boat.find(name)",
        "boat.motor(side + 'Thruster')",
    ):
        yield not_checkable.finding(lookups(code)[0])
    yield not_checkable.finding(replace(lookups("boat.motor(side)")[0], why=PASSED_ON))
    why = "code/devices.py has no `Motor.BOW_TRUSTER`; the nearest is `BOW_THRUSTER`"
    misspelt = replace(lookups("boat.motor(Motor.BOW_TRUSTER)")[0], why=why, lacking=True)
    yield not_checkable.finding(misspelt)
    yield unreadable.finding(Place("code/a.py", 2, 1, 4, 8))
    yield unreadable.finding(Place("code/a.py"), "it is not text in UTF-8; save the file as UTF-8")


def test_messages_beside_naming(snapshot):
    assert "\n\n".join(map(shown, _beside_naming())) == snapshot
