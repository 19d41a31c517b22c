"""Kinds of devices in the words of those who wrote a chart."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from functools import lru_cache

from namegen.errors import UnusableInput
from namegen.model.boards import KINDS
from namegen.text.likeness import suggest

WORDS: Mapping[str, tuple[str, ...]] = {
    "motor": ("motor", "dc motor", "engine", "thruster", "propeller"),
    "servo": ("servo", "servo motor"),
    "switch": ("switch", "button", "bumper", "contact", "touch", "end stop", "endstop", "limit",
               "micro switch", "microswitch", "reed"),
    "lamp": ("lamp", "led", "lights"),
    "relay": ("relay",),
    "encoder": ("encoder", "rotary encoder", "quadrature"),
    "level": ("level", "float"),
    "temperature": ("temperature", "thermometer", "thermistor", "thermocouple",
                    "temp"),
    "distance": ("distance", "range", "rangefinder", "range finder", "sonar", "ultrasonic"),
    "light": ("light", "brightness", "colour", "color"),
    "imu": ("imu", "gyro", "gyroscope", "compass", "inertial", "accelerometer"),
    "position": ("position", "gps", "gnss"),
}  # fmt: skip
"""Kind -> general words for it. Common practice, no source."""

_KIND_OF = {
    form: kind for kind, words in WORDS.items() for word in words for form in (word, word + "s")
}
_FILLERS = frozenset({"sensor", "device", "detector", "the", "a", "an"})


def answers(texts: Iterable[str]) -> dict[str, str]:
    """Return word -> kind from ``prop=motor``; a kind that is not known is declared.

    Raises:
        UnusableInput: it is not written so.
    """
    found: dict[str, str] = {}
    for text in texts:
        word, sign, kind = (part.strip() for part in text.rpartition("="))
        if not sign or not word or len(kind.split()) != 1:
            raise UnusableInput(
                f'"{text}" does not say which kind is meant',
                remedy=f'write it as --kind "prop=motor"; known kinds: {", ".join(KINDS)}',
            )
        found[key_of(word)] = kind
    return found


def key_of(cell: str) -> str:
    """Return what all spellings of a cell share: small letters, one blank between words."""
    return " ".join(re.split(r"[\s\-_./]+", cell.casefold().strip(" .")))


@lru_cache(maxsize=1024)
def kind_of(cell: str) -> str | None:
    """Return the one kind that a cell means, or None when that is not sure.

    >>> kind_of("Servo motor"), kind_of("temprature sensor"), kind_of("gadget")
    ('servo', 'temperature', None)
    """
    whole = key_of(cell)
    words = [word for word in whole.split() if word not in _FILLERS]
    phrase = " ".join(words)
    for text in (whole, phrase):
        if text in _KIND_OF:
            return _KIND_OF[text]
    near = suggest(phrase, tuple(_KIND_OF)).best if len(phrase) > 3 else None
    if near:
        return _KIND_OF[near]
    meant = meanings(cell)
    return meant[0] if len(meant) == 1 else None


def meanings(cell: str) -> tuple[str, ...]:
    """Return the kinds that the single words of a cell speak for.

    >>> meanings("float switch"), meanings("limit switch")
    (('level', 'switch'), ('switch',))
    """
    words = key_of(cell).split()
    return tuple(dict.fromkeys(_KIND_OF[word] for word in words if word in _KIND_OF))
