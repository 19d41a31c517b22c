"""Ports in the many ways that people write them. Common practice, no source."""

from __future__ import annotations

import pytest

from namegen.loading.charts.ports import Hint, read_ports, type_of

MOTOR = Hint(types=("motor",), controllers=("bridge", "stern"))


@pytest.mark.parametrize(
    "cell",
    [
        "bridge motor 1", "Bridge Motor 1", "bridge/M1", "bridge M1", "bridge: motor-1",
        "bridge - motor 1", "bridge:m1", "bridge Motor Port 1", "motor 1 on bridge",
        "Motor 1 (bridge)", "bridge motor1", "bridge_motor_1", "bridge motor #1",
        "bridge, motor 1", "bridge.motor.1", "\u201cbridge\u201d motor 1", '"bridge" M1',
    ],
)  # fmt: skip
def test_one_port_written_in_many_ways(cell: str):
    found = read_ports(cell, MOTOR)
    assert [str(port).lower() for port in found.ports] == ["bridge motor 1"], found.doubt


@pytest.mark.parametrize("cell", ["motor 1", "M1", "Motor Port 1", "motor-1", "1", "port 1"])
def test_a_controller_from_its_own_column(cell: str):
    hint = Hint(controller="stern", types=("motor",))
    assert [str(port) for port in read_ports(cell, hint).ports] == ["stern motor 1"]


@pytest.mark.parametrize(
    ("cell", "hint"),
    [
        ("", Hint(controller="stern", type="servo", label="4")),
        ("4", Hint(controller="stern", type="servo")),
        ("stern 4", Hint(type="servo")),
        ("stern", Hint(type="servo", label="4")),
        ("stern servo", Hint(label="4")),
    ],
)
def test_columns_of_their_own_for_controller_type_and_label(cell: str, hint: Hint):
    assert [str(port) for port in read_ports(cell, hint).ports] == ["stern servo 4"]


@pytest.mark.parametrize("cell", ["bridge I2C 1 0x3A", "bridge i2c1 @0x3a", "I²C 1 (0x3A) bridge"])
def test_an_address_beside_the_port(cell: str):
    found = read_ports(cell, Hint())
    assert [str(port) for port in found.ports] == ["bridge i2c 1"], found.doubt
    assert found.address == 0x3A


@pytest.mark.parametrize(
    "cell", ["stern motor 2, encoder 1", "stern motor 2 and encoder 1", "stern M2 + stern E1"]
)
def test_several_ports_of_one_device(cell: str):
    ports = [str(port) for port in read_ports(cell, Hint()).ports]
    assert ports == ["stern motor 2", "stern encoder 1"]


def test_labels_are_kept_as_they_are_written():
    assert str(read_ports("bridge analog B", Hint()).ports[0]) == "bridge analog B"
    assert str(read_ports("bridge analog b", Hint()).ports[0]) == "bridge analog b"


def test_a_letter_that_may_be_two_port_types_is_decided_by_the_kind_or_not_at_all():
    assert read_ports("bridge S1", Hint()).doubt
    assert str(read_ports("bridge S1", Hint(types=("servo",))).ports[0]) == "bridge servo 1"
    assert str(read_ports("C1 motor 2", Hint()).ports[0]) == "C1 motor 2"
    assert str(read_ports("E1 M2", Hint()).ports[0]) == "E1 motor 2"


def test_a_letter_apart_from_its_number():
    digital = Hint(types=("digital",), controllers=("bridge",))
    assert str(read_ports("bridge D 4", digital).ports[0]) == "bridge digital 4"
    assert str(read_ports("A 4", Hint(type="motor")).ports[0]) == "A motor 4"


@pytest.mark.parametrize("cell", ["", "tbd", "?", "undecided", "-", " TBD "])
def test_undecided(cell: str):
    found = read_ports(cell, Hint(controller="bridge", type="motor"))
    assert (found.ports, found.doubt) == ((), "")


@pytest.mark.parametrize(
    "cell",
    ["bridge 7", "bridge motor", "the big one", "bridge motor 1 red wire", "bridge motor 12345"],
)
def test_what_is_not_sure_is_no_port(cell: str):
    found = read_ports(cell, Hint(controllers=("bridge",)))
    assert found.ports == () and found.doubt


def test_built_in_needs_a_controller_that_the_chart_knows():
    hint = Hint(controllers=("bridge",))
    assert str(read_ports("bridge compass", hint).ports[0]) == "bridge compass"
    assert read_ports("stern compass", hint).doubt


def test_a_port_type_alone():
    found = {text: type_of(text) for text in ("Motor port", "servos", "S", "M", "lever")}
    expected = {"Motor port": "motor", "servos": "servo", "S": None, "M": "motor", "lever": None}
    assert found == expected
