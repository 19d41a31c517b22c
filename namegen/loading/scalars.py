"""What a single value of a YAML file may be: text, number, boolean, one of some words.

Each function takes what stands in the file (text, list, group or None for
cleared) and returns the value, or raises with a message for the person who
wrote it.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable

from pydantic_core import PydanticCustomError

from namegen.loading.nodes import Quoted
from namegen.model.workspaces import OptionValue

DECODINGS = (1, 2, 4)
"""Edges counted in each cycle: one of one channel, both of it, all of both channels."""
_DECIMAL = re.compile(r"[+-]?(?:[0-9]{1,30}(?:\.[0-9]{0,30})?|\.[0-9]{1,30})")
_WHOLE = re.compile(r"[0-9]{1,12}")
_HEX = re.compile(r"0[xX][0-9A-Fa-f]{1,8}")
_UNIT = re.compile(r"([+-]?[0-9.]+) *[^\W\d_]+")
_HEX_DIGITS = re.compile(r"[$#]?([0-9A-Fa-f]{1,8})[hH]?")


def wrong(message: str) -> PydanticCustomError:
    """Return the exception that pydantic turns into a fault with this message."""
    return PydanticCustomError("wrong_value", "{message}", {"message": message})


def text(value: object) -> str:
    """Return a text as it was typed."""
    if isinstance(value, str):
        return str(value)
    if isinstance(value, dict):
        if value and all(item is None for item in value.values()):
            inside = ", ".join(str(key) for key in value)
            raise wrong(
                f"A text is expected here, but braces start a group of fields in YAML. "
                f'Put quotes around the text: "{{{inside}}}".'
            )
        raise wrong(
            "A single text is expected here, not a group of fields. If the braces or the colon "
            "belong to the text, put quotes around it."
        )
    if isinstance(value, list):
        if len(value) == 1 and isinstance(value[0], str):
            raise wrong(f"A single text is expected here. Leave the list out: `{value[0]}`.")
        raise wrong(
            "A single text is expected here, not a list. If the brackets or dashes belong to the "
            "text, put quotes around it."
        )
    raise wrong("Nothing stands here. Write a text, or take this entry out.")


def number(value: object) -> float:
    """Return a decimal number."""
    typed = text(value).strip()
    if _DECIMAL.fullmatch(typed):
        return float(typed)
    if _HEX.fullmatch(typed):
        return float(int(typed, 16))
    unit = _UNIT.fullmatch(typed)
    if unit and _DECIMAL.fullmatch(unit[1]):
        raise wrong(f"Write the number alone, without its unit: `{unit[1]}`.")
    if re.fullmatch(r"[+-]?[0-9]+,[0-9]+", typed):
        raise wrong(f"Write the number with a point: `{typed.replace(',', '.')}`.")
    raise wrong(_number_expected(typed, "12.8"))


def amount(value: object) -> float:
    """Return a number that is not negative."""
    found = number(value)
    if found < 0 or not math.isfinite(found):
        raise wrong(f"This number cannot be negative. Write it without the sign: `{-found:g}`.")
    return found


def above_zero(value: object) -> float:
    """Return a number that is more than nothing."""
    found = amount(value)
    if found == 0:
        raise wrong("This cannot be 0. Write the true figure, or take the field out.")
    return found


def whole(value: object) -> int:
    """Return a whole number, not negative, decimal or with ``0x``."""
    typed = text(value).strip()
    if _WHOLE.fullmatch(typed):
        return int(typed)
    if _HEX.fullmatch(typed):
        return int(typed, 16)
    digits = _HEX_DIGITS.fullmatch(typed)
    if digits:
        raise wrong(f"A number with letters is written with `0x` in front: `0x{digits[1]}`.")
    raise wrong(_number_expected(typed, "12 or 0x3A", "whole number"))


def decoding(value: object) -> int:
    """Return how often each cycle of an encoder's channel is counted."""
    found = whole(value)
    if found not in DECODINGS:
        raise wrong("A cycle is counted once, twice or four times. Write `1`, `2` or `4`.")
    return found


def _number_expected(typed: str, example: str, what: str = "number") -> str:
    digits = typed.replace("_", "")
    if digits != typed and (_DECIMAL.fullmatch(digits) or _HEX.fullmatch(digits)):
        return f"Write the number without `_`: `{digits}`."
    return f"A {what} is expected here, such as {example}; this is `{typed[:40]}`."


def flag(value: object) -> bool:
    """Return a boolean: ``true`` or ``false``, nothing else."""
    typed = text(value)
    if typed in {"true", "false"}:
        return typed == "true"
    meant = {"yes": "true", "on": "true", "1": "true", "no": "false", "off": "false", "0": "false"}
    lower = typed.strip().lower()
    if lower in meant or lower in {"true", "false"}:
        raise wrong(f"Write `{meant.get(lower, lower)}`; only `true` and `false` are read here.")
    raise wrong("Write `true` or `false` here.")


def choice(*words: str) -> Callable[[object], str]:
    """Return a function that takes one of some words."""

    def chosen(value: object) -> str:
        typed = text(value)
        if typed in words:
            return typed
        same = next((word for word in words if word.lower() == typed.lower()), None)
        if same:
            raise wrong(f"Write it `{same}`, in exactly these letters.")
        raise wrong(f"Write one of these here: {', '.join(f'`{word}`' for word in words)}.")

    return chosen


def option(value: object) -> OptionValue:
    """Return an option of a target: text, boolean, whole number, list of texts or texts by key."""
    if isinstance(value, list):
        return tuple(map(text, value))
    if isinstance(value, dict) and not all(item is None for item in value.values()):
        return {str(key): text(item) for key, item in value.items()}
    typed = text(value)
    if isinstance(value, Quoted):
        return typed
    if typed in {"true", "false"}:
        return typed == "true"
    return int(typed) if re.fullmatch(r"-?(?:0|[1-9][0-9]{0,17})", typed) else typed


def name_positions(value: object) -> tuple[int, ...] | str:
    """Return where the name stands among the arguments: ``0``, ``[0, 1]`` or ``rest``."""
    if isinstance(value, list):
        if not value:
            raise wrong("The list is empty. Write `0` for the first argument.")
        return tuple(position(item) for item in value)
    return "rest" if value == "rest" else (position(value),)


def position(value: object) -> int:
    """Return the position of an argument, counted from 0."""
    typed = value if isinstance(value, str) else ""
    if re.fullmatch(r"[0-9]{1,2}", typed):
        return int(typed)
    raise wrong("The position of an argument is expected here: `0` is the first one.")


def pulse(value: object) -> tuple[float, float]:
    """Return the shortest and the longest pulse of a servo in microseconds."""
    if isinstance(value, list) and len(value) == 2:
        shortest, longest = amount(value[0]), amount(value[1])
        if shortest < longest:
            return shortest, longest
        if longest < shortest:
            raise wrong(f"The shortest pulse stands first: `[{longest:g}, {shortest:g}]`.")
    raise wrong("The shortest and the longest pulse are expected here, such as `[620, 2380]`.")
