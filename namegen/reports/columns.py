"""Text in terminal columns: tabs, wide letters, accents, and what is not seen."""

from __future__ import annotations

import unicodedata

from msgspec import Struct

from namegen.text.terminal import escaped

TAB = 4
"""Columns from one tab stop to the next."""
CUT = "..."
"""Stands where a line is cut off."""


class Strip(Struct, frozen=True):
    """A piece of a line as it is shown, with the columns that a span takes in it."""

    text: str
    start: int
    end: int


def width_of(shown: str) -> int:
    """Return the columns that a text takes on a terminal; all of it must be visible."""
    return len(shown) if shown.isascii() else sum(map(_width, shown))


def strip(line: str, start: int, end: int, width: int) -> Strip:
    """Return the part of a line around the code points ``start`` to ``end``, cut to ``width``.

    Only the characters near the span are looked at, so a line of megabytes costs
    no more than a short one.
    """
    start = max(0, min(start, len(line)))
    end = max(start, min(end, len(line)))
    if len(line) <= width and line.isascii() and line.isprintable():
        return Strip(line.rstrip(), start, end)  # most lines, each character one column
    first = max(0, start - width) if len(line) > width else 0
    window = line[first : start + 2 * width]
    cells = _cells(window)
    edges = _edges(cells)
    left, right = edges[start - first], edges[min(end, first + len(window)) - first]
    from_, to = _window(edges, left, right, width, before=first > 0)
    text = "".join(cells[from_:to])
    shift = edges[from_]
    if first + from_ > 0:
        text, shift = CUT + text, shift - len(CUT)
    stop = min(right, edges[to])
    if first + to < len(line):
        text += CUT
    return Strip(text.rstrip(), left - shift, max(stop - shift, left - shift))


def _window(
    edges: list[int], left: int, right: int, width: int, *, before: bool
) -> tuple[int, int]:
    """Return the first and the last cell to show, so that the span is in sight."""
    count = len(edges) - 1
    if not before and edges[count] <= width:
        return 0, count
    room = max(width - 2 * len(CUT), 1)
    spare = max(room - (right - left), 0)
    begin = max(left - spare // 2, 0)
    if begin <= len(CUT) and not before:
        begin = 0
    from_ = next(i for i in range(count + 1) if edges[i] >= begin)
    to = from_
    while to < count and edges[to + 1] - edges[from_] <= room:
        to += 1
    return from_, to


def _cells(text: str) -> list[str]:
    """Return each character as it is shown; a tab becomes the blanks up to the next stop."""
    cells, column = [], 0
    for char in text:
        cell = " " * (TAB - column % TAB) if char == "\t" else escaped(char)
        cells.append(cell)
        column += width_of(cell)
    return cells


def _edges(cells: list[str]) -> list[int]:
    """Return the column at which each cell starts, and the one where the last ends."""
    edges = [0]
    for cell in cells:
        edges.append(edges[-1] + width_of(cell))
    return edges


def _width(char: str) -> int:
    if unicodedata.category(char) in {"Mn", "Me"}:
        return 0
    return 2 if unicodedata.east_asian_width(char) in {"W", "F"} else 1
