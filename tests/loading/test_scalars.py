from __future__ import annotations

import pytest
from pydantic_core import PydanticCustomError

from namegen.loading import scalars
from namegen.loading.nodes import Quoted
from namegen.model.manifests import Port


def refusal(read, value) -> str:
    with pytest.raises(PydanticCustomError) as caught:
        read(value)
    return caught.value.message()


@pytest.mark.parametrize(
    ("typed", "number"),
    [
        ("12.8", 12.8),
        ("12", 12),
        ("-3", -3),
        ("+3", 3),
        (".5", 0.5),
        ("5.", 5),
        ("010", 10),
        ("0x1F", 31),
        (" 7 ", 7),
    ],
)
def test_numbers_are_decimal_or_hexadecimal(typed, number):
    assert scalars.number(typed) == number


@pytest.mark.parametrize(
    ("typed", "words"),
    [
        ("12 V", "`12`"),
        ("7.5A", "`7.5`"),
        ("12,5", "`12.5`"),
        ("1_000", "`1000`"),
        ("1e3", "such as 12.8"),
        (".inf", "such as 12.8"),
        ("nan", "such as 12.8"),
        ("twelve", "this is `twelve`"),
        ("", "expected"),
        ("9" * 5000, "expected"),
        ("١٢", "expected"),
        (["1"], "Leave the list out"),
        ({"a": "b"}, "not a group of fields"),
    ],
)
def test_what_is_no_number_is_refused_with_the_way_out(typed, words):
    assert words in refusal(scalars.number, typed)


@pytest.mark.parametrize(("typed", "number"), [("0", 0), ("58", 58), ("0x3A", 58), ("0x3a", 58)])
def test_whole_numbers(typed, number):
    assert scalars.whole(typed) == number


@pytest.mark.parametrize("typed", ["-1", "1.5", "0xG", "3A", "0x", "0b1", "0o7", "1_0"])
def test_what_is_no_whole_number(typed):
    refusal(scalars.whole, typed)


@pytest.mark.parametrize(
    ("typed", "meant"),
    [("yes", "true"), ("True", "true"), ("on", "true"), ("NO", "false"), ("0", "false")],
)
def test_booleans_are_true_and_false_only(typed, meant):
    assert scalars.flag("true") is True
    assert scalars.flag("false") is False
    assert f"`{meant}`" in refusal(scalars.flag, typed)


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
    assert scalars.port(typed) == port


@pytest.mark.parametrize(
    ("value", "words"),
    [
        ("bridge", "`bridge motor 1`"),
        ("bridge motor 1 left", "`bridge motor 1`"),
        ("", "`bridge motor 1`"),
        ("bridge motor 1, bridge motor 2", "`[bridge motor 1, bridge motor 2]`"),
        (["bridge", "motor", "1"], "`bridge motor 1`"),
        ([], "`undecided`"),
        (["undecided", "bridge motor 1"], "stands alone"),
        ({"controller": "bridge"}, "one text"),
    ],
)
def test_what_is_no_port(value, words):
    assert words in refusal(scalars.ports, value)


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
    assert scalars.labels(value) == labels


@pytest.mark.parametrize(
    ("value", "words"),
    [
        ("3", "`1-3` or `0-2`"),
        ("12", "`1-12` or `0-11`"),
        ("1", "`[1]`"),
        ("3-1", "upwards"),
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
    assert words in refusal(scalars.labels, value)


@pytest.mark.parametrize(
    ("typed", "option"),
    [
        ("true", True),
        ("8", 8),
        ("-1", -1),
        ("010", "010"),
        ("1.10", "1.10"),
        ("no", "no"),
        (Quoted("8"), "8"),
        (Quoted("true"), "true"),
    ],
)
def test_options_keep_numbers_and_booleans_that_were_typed_without_quotes(typed, option):
    found = scalars.option(typed)
    assert found == option
    assert type(found) is type(option)


def test_a_port_of_the_controller_at_hand():
    assert scalars.labelled("servo 2") == ("servo", "2")
    assert "`servo 2`" in refusal(scalars.labelled, "stern servo 2")
    assert "`servo 2`" in refusal(scalars.labelled, "2")


def test_pulses():
    assert scalars.pulse(["620", "2380"]) == (620, 2380)
    for value in ("620", ["620"], ["2380", "620"], ["1", "2", "3"]):
        refusal(scalars.pulse, value)


def test_choices():
    read = scalars.choice("camelCase", "any")
    assert read("any") == "any"
    assert "Write it `camelCase`" in refusal(read, "CamelCase")
    assert "`camelCase`, `any`" in refusal(read, "loud")
