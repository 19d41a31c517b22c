"""As-found lists as people and programs write them, and what cannot be one."""

from __future__ import annotations

import pytest

from namegen.errors import UnusableInput
from namegen.loading.as_found import read_as_found
from namegen.loading.charts.configuration import HEADINGS
from namegen.model.manifests import Port


def read(text: str | bytes):
    return read_as_found(text if isinstance(text, bytes) else text.encode(), "found.csv")


def test_all_columns():
    found = read("name,kind,port,address\nrangeBow,distance,bridge i2c 1,0x3A\n")
    (device,) = found.devices
    assert (device.name, device.kind, device.ports) == (
        "rangeBow",
        "distance",
        (Port("bridge", "i2c", "1"),),
    )
    assert device.address == 0x3A
    assert found.known == {"kind", "port", "address"}
    assert str(device.place()) == "found.csv:2:1"


@pytest.mark.parametrize(
    "text",
    [
        "Name;Port\nrudder;bridge servo 1\n",
        "NAME\tPORT\r\nrudder\tbridge servo 1\r\n",
        '"name","port"\n"rudder","bridge servo 1"\n',
        "name,port\n\nrudder,bridge servo 1\n\n",
        "heron: hello, this is the boat\nname,port\nrudder,bridge servo 1\n",
        "name,port\nrudder,bridge servo 1\n".encode("utf-8-sig"),
        "name,port\nrudder,bridge servo 1\n".encode("utf-16"),
    ],
)
def test_ways_to_write_it(text: str | bytes):
    (device,) = read(text).devices
    assert (device.name, str(device.ports[0])) == ("rudder", "bridge servo 1")


def test_blanks_of_a_name_stay_because_the_machine_has_them():
    assert read("name\nrudder \n").devices[0].name == "rudder "


def test_what_was_not_found_is_left_out():
    found = read("name,found\na,yes\nb,no\nc,\nd,X\n")
    assert [device.name for device in found.devices] == ["a", "c", "d"]


def test_a_column_found_is_told_because_a_program_may_have_printed_the_list():
    found = read("name,kind,port,found\na,motor,bridge motor 1,yes\n")
    assert found.printed and found.known == {"kind", "port"}
    assert not read("name,kind,port\na,motor,bridge motor 1\n").printed


@pytest.mark.parametrize(
    "text",
    [
        "Device,Plugged in\nrudder,bridge servo 1\n",
        "Called;Connected to;Remarks\nrudder;bridge servo 1;stiff\n",
        "No,Device name,Port\n7,rudder,bridge servo 1\n",
        "Name,Controller,Port\nrudder,bridge,servo 1\n",
        "Name,Board,Port type,Number\nrudder,bridge,servo,1\n",
        "name,port\nrudder,bridge/servo/1\n",
        "name,port\nrudder,bridge: Servo-1\n",
        "heron: this device is the boat\ndevice,port\nrudder,bridge servo 1\n",
        "Boat,Device,Port\nheron,rudder,bridge servo 1\n",
    ],
)
def test_the_usual_words_of_charts_will_do(text: str):
    found = read(text)
    (device,) = found.devices
    assert (device.name, str(device.ports[0]).lower()) == ("rudder", "bridge servo 1")
    assert found.known == {"port"}


def test_an_address_beside_the_port_is_read():
    (device,) = read("device,where\nrangeBow,bridge i2c 1 0x3A\n").devices
    assert (device.ports, device.address) == ((Port("bridge", "i2c", "1"),), 0x3A)


def test_a_misspelt_title_is_asked_back_and_not_passed_over():
    with pytest.raises(UnusableInput, match="`Prot`") as raised:
        read("Name,Prot\nrudder,bridge servo 1\n")
    assert raised.value.remedy.startswith("did you mean `port`?")


@pytest.mark.parametrize(
    ("text", "what", "where"),
    [
        ("", "no column `name`", "found.csv"),
        ("boat,port\nrudder,bridge servo 1\n", "no column `name`", "found.csv"),
        ("rudder\nnetWinch\n", "no column `name`", "found.csv"),
        ("boat,name\nheron,rudder\ndipper,scoop\n", "several robots: heron, dipper", "found.csv"),
        ("name,where,port\n", "`where` and `port` are both the port", "found.csv:1"),
        ("name,port\nrudder,bridge 1\n", "`bridge 1` is no port", "found.csv:2"),
        ("name,port\nrudder,servo 1\n", "`servo 1` is no port", "found.csv:2"),
        (",".join(HEADINGS) + "\n", "a configuration that namegen wrote", "found.csv"),
        ("name,colour\nrudder,red\n", "column `colour`", "found.csv:1"),
        ("name,port\nrudder,somewhere\n", "`somewhere` is no port", "found.csv:2"),
        ("name,address\nrudder,high\n", "`high` is no address", "found.csv:2"),
        ("name,found\nrudder,perhaps\n", "neither yes nor no", "found.csv:2"),
        ("name,kind\n,servo\n", "no name", "found.csv:2"),
        ("name\nrudder\nrudder\n", "stands in line 2 too", "found.csv:3"),
    ],
)
def test_what_cannot_be_one_is_told_with_its_line(text: str, what: str, where: str):
    with pytest.raises(UnusableInput, match=what) as raised:
        read(text)
    assert raised.value.where == where
    assert raised.value.remedy
