"""What a single value of a YAML file may be: text, number, port, port labels.

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
from namegen.model.manifests import Port
from namegen.model.workspaces import OptionValue

_DECIMAL = re.compile(r"[+-]?(?:[0-9]{1,30}(?:\.[0-9]{0,30})?|\.[0-9]{1,30})")
_WHOLE = re.compile(r"[0-9]{1,12}")
_HEX = re.compile(r"0[xX][0-9A-Fa-f]{1,8}")
_UNIT = re.compile(r"([+-]?[0-9.]+) *[^\W\d_]+")
_RANGE = re.compile(r"([0-9]{1,4}|[A-Za-z])-([0-9]{1,4}|[A-Za-z])")
MOST_LABELS = 256
PORT_EXAMPLE = "`bridge motor 1` (controller, port type, label)"


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
        raise wrong("A single text is expected here, not a group of fields.")
    if isinstance(value, list):
        if len(value) == 1 and isinstance(value[0], str):
            raise wrong(f"A single text is expected here. Leave the list out: `{value[0]}`.")
        raise wrong(
            "A single text is expected here, not a list. If the brackets or dashes belong to the "
            "text, put quotes around it."
        )
    raise wrong("A text is missing here.")


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
        raise wrong("This number cannot be negative.")
    return found


def whole(value: object) -> int:
    """Return a whole number, not negative, decimal or with ``0x``."""
    typed = text(value).strip()
    if _WHOLE.fullmatch(typed):
        return int(typed)
    if _HEX.fullmatch(typed):
        return int(typed, 16)
    raise wrong(_number_expected(typed, "12 or 0x3A", "whole number"))


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
        raise wrong(f"One of {', '.join(f'`{word}`' for word in words)} is expected here.")

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


def port(value: object) -> Port | None:
    """Return one port: two or three words, or None for ``undecided``."""
    if isinstance(value, dict) and value and not all(item is None for item in value.values()):
        raise wrong(f"A port is one text, such as {PORT_EXAMPLE}, not a group of fields.")
    typed = text(value)
    words = typed.split()
    if words == ["undecided"]:
        return None
    if len(words) in {2, 3} and "undecided" not in words:
        return Port(*words)
    if "," in typed and all(len(part.split()) in {2, 3} for part in typed.split(",")):
        raise wrong(f"For several ports write a list: `[{typed}]`.")
    raise wrong(
        f"A port is written as {PORT_EXAMPLE}, a built-in device as `bridge compass`, and "
        "`undecided` while it is not settled."
    )


def ports(value: object) -> tuple[Port, ...]:
    """Return a device's ports from one text or a list of texts."""
    if not isinstance(value, list):
        one = port(value)
        return () if one is None else (one,)
    if len(value) in {2, 3} and all(isinstance(item, str) and " " not in item for item in value):
        joined = " ".join(value)
        raise wrong(f"A port is one text without commas: `{joined}`.")
    found = [port(item) for item in value]
    if not value:
        raise wrong("The list is empty. Write `undecided` while the port is not settled.")
    if None in found and len(found) > 1:
        raise wrong("`undecided` stands alone; write only the ports that are settled, or it.")
    return tuple(one for one in found if one is not None)


def uplink(value: object) -> Port:
    """Return the port of another controller that a controller is connected to."""
    found = port(value)
    if found is None:
        raise wrong("Leave `uplink` out while it is not settled.")
    return found


def labelled(value: object) -> tuple[str, str]:
    """Return a port of the controller at hand as (port type, label): ``servo 2``."""
    words = text(value).split()
    if len(words) == 2:
        return words[0], words[1]
    if len(words) == 3:
        raise wrong(f"Leave the controller out: `{words[1]} {words[2]}`.")
    raise wrong("A port type and a label are expected here, such as `servo 2`.")


def labels(value: object) -> tuple[str, ...]:
    """Return the port labels printed on a board: ``1-3``, ``A-C``, ``[1, 3, A]``."""
    if isinstance(value, list):
        found = [label for item in value for label in _labels_of(text(item))]
    else:
        typed = text(value).strip()
        if typed.isdigit():
            raise wrong(
                f"`{typed}` does not say whether the ports start at 0 or at 1. Write the labels "
                f"that are printed on the board: {_counted(typed)}. A single port with this "
                f"label is `[{typed}]`."
            )
        if "," in typed:
            raise wrong(f"Put brackets around the labels: `[{typed}]`.")
        found = _labels_of(typed)
    twice = next((label for label in found if found.count(label) > 1), None)
    if twice is not None:
        raise wrong(f"The label `{twice}` stands here twice.")
    if len(found) > MOST_LABELS:
        raise wrong(f"A board has at most {MOST_LABELS} ports of one type.")
    return tuple(found)


def _counted(count: str) -> str:
    if len(count) > 3 or int(count) < 2:
        return "`1-3` or `0-2`"
    return f"`1-{int(count)}` or `0-{int(count) - 1}`"


def _labels_of(typed: str) -> list[str]:
    found = _RANGE.fullmatch(typed.replace(" ", ""))
    if found is None:
        if not typed.strip() or len(typed.split()) > 1:
            raise wrong("Port labels are single words, such as `1-3` or `[A, B, C]`.")
        return [typed.strip()]
    first, last = found[1], found[2]
    if first.isdigit() and last.isdigit():
        numbers = range(int(first), int(last) + 1)
        if not numbers or len(numbers) > MOST_LABELS:
            raise wrong(f"A range runs upwards over at most {MOST_LABELS} labels, such as `1-3`.")
        return [str(label) for label in numbers]
    if first.isalpha() and last.isalpha() and first.isupper() == last.isupper() and first <= last:
        return [chr(code) for code in range(ord(first), ord(last) + 1)]
    raise wrong("A range runs from a number to a number or from a letter to a letter, upwards.")


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
    raise wrong("The shortest and the longest pulse are expected here, such as `[620, 2380]`.")
