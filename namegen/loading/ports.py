"""Ports as they are typed: where a device is plugged in, and the labels printed on a board.

Each function takes what stands in the file (text, list, group or None for
cleared) and returns the value, or raises with a message for the person who
wrote it.
"""

from __future__ import annotations

import re

from namegen.loading.scalars import text, wrong
from namegen.model.manifests import Port

A_PORT = "CONTROLLER TYPE LABEL"
"""How a port is written; stands in a message until the user's own controllers are known."""

_RANGE = re.compile(r"([0-9]{1,4}|[A-Za-z])-([0-9]{1,4}|[A-Za-z])")
_JOINED = re.compile(r"[/.:]+")
_OPEN = frozenset({"none", "tbd", "todo", "unknown", "open", "later", "nowhere", "n/a", "?", "-"})
_CURLY = "“”„‟‘’‚«»"
MOST_LABELS = 256
_LABELS = "Write the labels printed on the board, such as `1-3` or `[A, B, C]`."


def port(value: object) -> Port | None:
    """Return one port: two or three words, or None for ``undecided``."""
    if isinstance(value, dict) and value and not all(item is None for item in value.values()):
        raise wrong(f"A port is one text, not a group of fields: `{A_PORT}`.")
    typed = text(value)
    words = typed.split()
    if words == ["undecided"]:
        return None
    if typed.strip(_CURLY) != typed:
        raise wrong(f"Curly quotes are no quotes in YAML. Leave them out: `{typed.strip(_CURLY)}`.")
    if len(words) in {2, 3} and "undecided" not in words:
        return Port(*words)
    raise wrong(_no_port(typed))


def _no_port(typed: str) -> str:
    """Return what to say of a text that is no port."""
    if typed.lower() in _OPEN or "undecided" in typed.split():
        return "Write `undecided`, and nothing else, while the port is not settled."
    if "," in typed and all(len(part.split()) in {2, 3} for part in typed.split(",")):
        return f"For several ports write a list: `[{typed}]`."
    parts = [part for word in typed.split() for part in _JOINED.split(word)]
    if len(parts) in {2, 3} and len(typed.split()) < len(parts) and all(parts):
        return f"The words of a port stand apart: `{' '.join(parts)}`."
    return (
        f"A port is three words, controller, type and label: `{A_PORT}`. What is built into a "
        "board has no label; while the port is not settled, write `undecided`."
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
        raise wrong("Write `undecided` alone, or only the ports that are settled.")
    return tuple(one for one in found if one is not None)


def uplink(value: object) -> Port:
    """Return the port of another controller that a controller is connected to."""
    words = text(value).split()
    if len(words) in {2, 3} and "undecided" not in words:
        return Port(*words)
    if words in (["undecided"], ["none"]):
        raise wrong("Leave `uplink` out while it is not settled.")
    raise wrong(
        "A port of another controller is expected here, as three words: controller, type and "
        "label. Leave `uplink` out where there is none."
    )


def labelled(value: object) -> tuple[str, str]:
    """Return a port of the controller at hand as (port type, label): ``servo 2``."""
    return _labelled(value, "servo 2")


def bus(value: object) -> tuple[str, str]:
    """Return a bus of the board at hand as (port type, label): ``i2c 1``."""
    return _labelled(value, "i2c 1")


def _labelled(value: object, example: str) -> tuple[str, str]:
    words = text(value).split()
    if len(words) == 2:
        return words[0], words[1]
    if len(words) == 3:
        raise wrong(f"Leave the controller out: `{words[1]} {words[2]}`.")
    raise wrong(f"A port type and a label are expected here, as two words: `{example}`.")


def labels(value: object) -> tuple[str, ...]:
    """Return the port labels printed on a board: ``1-3``, ``A-C``, ``[1, 3, A]``."""
    if value is None or isinstance(value, dict):
        raise wrong(_LABELS)
    if isinstance(value, list):
        found = [label for item in value for label in _labels_of(text(item))]
    else:
        found = _labels_in(text(value).strip())
    twice = next((label for label in found if found.count(label) > 1), None)
    if twice is not None:
        raise wrong(f"The label `{twice}` stands here twice. Delete or correct one of the two.")
    if len(found) > MOST_LABELS:
        raise wrong(f"A board has at most {MOST_LABELS} ports of one type. {_LABELS}")
    return tuple(found)


def _labels_in(typed: str) -> list[str]:
    """Return the labels of one text, which is a range or a single label."""
    if typed.isdigit():
        raise wrong(
            f"`{typed}` does not say whether the ports start at 0 or at 1. Write the labels "
            f"that are printed on the board: {_counted(typed)}. A single port with this "
            f"label is `[{typed}]`."
        )
    if "," in typed:
        raise wrong(f"Put brackets around the labels: `[{typed}]`.")
    return _labels_of(typed)


def _counted(count: str) -> str:
    if len(count) > 3 or int(count) < 2:
        return "`1-3` or `0-2`"
    return f"`1-{int(count)}` or `0-{int(count) - 1}`"


def _labels_of(typed: str) -> list[str]:
    found = _RANGE.fullmatch(typed.replace(" ", ""))
    if found is None:
        if not typed.strip() or len(typed.split()) > 1:
            raise wrong(f"Port labels are single words. {_LABELS}")
        return [typed.strip()]
    first, last = found[1], found[2]
    if first.isdigit() and last.isdigit():
        if int(last) < int(first):
            raise wrong(f"A range runs upwards: `{last}-{first}`.")
        numbers = range(int(first), int(last) + 1)
        if len(numbers) > MOST_LABELS:
            raise wrong(f"A range has at most {MOST_LABELS} labels. {_LABELS}")
        return [str(label) for label in numbers]
    if first.isalpha() and last.isalpha() and first.isupper() == last.isupper() and first <= last:
        return [chr(code) for code in range(ord(first), ord(last) + 1)]
    raise wrong(
        "A range runs upwards from a number to a number or from a letter to a letter: `1-3` or "
        "`A-C`."
    )
