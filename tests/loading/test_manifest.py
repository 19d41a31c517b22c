from __future__ import annotations

import pytest

from namegen.errors import UnusableInput
from namegen.model.manifests import Acceptance, Battery, Change, Port


def test_reads_every_field_of_the_demo(heron):
    assert heron.faults == ()
    robot = heron.value
    assert (robot.robot, robot.title, robot.revision) == (
        "heron",
        "Heron, the pond skimmer",
        "2026 spring",
    )
    assert robot.sources == ("shared/hull.yaml", "robots/heron.yaml")
    assert (robot.battery.volts, robot.battery.fuse_amps, robot.battery.wire_awg) == (12.8, 15, 14)
    stern = robot.controllers["stern"]
    assert (stern.board, stern.uplink) == ("harbour", Port("bridge", "serial", "1"))
    assert stern.dead == (("servo", "2"),)
    bow = robot.devices["bowThruster"]
    assert (bow.kind, bow.ports, bow.part) == (
        "motor",
        (Port("bridge", "motor", "1"),),
        "thruster-b",
    )
    assert (bow.does, bow.expect) == ("Pushes the bow sideways", "Bow moves to the right")
    assert bow.reversed and not bow.optional
    assert bow.formerly == ("frontThruster",)
    assert robot.devices["hatchServo"].optional
    assert robot.devices["rangeBow"].address == 0x3A
    assert robot.devices["heading"].ports == (Port("bridge", "compass"),)
    assert robot.devices["spareLamp"].undecided
    assert robot.selected == "harvest"
    assert robot.setups["harvest"].only is None
    tank = robot.setups["tank-test"]
    assert tank.without == ("netWinch",)
    assert tank.change["rudder"].ports == (Port("stern", "servo", "1"),)


def test_reads_the_fields_that_the_demo_has_not(read):
    loaded = read(
        "robot: dipper\n"
        "controllers: {bridge: {board: harbour, address: 0x42}}\n"
        "devices:\n"
        "  netWinch:\n"
        "    kind: motor\n"
        "    port: [bridge motor 1, bridge encoder A]\n"
        "    note: Mind the rope\n"
        "    identifiers: {java: WINCH_1}\n"
        "    travel_mm: 212.5\n"
        "    accept: [{finding: over-current, because: short runs}]\n"
        "setups:\n"
        "  dry: {only: netWinch, change: {netWinch: {part: winch-c}}}\n"
        "accept:\n"
        "  - {finding: port-undecided, because: comes in May, device: netWinch}\n"
        "  - {finding: built-in-unnamed, because: not used}\n"
    )
    assert loaded.faults == ()
    robot = loaded.value
    winch = robot.devices["netWinch"]
    assert winch.ports == (Port("bridge", "motor", "1"), Port("bridge", "encoder", "A"))
    assert (winch.note, winch.identifiers, winch.travel_mm) == (
        "Mind the rope",
        {"java": "WINCH_1"},
        212.5,
    )
    assert robot.controllers["bridge"].address == 0x42
    assert robot.setups["dry"].only == ("netWinch",)
    change = robot.setups["dry"].change["netWinch"]
    assert (change.ports, change.part) == (None, "winch-c")
    assert robot.selected == "dry"
    assert [(one.kind, one.reason, one.device) for one in robot.accepts] == [
        ("port-undecided", "comes in May", "netWinch"),
        ("built-in-unnamed", "not used", None),
        ("over-current", "short runs", "netWinch"),
    ]
    assert isinstance(robot.accepts[0], Acceptance)
    assert str(robot.accepts[1].places[""]) == "robots/heron.yaml:15:5"


def test_places_mark_the_exact_text(heron, shown):
    robot = heron.value
    bow = robot.devices["bowThruster"]
    tank = robot.setups["tank-test"]
    marked = {
        "bowThruster": bow.place(),
        "bridge motor 1": bow.place("port"),
        "true": bow.place("reversed"),
        "frontThruster": bow.places["formerly.frontThruster"],
        "stern": robot.controllers["stern"].places[""],
        "servo 2": robot.controllers["stern"].places["dead.servo 2"],
        "tank-test": tank.places[""],
        "netWinch": tank.places["without.netWinch"],
        "rudder": tank.change["rudder"].places[""],
        "stern servo 1": tank.change["rudder"].places["port"],
        "12.8": robot.battery.places["volts"],
        "harvest": robot.place("selected"),
        "{kind: motor, port: stern motor 2}": robot.places["devices.netWinch"],
    }
    assert {text: shown(place) for text, place in marked.items()} == {t: t for t in marked}


def test_a_place_exists_for_each_name_that_places_list(heron):
    for device in heron.value.devices.values():
        assert len(list(device.places)) == len(device.places)
        assert all(device.places[name].path in heron.value.sources for name in device.places)
    assert "part" not in heron.value.devices["spareLamp"].places


def test_the_part_or_the_built_in_place_decides_a_kind_left_out(read, catalogue):
    loaded = read(
        "robot: heron\n"
        "controllers: {bridge: {board: harbour}}\n"
        "devices:\n"
        "  winch: {part: thruster-b, port: bridge motor 1}\n"
        "  heading: {port: bridge compass}\n",
        catalogue=catalogue,
    )
    assert loaded.faults == ()
    assert [one.kind for one in loaded.value.devices.values()] == ["motor", "imu"]


@pytest.mark.parametrize(
    ("fields", "reason"),
    [
        ("port: bridge motor 1", "`bow` has no `kind`. Add a line"),
        ("port: bridge motor 1\npart: none-such", "its part `none-such` is not in the catalogue"),
    ],
)
def test_a_kind_that_nothing_decides_is_missing(device, only, fields, reason):
    loaded = device(fields)
    fault = only(loaded)
    assert (fault.kind, str(fault.place)) == ("missing-field", "robots/heron.yaml:3:3")
    assert reason in fault.message
    assert loaded.value.devices["bow"].kind == ""


def test_an_unknown_kind_names_the_nearest(device, only):
    loaded = device("kind: motr\nport: bridge motor 1")
    fault = only(loaded)
    assert (fault.kind, fault.found, fault.expected) == ("wrong-value", "motr", "motor")
    assert "Did you mean `motor`?" in fault.message
    assert loaded.value.devices["bow"].kind == "motr"


@pytest.mark.parametrize(
    ("port", "declared"),
    [
        ("bridge servo 1", "{port: servo}"),
        ("bridge compass", "{}"),
        ("undecided", "{}"),
    ],
)
def test_a_kind_unlike_any_lists_those_there_are_and_is_declared_for_its_port(
    device, only, port, declared
):
    fault = only(device(f"kind: horn\nport: {port}"))
    assert fault.expected is None
    assert "There are: motor, servo, switch, lamp," in fault.message
    assert f"`kinds: {{horn: {declared}}}`" in fault.message


def test_a_device_without_a_port_has_none_and_no_place_for_it(device, only):
    loaded = device("kind: motor")
    fault = only(loaded)
    assert (fault.kind, fault.expected) == ("missing-field", "port")
    assert loaded.value.devices["bow"].undecided
    assert "port" not in loaded.value.devices["bow"].places


def test_an_empty_device_misses_its_port_and_its_kind(read):
    loaded = read("robot: heron\ndevices:\n  bow:\n")
    assert sorted(fault.expected for fault in loaded.faults) == ["kind", "port"]


@pytest.mark.parametrize(
    ("setups", "kind", "words"),
    [
        ("setups: {a: everything}\nselected: b", "wrong-value", "There is no setup `b`"),
        ("setups: {wet: everything}\nselected: wett", "wrong-value", "Did you mean `wet`?"),
        ("setups: {a: everything, b: everything}", "missing-field", "`selected: a`"),
        ("setups: {a: {only: [x], without: [y]}}", "wrong-value", "exclude each other"),
        ("setups: {a: all}", "wrong-value", "A setup is `everything`"),
        ("setups: {a: }", "wrong-value", "A setup is `everything`"),
        ("controllers: {the bridge: {board: b}}", "wrong-value", "`the-bridge`"),
    ],
)
def test_setups_and_controllers_that_cannot_work(read, only, setups, kind, words):
    fault = only(read(f"robot: heron\n{setups}\n"))
    assert fault.kind == kind
    assert words in fault.message


def test_without_setups_nothing_is_selected(read):
    assert read("robot: heron\n").value.selected is None


def test_a_manifest_without_a_robot_is_judged_by_its_file_name(read, only):
    loaded = read("devices: {}\n", path="robots/kingfisher.yaml")
    assert only(loaded).expected == "robot"
    assert loaded.value.robot == "kingfisher"


def test_a_manifest_that_cannot_be_read_is_unusable(read):
    with pytest.raises(UnusableInput):
        read({}, path="robots/heron.yaml")


def test_an_empty_battery_is_read_as_one_without_figures(read):
    battery = read("robot: heron\nbattery:\n  volts:\n").value.battery
    assert isinstance(battery, Battery) and battery.volts is None


def test_a_change_may_be_empty(read):
    loaded = read("robot: heron\nsetups: {a: {change: {bow: }}}\n")
    change = loaded.value.setups["a"].change["bow"]
    assert isinstance(change, Change) and (change.ports, change.part) == (None, None)
