from __future__ import annotations

import pytest
from pydantic_core import PydanticCustomError

from namegen.loading import scalars
from namegen.loading.nodes import Quoted


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


@pytest.mark.parametrize("typed", ["3A", "3Ah", "3AH", "#3A", "$3A"])
def test_letters_among_digits_ask_for_0x(typed):
    assert "`0x3A`" in refusal(scalars.whole, typed)


@pytest.mark.parametrize(
    ("typed", "meant"),
    [("yes", "true"), ("True", "true"), ("on", "true"), ("NO", "false"), ("0", "false")],
)
def test_booleans_are_true_and_false_only(typed, meant):
    assert scalars.flag("true") is True
    assert scalars.flag("false") is False
    assert f"`{meant}`" in refusal(scalars.flag, typed)


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


def test_pulses():
    assert scalars.pulse(["620", "2380"]) == (620, 2380)
    for value in ("620", ["620"], ["620", "620"], ["1", "2", "3"]):
        assert "such as `[620, 2380]`" in refusal(scalars.pulse, value)
    assert "first: `[620, 2380]`" in refusal(scalars.pulse, ["2380", "620"])


def test_figures_that_cannot_be_nothing():
    assert scalars.above_zero("0.5") == 0.5
    assert "cannot be 0" in refusal(scalars.above_zero, "0.0")
    assert "without the sign" in refusal(scalars.above_zero, "-1")


def test_cycles_are_counted_once_twice_or_four_times():
    assert [scalars.decoding(typed) for typed in ("1", "2", "4")] == [1, 2, 4]
    for typed in ("0", "3", "8"):
        assert "`1`, `2` or `4`" in refusal(scalars.decoding, typed)


def test_choices():
    read = scalars.choice("camelCase", "any")
    assert read("any") == "any"
    assert "Write it `camelCase`" in refusal(read, "CamelCase")
    assert "`camelCase`, `any`" in refusal(read, "loud")
