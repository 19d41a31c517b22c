"""How far apart two texts are, in edits: plain, as a script of edits, and weighted.

An edit puts a letter in, leaves one out, replaces one, or swaps two neighbours;
no letter is edited twice (optimal string alignment).
"""

from __future__ import annotations

from typing import Literal

from msgspec import Struct

_EDIT = 1000
_CASE = 999
"""A letter in the wrong case, so that of two equally short scripts the plainer one is taken."""

Action = Literal["insert", "delete", "replace", "swap"]


class Step(Struct, frozen=True):
    """One edit on the way from a found to an expected text, with indices from 0.

    ``found`` and ``expected`` are the stretches concerned; one is empty for an
    insertion or a deletion, both hold two letters for a swap.
    """

    action: Action
    at: int
    found: str
    to: int
    expected: str


def osa(a: str, b: str) -> int:
    """Return the optimal string alignment distance of two texts, every edit counting one.

    >>> osa("motor", "mtoor"), osa("CA", "ABC")
    (1, 3)
    """
    from rapidfuzz.distance import OSA

    return OSA.distance(a, b)


def script(found: str, expected: str) -> list[Step]:
    """Return a shortest list of edits that makes the found text the expected one, in order."""
    skip = shared_start(found, expected)
    tail = shared_start(found[skip:][::-1], expected[skip:][::-1])
    a, b = found[skip : len(found) - tail], expected[skip : len(expected) - tail]
    table = _table(a, b)
    steps: list[Step] = []
    i, j = len(a), len(b)
    while i or j:
        di, dj = _step_back(table, a, b, i, j)
        i, j = i - di, j - dj
        if a[i : i + di] != b[j : j + dj]:
            piece, wanted = a[i : i + di], b[j : j + dj]
            steps.append(Step(_action(di, dj), skip + i, piece, skip + j, wanted))
    return steps[::-1]


def shared_start(a: str, b: str) -> int:
    """Return how many letters two texts have in common at their start."""
    shared = 0
    for x, y in zip(a, b, strict=False):
        if x != y:
            break
        shared += 1
    return shared


def _table(a: str, b: str) -> list[list[int]]:
    """Return the distances between all beginnings of two texts, in thousandths."""
    table = [[_EDIT * j for j in range(len(b) + 1)]]
    for i, x in enumerate(a, 1):
        above, row = table[-1], [_EDIT * i]
        for j, y in enumerate(b, 1):
            best = min(above[j] + _EDIT, row[-1] + _EDIT, above[j - 1] + _wrong(x, y))
            if i > 1 and j > 1 and x == b[j - 2] and y == a[i - 2]:
                best = min(best, table[i - 2][j - 2] + _EDIT)
            row.append(best)
        table.append(row)
    return table


def _wrong(x: str, y: str) -> int:
    if x == y:
        return 0
    return _CASE if x.lower() == y.lower() else _EDIT


def _step_back(table: list[list[int]], a: str, b: str, i: int, j: int) -> tuple[int, int]:
    """Return how many letters of each text the last edit of a shortest script covers."""
    here = table[i][j]
    wrong = _wrong(a[i - 1], b[j - 1]) if i and j else _EDIT
    if wrong < _EDIT and table[i - 1][j - 1] + wrong == here:
        return 1, 1
    swapped = i > 1 and j > 1 and a[i - 1] == b[j - 2] and a[i - 2] == b[j - 1]
    if swapped and table[i - 2][j - 2] + _EDIT == here:
        return 2, 2
    if i and j and table[i - 1][j - 1] + wrong == here:
        return 1, 1
    return (1, 0) if i and table[i - 1][j] + _EDIT == here else (0, 1)


def _action(found: int, expected: int) -> Action:
    if found == 2:
        return "swap"
    if found == 0:
        return "insert"
    return "replace" if expected else "delete"
