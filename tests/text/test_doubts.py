from __future__ import annotations

import pytest

from namegen.text.doubts import doubt, kinship, pairs_of
from namegen.text.rosters import Form


@pytest.mark.parametrize(
    ("found", "expected", "pairs"),
    [
        ("bowThrustr", "bowThruster", [("bow", "bow"), ("thrustr", "thruster")]),
        ("bowthrustr", "bowThruster", [("bow", "bow"), ("thrustr", "thruster")]),
        ("rightmotor", "lightMotor", [("right", "light"), ("motor", "motor")]),
        ("bow Mo tor", "bowMotor", [("bow", "bow"), ("mo", "mo"), ("tor", "tor")]),
        ("lightMotor", "rightmotor", [("light", "right"), ("motor", "motor")]),
        ("motorA", "motor", [("motor", "motor"), ("a", "")]),
        ("bowMMotor", "bowMotor", [("bow", "bow"), ("mmotor", "motor")]),
        ("oBwMotor", "BowMotor", [("obw", "bow"), ("motor", "motor")]),
        ("motor", "motorA", [("motor", "motor"), ("", "a")]),
    ],
)
def test_pieces_of_the_text_are_found_for_each_word(found, expected, pairs):
    assert pairs_of(Form.of(found), Form.of(expected)) == pairs


@pytest.mark.parametrize(
    ("found", "expected", "why"),
    [
        ("bowThrustr", "bowThruster", ""),
        ("bowThruster2", "bowThruster3", "the number differs"),
        ("rightmotor", "lightMotor", '"right" is a word of its own, not "light"'),
        ("hullTemp", "hulkTemp", '"hull" is a word of its own, not "hulk"'),
        ("ruder", "rudder", ""),
        ("bowLamps", "bowLamp", ""),
        ("mastLamp", "mistLamp", '"mast" is a word of its own, not "mist"'),
        ("foreLeight", "forLight", ""),
        ("oBwMotor", "BowMotor", ""),
        ("motor_B_A", "motorAB", '"ba" is not "ab"'),
        ("arm_x_Y_stage", "armYxStage", '"xy" is not "yx"'),
    ],
)
def test_why_a_near_name_may_be_another_device(found, expected, why):
    a, b = Form.of(found), Form.of(expected)
    assert doubt(a, b, pairs_of(a, b), frozenset()) == why


def test_words_of_the_other_names_are_real_words():
    a, b = Form.of("lidrMast"), Form.of("lidarMast")
    assert doubt(a, b, pairs_of(a, b), frozenset()) == ""
    assert "lidr" in doubt(a, b, pairs_of(a, b), frozenset({"lidr"}))


@pytest.mark.parametrize(
    ("found", "expected", "how"),
    [
        ("portPump", "starboardPump", '"port" is not "starboard"'),
        ("thruster", "bowThruster", '"bow" is missing'),
        ("hullTempSensor", "hullTemp", '"sensor" is too much'),
        ("hullTemp", "bowLamp", ""),
        ("hullTemp", "hullLamp", ""),
        ("lamp", "bowDeckLamp", ""),
    ],
)
def test_relatives_share_all_words_but_one(found, expected, how):
    assert kinship(Form.of(found), Form.of(expected)) == how
