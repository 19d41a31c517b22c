"""Former constants: given where they mean one device alone, left out otherwise."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from namegen.checks.manifest import retired_name_reused
from namegen.model.places import Place
from namegen.model.views import RobotView
from namegen.model.workspaces import NameRules
from namegen.targets.aliases import former_constants
from namegen.targets.schemes import naming_schemes
from targets.boats import CATALOGUE, device, robot

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


HERE = {"": Place("robots/heron.yaml")}
NAMES = ("bow", "Bow", "b_ow", "bowMain", "bow_main", "2nd", "stern", "STERN")


@given(st.lists(st.tuples(st.sampled_from(NAMES), st.lists(st.sampled_from(NAMES))), min_size=2))
def test_each_former_name_has_a_constant_or_is_told(rows):
    """Whatever keeps a former name from having one, somebody says it, or nothing could use it."""
    boat = robot(*(device(name, "motor", formerly=tuple(old), places=HERE) for name, old in rows))
    told = {
        one.found
        for one in retired_name_reused.check(RobotView(boat, CATALOGUE, NameRules(), (CPP,)))
    }
    former = former_constants(boat, CPP)
    for one in boat.devices.values():
        for name in one.formerly:
            made = {constant for _, constant in former[one.name]}
            spelled = CPP.spelled(name)
            same = [two.name for two in boat.devices.values() if CPP.constant(two) == spelled]
            same += [
                old
                for two in boat.devices.values()
                for old in two.formerly
                if CPP.spelled(old) == spelled
            ]
            sound = CPP.valid(spelled) and spelled not in CPP.reserved
            if sound and spelled != CPP.constant(one):
                assert spelled in made or told & set(same), (name, same, told)
