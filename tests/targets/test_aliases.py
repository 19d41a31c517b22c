"""Former constants: given where they mean one device alone, left out otherwise."""

from __future__ import annotations

from namegen.targets.aliases import former_constants
from namegen.targets.schemes import naming_schemes
from targets.boats import device, robot

PYTHON = naming_schemes()["python"]
CPP = naming_schemes()["cpp"]


def test_a_renamed_device_keeps_its_constants_newest_first():
    boat = robot(device("bowThruster", "motor", formerly=("frontThruster", "m1")))
    assert former_constants(boat, PYTHON) == {
        "bowThruster": (("frontThruster", "FRONT_THRUSTER"), ("m1", "M1"))
    }
    assert former_constants(boat, CPP)["bowThruster"][0] == ("frontThruster", "kFrontThruster")


def test_a_constant_that_did_not_change_has_no_alias():
    boat = robot(device("bowThruster", "motor", formerly=("bow_thruster", "bow-thruster")))
    assert former_constants(boat, PYTHON) == {"bowThruster": ()}


def test_the_constant_of_another_device_has_no_alias():
    """Not even of one of another kind: nobody can know which was meant."""
    boat = robot(
        device("bowThruster", "motor", formerly=("bow",)),
        device("Bow", "lamp"),
    )
    assert former_constants(boat, PYTHON) == {"bowThruster": ()}


def test_a_name_that_two_devices_had_has_no_alias():
    boat = robot(
        device("bowThruster", "motor", formerly=("main", "one")),
        device("sternThruster", "motor", formerly=("main",)),
    )
    assert former_constants(boat, PYTHON) == {
        "bowThruster": (("one", "ONE"),),
        "sternThruster": (),
    }


def test_what_no_code_can_hold_has_no_alias():
    boat = robot(device("bowThruster", "motor", formerly=("2nd", "船", "--", "öl")))
    assert former_constants(boat, PYTHON) == {"bowThruster": ()}


def test_a_device_with_an_identifier_of_its_own_has_aliases_too():
    boat = robot(device("bow", "motor", formerly=("front",), identifiers={"python": "FRONT"}))
    assert former_constants(boat, PYTHON) == {"bow": ()}
    assert former_constants(boat, CPP) == {"bow": (("front", "kFront"),)}
