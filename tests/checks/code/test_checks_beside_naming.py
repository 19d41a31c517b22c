"""Crossed names, double look-ups, loose literals, unused devices, names that cannot be checked."""

from __future__ import annotations

import re

import pytest
import yaml
from msgspec.structs import replace

from namegen.checks.code import (
    crossed_names,
    double_lookup,
    loose_literal,
    not_checkable,
    unused_device,
)
from namegen.model.findings import Severity, UseConstant
from namegen.model.places import Place
from tests.checks.code.boats import HERON, device, lookups, manifest, view


@pytest.mark.parametrize(
    "holder",
    ["sternThruster", "stern_thruster", "STERN_THRUSTER", "SternThruster", "self.m_sternThruster"],
)
def test_a_variable_named_for_another_device_is_crossed_in_any_case_style(holder: str):
    (finding,) = crossed_names.check(view(f'{holder} = boat.motor("bowThruster")'))
    assert (finding.found, finding.expected) == ("bowThruster", "sternThruster")
    assert finding.repair is None
    assert [related.place for related in finding.related] == [
        HERON.devices["sternThruster"].place(),
        HERON.devices["bowThruster"].place(),
    ]


@pytest.mark.parametrize(
    "code",
    [
        'bow_thruster = boat.motor("bowThruster")',
        'bow = boat.motor("bowThruster")',
        'motor = boat.motor("bowThruster")',
        'thruster = boat.motor("sternThruster")',
        'rudder = boat.motor("bowThruster")',  # the rudder is a servo: not what this is filled with
        'stern_thruster = boat.motor("bowThrustr")',  # misspelt, which is said already
        'stern_thruster = boat.servo("bowThruster")',  # of the wrong kind, which is said already
        'boat.motor("bowThruster").run(sternThruster)',
    ],
)
def test_right_code_is_not_crossed(code: str):
    assert list(crossed_names.check(view(code))) == []


def test_a_holder_that_is_also_named_for_what_it_holds_is_not_crossed():
    twins = manifest("heron", [device("arm_a", "motor"), device("armA", "motor")])
    assert list(crossed_names.check(view('armA = boat.motor("arm_a")', twins))) == []


def test_one_of_several_names_at_one_place_is_not_crossed():
    both = lookups('stern_thruster = boat.motor("bowThruster")')
    other = replace(both[0], text="sternThruster")
    code = replace(view(""), lookups=[*both, other])
    assert list(crossed_names.check(code)) == []


@pytest.mark.parametrize(
    ("code", "severities"),
    [
        ('a = boat.motor("netWinch")\nb = boat.motor("netWinch")', ["warning"]),
        ('class B:\n a = boat.motor("netWinch")\n b = boat.motor("netWinch")', ["warning"]),
        ('def f():\n boat.motor("netWinch")\n boat.motor("netWinch")', ["note"]),
        ('def f():\n a = boat.motor("netWinch")\n a = boat.motor("netWinch")', ["note"]),
        (
            'class B:\n a = boat.motor("netWinch")\n def f(self):\n  b = boat.motor("netWinch")',
            ["warning"],
        ),
        ('def f():\n a = boat.motor("netWinch")\ndef g():\n b = boat.motor("netWinch")', []),
        ('a = boat.motor("netWinch")\nb = boat.motor("bowThruster")', []),
        ('a = boat.motor("netWinch")\nb = boat.servo("netWinch")', []),
        ('a = boat.motor("netWinch")\nb = boat.find("netWinch")', ["warning"]),
        ('a = boat.motor("netWnch")\nb = boat.motor("netWnch")', []),
        ('a = boat.motor("netWinch")\ndef f():\n b = boat.motor("netWinch")', []),
    ],
)
def test_a_device_looked_up_twice_in_one_class_or_function(code: str, severities: list[str]):
    found = list(double_lookup.check(view(code)))
    assert [finding.severity.value for finding in found] == severities
    for finding in found:
        assert finding.related[0].place < finding.place


def test_a_loose_literal_offers_the_constant_and_is_asked_for():
    (finding,) = loose_literal.check(view('boat.motor("bowThruster")'))
    assert finding.repair == UseConstant("heron", "bowThruster")
    assert loose_literal.KIND.on_request
    assert finding.severity is Severity.NOTE


def test_a_name_that_comes_from_a_generated_constant_is_no_loose_literal():
    (lookup,) = lookups('boat.motor("bowThruster")')
    built = replace(lookup, literal=False, output="code/heron/devices.py")
    assert list(loose_literal.check(replace(view(""), lookups=[built]))) == []


def test_a_constant_made_by_hand_is_told_once_at_its_own_literal():
    own = Place("code/heron/names.py", 3, 8, 3, 19)
    code = 'boat.motor("bowThruster")\nboat.find("bowThruster")'
    far = [replace(lookup, place=own) for lookup in lookups(code)]
    (finding,) = loose_literal.check(replace(view(""), lookups=far))
    assert (finding.place, finding.repair) == (own, UseConstant("heron", "bowThruster"))
    assert [one.message for one in finding.related] == ["looked up here"]


def test_a_constant_that_one_look_up_takes_for_another_kind_is_no_loose_literal():
    own = Place("code/heron/names.py", 3, 8, 3, 19)
    code = 'boat.motor("bowThruster")\nboat.servo("bowThruster")'
    far = [replace(lookup, place=own) for lookup in lookups(code)]
    assert list(loose_literal.check(replace(view(""), lookups=far))) == []


def test_a_wrong_name_is_no_loose_literal():
    code = 'boat.motor("bowthruster")\nboat.motor("rudder")\nboat.motor(x)'
    assert list(loose_literal.check(view(code))) == []


def test_unused_devices_are_told_only_when_all_code_is_known():
    rest = [name for name in HERON.devices if name not in {"rudder", "heading"}]
    code = 'boat.servo("rudder")'
    found = list(unused_device.check(view(code, mentioned=["heading"])))
    assert [finding.found for finding in found] == rest
    assert [finding.place for finding in found] == [HERON.devices[n].place() for n in rest]
    assert list(unused_device.check(view(code, complete=False))) == []
    assert list(unused_device.check(view(""))) == []


def test_a_device_that_the_setup_leaves_out_is_not_unused():
    code = replace(view('boat.servo("rudder")'), setup="tank-test")
    found = {finding.found for finding in unused_device.check(code)}
    assert found == set(HERON.devices) - {"rudder", "netWinch", "hatchServo"}


@pytest.mark.parametrize(
    ("code", "row"),
    [
        ("def start(n):\n boat.motor(n)", {"call": "start", "name_at": 0, "kind": "motor"}),
        ("def start(n):\n boat.find(n)", {"call": "start", "name_at": 0}),
        (
            "def start(boat, n):\n boat.motor(n)",
            {"call": "start", "name_at": 1, "kind": "motor"},
        ),
        (
            "class Arm:\n def __init__(self, n):\n  boat.servo(n)",
            {"new": "Arm", "name_at": 0, "kind": "servo"},
        ),
    ],
)
def test_a_name_from_a_parameter_comes_with_the_line_to_add(code: str, row: dict[str, object]):
    message = not_checkable.finding(lookups(code)[0]).message
    line = re.search("`(- .*?)`", message)
    assert line
    # PyYAML, beside the settings' own reader, says what the line means.
    assert yaml.safe_load(line[1]) == [row]


def test_a_parameter_that_only_a_keyword_fills_is_declared_by_its_keyword():
    (lookup,) = lookups("def start(n):\n boat.motor(n)")
    site = replace(lookup.site, parameter_at=None, parameter_key="n")
    message = not_checkable.finding(replace(lookup, site=site)).message
    assert "`- {call: start, name_key: n, kind: motor}`" in message
    assert "name_at" not in message


def test_a_name_that_a_keyword_gives_comes_with_the_field_to_add():
    (lookup,) = lookups("boat.motor(x)")
    for keywords, field in (
        (("name",), "Add `name_key: name` to the row `call: motor` below lookups"),
        (("name", "tag"), "Add `name_key: name` or `name_key: tag`, whichever gives the name, to"),
    ):
        site = replace(lookup.site, keywords=keywords)
        assert field in not_checkable.finding(replace(lookup, site=site)).message


def test_a_name_that_is_none_comes_with_a_way_out():
    (lookup,) = lookups("boat.motor(x)")
    message = not_checkable.finding(replace(lookup, why="it is None")).message
    assert "because it is None. Write the name of the device here" in message
    assert "`namegen: allow not-checkable because ...`" in message
