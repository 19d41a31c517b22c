"""Names that a reader takes for one another, though both are words."""

from __future__ import annotations

import re

from namegen.text.opposites import opposed, telling
from namegen.text.slips import ANY, DOUBLED, SOUND, slip_cost
from namegen.text.words import split

_NUMBER = re.compile(r"\d+")


def misread(one: str, other: str) -> bool:
    """Whether two names differ in one word by a slip that a reader passes over.

    That is a doubled letter, a swap, or inside a word of four letters or more
    a letter too many or one that looks or sounds like the other. Common practice,
    no source. Numbers, opposites and single letters tell a series apart.
    """
    a, b = (list(map(str.casefold, split(name))) for name in (one, other))
    changed = [pair for pair in zip(a, b, strict=False) if pair[0] != pair[1]]
    return len(a) == len(b) and len(changed) == 1 and _slip(*changed[0])


def _slip(a: str, b: str) -> bool:
    if _NUMBER.findall(a) != _NUMBER.findall(b) or opposed(a, b) or (telling(a) and telling(b)):
        return False
    cost, shorter = slip_cost(a, b), min(len(a), len(b))
    if len(a) != len(b):
        return cost <= DOUBLED or (cost <= ANY and shorter >= 4)
    return cost <= SOUND and shorter >= 4
