from __future__ import annotations

import pytest
from pydantic_core import PydanticCustomError

from namegen.loading import ports
from namegen.model.manifests import Port


def refusal(read, value) -> str:
    with pytest.raises(PydanticCustomError) as caught:
        read(value)
    return caught.value.message()


@pytest.mark.parametrize(
    ("typed", "port"),
    [
        ("bridge motor 1", Port("bridge", "motor", "1")),
        ("bridge  motor  01", Port("bridge", "motor", "01")),
        ("bridge compass", Port("bridge", "compass")),
        ("undecided", None),
    ],
)
def test_ports(typed, port):
    assert ports.port(typed) == port


@pytest.mark.parametrize(
    ("value", "words"),
    [
        ("bridge", "`CONTROLLER TYPE LABEL`"),
        ("bridge motor 1 left", "`CONTROLLER TYPE LABEL`"),
        ("", "`CONTROLLER TYPE LABEL`"),
        ("bridge/motor/1", "`bridge motor 1`"),
        ("bridge.motor.1", "`bridge motor 1`"),
        ("/motor/1", "`CONTROLLER TYPE LABEL`"),
        ("TBD", "`undecided`"),
        ("bridge undecided", "`undecided`, and nothing else"),
        ("\u201cbridge motor 1\u201d", "`bridge motor 1`"),
        ("bridge motor 1, bridge motor 2", "`[bridge motor 1, bridge motor 2]`"),
        (["bridge", "motor", "1"], "`bridge motor 1`"),
        ([], "`undecided`"),
        (["undecided", "bridge motor 1"], "Write `undecided` alone"),
        ({"controller": "bridge"}, "one text"),
    ],
)
def test_what_is_no_port(value, words):
    assert words in refusal(ports.ports, value)


@pytest.mark.parametrize(
    ("value", "labels"),
    [
        ("1-3", ("1", "2", "3")),
        ("0-2", ("0", "1", "2")),
        ("1 - 3", ("1", "2", "3")),
        ("A-C", ("A", "B", "C")),
        ("a-b", ("a", "b")),
        ("4-4", ("4",)),
        (["A", "B", "C"], ("A", "B", "C")),
        (["1", "3", "A"], ("1", "3", "A")),
        (["1-3", "5"], ("1", "2", "3", "5")),
        (["3"], ("3",)),
        ("main", ("main",)),
    ],
)
def test_port_labels_are_those_printed_on_the_board(value, labels):
    assert ports.labels(value) == labels


@pytest.mark.parametrize(
    ("value", "words"),
    [
        ("3", "`1-3` or `0-2`"),
        ("12", "`1-12` or `0-11`"),
        ("1", "`[1]`"),
        ("3-1", "upwards: `1-3`"),
        (None, "printed on the board"),
        ({"first": "1"}, "printed on the board"),
        ("C-A", "upwards"),
        ("A-3", "number to a number"),
        ("1-999", "at most 256"),
        ("A, B", "`[A, B]`"),
        (["1", "1"], "`1` stands here twice"),
        (["left one"], "single words"),
        ([["1"]], "list"),
    ],
)
def test_port_labels_that_say_too_little(value, words):
    assert words in refusal(ports.labels, value)


def test_a_port_of_the_controller_at_hand():
    assert ports.labelled("servo 2") == ("servo", "2")
    assert "`servo 2`" in refusal(ports.labelled, "stern servo 2")
    assert "`servo 2`" in refusal(ports.labelled, "2")
    assert "`i2c 1`" in refusal(ports.bus, "i2c")


def test_an_uplink_is_never_undecided():
    assert ports.uplink("bridge serial 1") == Port("bridge", "serial", "1")
    for typed in ("undecided", "none", "bridge"):
        assert "Leave `uplink` out" in refusal(ports.uplink, typed)
