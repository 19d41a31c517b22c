"""What the judges say of names, right and wrong, on one robot."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from namegen import checks
from namegen.checks.naming import judge_lookup
from namegen.model.findings import Rename, Safety
from namegen.model.places import Place
from namegen.model.views import NameQuestion
from tests.checks.code.boats import (
    CODE,
    FLEET,
    HERON,
    KINGFISHER,
    device,
    judged,
    lookup,
    manifest,
    question,
)

SAFE, SUGGESTED = Safety.SAFE, Safety.SUGGESTED
ALIKE = manifest(
    "heron",
    [
        device("armA", "motor"),
        device("arma", "motor"),
        device("ARMA", "servo"),
        device("arm1", "motor"),
        device("armI", "motor"),
        device("hold0", "motor"),
        device("gate0", "motor"),
        device("gateO", "motor"),
        device("leftArm", "motor", formerly=["arm", "oldLeft"]),
        device("rightArm", "motor", formerly=["arm"]),
        device("Winch", "motor"),
        device("netWinch", "motor", formerly=["winch"]),
    ],
)


@pytest.mark.parametrize("name", HERON.devices)
@pytest.mark.parametrize("with_kind", [True, False])
def test_the_exact_name_of_a_device_is_right(name: str, with_kind: bool):
    assert judged(name, HERON.devices[name].kind if with_kind else None) is None


@pytest.mark.parametrize(
    ("text", "kind", "verdict", "expected", "safety"),
    [
        # capitals
        ("bowthruster", "motor", "letter-case", "bowThruster", SAFE),
        ("BOWTHRUSTER", None, "letter-case", "bowThruster", SAFE),
        ("bowthruster", "servo", "letter-case", None, None),
        # look-alikes: blanks, digits, letters of other alphabets, what is not seen at all
        ("netWinch ", "motor", "look-alike", "netWinch", SAFE),
        (" netWinch", "motor", "look-alike", "netWinch", SAFE),
        ("bow Thruster", "motor", "look-alike", "bowThruster", SAFE),
        ("Bow Thruster", "motor", "look-alike", "bowThruster", SAFE),
        ("bi1geLevel", "level", "look-alike", "bilgeLevel", SAFE),
        ("biIgeLevel", "level", "look-alike", "bilgeLevel", SAFE),
        ("b0wThruster", "motor", "look-alike", "bowThruster", SAFE),
        ("b\u043ewThruster", "motor", "look-alike", "bowThruster", SAFE),
        ("rud\u200bder", "servo", "look-alike", "rudder", SAFE),
        ("\uff52udder", "servo", "look-alike", "rudder", SAFE),
        ("rudder\t", "motor", "look-alike", None, None),
        # old names
        ("frontThruster", "motor", "retired-name", "bowThruster", SAFE),
        ("frontThruster", None, "retired-name", "bowThruster", SUGGESTED),
        ("frontThruster", "servo", "retired-name", None, None),
        ("frontthruster", "motor", "retired-name", "bowThruster", SUGGESTED),
        ("frontThrusterr", "motor", "retired-name", "bowThruster", SUGGESTED),
        ("scopWinch", None, "retired-name", "netWinch", SUGGESTED),
        ("scopWinch", "servo", "retired-name", None, None),
        # another kind
        ("rudder", "motor", "wrong-kind", None, None),
        ("rudder", "encoder", "wrong-kind", None, None),
        # another robot
        ("flagServo", "servo", "other-robot", None, None),
        ("flagServo", "motor", "other-robot", None, None),
        # slips
        ("sternThurster", "motor", "misspelt", "sternThruster", SUGGESTED),
        ("sternThurster", None, "misspelt", "sternThruster", SUGGESTED),
        ("bow_thruster", "motor", "misspelt", "bowThruster", SUGGESTED),
        ("netWich", "motor", "misspelt", "netWinch", SUGGESTED),
        ("sternThurster", "servo", "unknown-name", None, None),
        # a number, an opposing word or a lone letter: another machine
        ("bowThruster2", "motor", "unknown-name", None, None),
        ("rangeStern", "distance", "unknown-name", None, None),
        ("bumpStern", "switch", "unknown-name", None, None),
        ("rudderA", "servo", "unknown-name", None, None),
        ("rudder_b", "servo", "unknown-name", None, None),
        ("aRudder", "servo", "unknown-name", None, None),
        ("bowTThruster", "motor", "misspelt", "bowThruster", SUGGESTED),  # no suffix, a doubled T
        # nothing near
        ("fogHorn", "lamp", "unknown-name", None, None),
        ("", None, "unknown-name", None, None),
        ("   ", "motor", "unknown-name", None, None),
        ("\x00\ud800{{", "gyro", "unknown-name", None, None),
    ],
)
def test_a_wrong_name_gives_one_finding(text, kind, verdict, expected, safety):
    finding = judged(text, kind)
    assert finding is not None
    assert (finding.kind, finding.expected) == (verdict, expected)
    assert finding.repair == (Rename(expected, safety) if expected else None)
    assert (finding.found, finding.robot) == (text, "heron")
    assert finding.place == lookup(text, kind).place


@pytest.mark.parametrize(
    ("text", "kind", "verdict"),
    [
        ("netWinch", "motor", "not-in-setup"),
        ("netWinch", None, "not-in-setup"),
        ("netWinch", "servo", "wrong-kind"),
        ("netwinch", "motor", "letter-case"),
        ("netWinch ", "motor", "look-alike"),
        ("scoopWinch", "motor", "retired-name"),
        ("netWich", "motor", "misspelt"),
    ],
)
def test_a_device_that_the_setup_leaves_out_is_never_written(text, kind, verdict):
    finding = judged(text, kind, setup="tank-test")
    assert finding is not None
    assert (finding.kind, finding.repair, finding.expected) == (verdict, None, None)
    assert '"tank-test"' in finding.message or verdict == "wrong-kind"


def test_a_device_that_no_setup_has_is_not_there_for_code_of_any_setup():
    tank = {"tank-test": HERON.setups["tank-test"]}
    finding = judged("netWinch", "motor", replace(HERON, setups=tank))
    assert finding is not None and finding.kind == "not-in-setup"
    assert judged("netWinch", "motor", HERON) is None


@pytest.mark.parametrize(
    ("text", "kind", "expected", "safety"),
    [
        ("ArmA", "motor", None, None),
        ("ArmA", None, None, None),
        ("ArmA", "lamp", None, None),
        ("ArmA", "servo", "ARMA", SUGGESTED),  # one fits the kind, but three have these letters
        ("arml", "motor", None, None),
        ("holdO", "motor", "hold0", SAFE),
        ("holdo", "motor", "hold0", SAFE),
        ("gateo", "motor", None, None),
        ("armL", "motor", None, None),  # the left one, not number 1
        ("arm", "motor", None, None),
        ("oldLeft", "motor", "leftArm", SAFE),
        ("winch", "motor", None, None),
    ],
)
def test_nothing_is_rewritten_when_two_devices_can_be_meant(text, kind, expected, safety):
    finding = judged(text, kind, ALIKE)
    assert finding is not None
    assert finding.repair == (Rename(expected, safety) if expected else None)
    if not expected:
        assert len(finding.related) > 1


@pytest.mark.parametrize("judge", checks.naming_judges(), ids=lambda judge: judge.__module__)
@pytest.mark.parametrize("name", HERON.devices)
def test_no_judge_alone_objects_to_a_right_name(judge, name):
    assert judge(question(name, HERON.devices[name].kind)) is None
    assert judge(question(name)) is None


def test_a_present_name_wins_over_the_same_old_name():
    reused = manifest("heron", [device("bow", "motor"), device("stern", "motor", formerly=["bow"])])
    assert judged("bow", "motor", reused) is None


def test_a_name_that_is_put_together_is_flagged_but_not_rewritten():
    asked = question("bowthruster", "motor")
    pieces = replace(asked.lookup, literal=False)
    finding = judge_lookup(pieces, [replace(asked, lookup=pieces)])
    assert finding is not None
    assert (finding.expected, finding.repair) == ("bowThruster", None)


def test_the_look_up_is_a_second_place_when_the_text_stands_elsewhere():
    asked = question("bowthruster", "motor")
    constant = Place("code/heron/names.py", 3, 8, 3, 19)
    far = replace(asked.lookup, place=constant)
    finding = judge_lookup(far, [replace(asked, lookup=far)])
    assert finding is not None and finding.place == constant
    assert [(r.place.path, r.message) for r in finding.related] == [
        (CODE, "looked up here"),
        ("robots/heron.yaml", "named here"),
    ]


@pytest.mark.parametrize(
    ("text", "kind", "verdict", "repair", "robot"),
    [
        ("bowThruster", "motor", None, None, None),
        ("bowthruster", "motor", "letter-case", Rename("bowThruster", SAFE), None),
        ("bowThrsuter", "motor", "misspelt", Rename("bowThruster", SUGGESTED), None),
        ("netWinch", "motor", "other-robot", None, "kingfisher"),
        ("netwinch", "motor", "letter-case", None, None),
        ("reedCutter", "motor", "other-robot", None, "heron"),
        ("fogHorn", "lamp", "unknown-name", None, None),
    ],
)
def test_code_for_two_robots_gives_one_finding_and_a_repair_only_when_both_agree(
    text, kind, verdict, repair, robot
):
    asked = lookup(text, kind)
    finding = judge_lookup(asked, [NameQuestion(asked, text, boat, None, FLEET) for boat in FLEET])
    if verdict is None:
        assert finding is None
        return
    assert finding is not None
    assert (finding.kind, finding.repair, finding.robot) == (verdict, repair, robot)
    assert finding.expected == (repair.name if repair else None)


def test_a_name_that_is_right_on_one_robot_is_not_mended_for_the_other():
    other = manifest("dipper", [device("bowthruster", "motor")])
    asked = lookup("bowThruster", "motor")
    boats = (KINGFISHER, other)
    finding = judge_lookup(asked, [NameQuestion(asked, asked.text, b, None, boats) for b in boats])
    assert finding is not None and finding.robot == "dipper"
    assert (finding.expected, finding.repair) == (None, None)
    assert '"kingfisher", where the name is right' in finding.message


def test_a_repair_for_two_robots_is_no_safer_than_the_least_safe():
    other = manifest("dipper", [device("bowThruster", "motor"), device("BOWthruster", "servo")])
    asked = lookup("bowthruster", "motor")
    boats = (KINGFISHER, other)
    finding = judge_lookup(asked, [NameQuestion(asked, asked.text, b, None, boats) for b in boats])
    assert finding is not None and finding.repair == Rename("bowThruster", SUGGESTED)


def test_a_text_that_is_not_known_is_not_judged():
    unknown = replace(lookup("x"), text=None)
    assert judge_lookup(unknown, [question("x")]) is None
