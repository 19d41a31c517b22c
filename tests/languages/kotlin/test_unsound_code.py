"""What a mistake in a Kotlin file hides is said: no look-up is passed over in silence."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from namegen import languages
from namegen.languages.stretches import merged, touches
from namegen.model.facts import Reading, Text
from namegen.model.places import Span
from tests.languages.kotlin.test_programs import RULES

PROGRAMS = sorted((Path(__file__).parent / "programs").glob("*.kt"))
LEAST_READ = 0.6
"""Share of the look-ups that are still read when one sign is missing somewhere in the file."""


def read(data: bytes) -> Reading:
    return languages.named("kotlin").read(data, RULES)


def names(reading: Reading) -> list[int]:
    """Return where the literals of the look-ups begin."""
    return [one.name.span.start for one in reading.lookups if isinstance(one.name, Text)]


@pytest.mark.parametrize("path", PROGRAMS, ids=lambda path: path.name)
def test_without_a_sign_every_look_up_is_read_or_its_line_is_not_sound(path: Path):
    data = path.read_bytes()
    whole = names(read(data))
    shares = []
    for sign in re.finditer(rb"[(){}\[\],=]", data):
        text = data[: sign.start()] + data[sign.end() :]
        broken = read(text)
        found = set(names(broken))
        told = merged(one.span for one in broken.lookups)  # as names that nobody can tell
        moved = [start - (start > sign.start()) for start in whole]
        silent = [
            text[start : start + 20]
            for start in moved
            if not touches(merged([*told, *broken.unsound]), line_of(text, start))
        ]
        assert not silent, (data[sign.start() - 30 : sign.end() + 20], silent)
        shares += [sum(start in found for start in moved) / len(moved)] if moved else []
    assert not shares or sum(shares) / len(shares) > LEAST_READ


def line_of(data: bytes, at: int) -> Span:
    end = data.find(b"\n", at)
    return Span(data.rfind(b"\n", 0, at) + 1, end if end >= 0 else len(data))
