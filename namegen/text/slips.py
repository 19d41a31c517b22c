"""What a slip of the pen or the finger costs: a weighted edit distance for names.

The weights say how easily a slip happens, 1 being an arbitrary wrong letter.
Common practice in spelling correction, no source; the bench measures them.
"""

from __future__ import annotations

import unicodedata
from functools import lru_cache

from namegen.text.distance import shared_start
from namegen.text.lookalikes import skeleton
from namegen.text.sounds import as_heard

ANY = 1.0
HEARD = 1.0
"""Having written a word as it sounds, in whatever many letters."""
SWAPPED = 0.75
DOUBLED = 0.55
NEIGHBOUR = 0.8
SOUND = 0.75
LOOKS = 0.3
VOWEL = 0.8
"""A letter that is hardly heard, left out or put in."""
_SHORTEST_HEARD = 5
"""Shorter words sound alike by chance."""
FIRST = 0.7
"""What an edit of the first letter costs more: people seldom get it wrong."""

_ROWS = ("1234567890", "qwertyuiop", "asdfghjkl", "zxcvbnm")
_SOUNDS = ("aeiouy", "ckqs", "sz", "fv", "td", "mn", "pb", "gj", "vw", "cx")


def _neighbours() -> frozenset[tuple[str, str]]:
    """Return the pairs of keys that touch on a QWERTY keyboard."""
    place = {key: (row, at) for row, keys in enumerate(_ROWS) for at, key in enumerate(keys)}
    return frozenset(
        (a, b)
        for a, (row, at) in place.items()
        for b, (other, there) in place.items()
        if (row == other and abs(at - there) == 1)
        or (other == row + 1 and at - there in {0, 1})
        or (row == other + 1 and there - at in {0, 1})
    )


_NEIGHBOURS = _neighbours()
_FAINT = frozenset("aeiouhy")
_ALIKE = frozenset((a, b) for group in _SOUNDS for a in group for b in group)


@lru_cache(maxsize=4096)
def replacing(found: str, expected: str) -> float:
    """Return what it costs to have one letter for another, both in lower case."""
    if found == expected:
        return 0.0
    if skeleton(found).casefold() == skeleton(expected).casefold():
        return LOOKS
    if unicodedata.normalize("NFD", found)[0] == unicodedata.normalize("NFD", expected)[0]:
        return LOOKS
    if (found, expected) in _ALIKE:
        return SOUND
    return NEIGHBOUR if (found, expected) in _NEIGHBOURS else ANY


def _lone(text: str, at: int) -> float:
    """Return what it costs that the letter of a text at an index is too much, or missing."""
    doubled = (at > 0 and text[at - 1] == text[at]) or text[at + 1 : at + 2] == text[at]
    if doubled:
        return DOUBLED
    return VOWEL if text[at] in _FAINT else ANY


def slip_cost(found: str, expected: str) -> float:
    """Return what it costs to take a text for a slip of another: of finger, eye or ear.

    Both are letters and digits in lower case.

    >>> slip_cost("ruder", "rudder"), slip_cost("fotosensor", "photosensor")
    (0.55, 1.0)
    """
    cost = typing_cost(found, expected)
    if cost <= HEARD or min(len(found), len(expected)) < _SHORTEST_HEARD:
        return cost
    return min(cost, HEARD + typing_cost(as_heard(found), as_heard(expected)))


def typing_cost(found: str, expected: str) -> float:
    """Return the cost of the cheapest slips that turn the expected text into the found one.

    Both are letters and digits in lower case. The time is the product of their
    lengths, less the letters that they share at either end.

    >>> typing_cost("ruder", "rudder"), typing_cost("bwothruster", "bowthruster")
    (0.55, 0.75)
    """
    start = shared_start(found, expected)
    tail = shared_start(found[start:][::-1], expected[start:][::-1])
    a, b = found[start : len(found) - tail], expected[start : len(expected) - tail]
    first = FIRST if start == 0 else 0.0
    drops = [_lone(found, start + i) + (0.0 if i else first) for i in range(len(a))]
    gaps = [_lone(expected, start + j) + (0.0 if j else first) for j in range(len(b))]
    row = [0.0]
    for gap in gaps:
        row.append(row[-1] + gap)
    before: list[float] = []
    for i, x in enumerate(a):
        above, row = row, [row[0] + drops[i]]
        for j, y in enumerate(b):
            wrong = 0.0 if x == y else replacing(x, y)
            if wrong > LOOKS and not (i or j):
                wrong += first
            best = min(above[j] + wrong, above[j + 1] + drops[i], row[j] + gaps[j])
            if i and j and x != y and x == b[j - 1] and y == a[i - 1]:
                best = min(best, before[j - 1] + SWAPPED)
            row.append(best)
        before = above
    return row[-1]
