"""Lines and columns of a text, counted the way every place in namegen counts them."""

from __future__ import annotations

import re
from bisect import bisect_right
from itertools import accumulate, count, repeat
from operator import add, sub

_END = re.compile(r"\r\n?|\n")
_END_BYTES = re.compile(rb"\r\n?|\n")
_FEW = 32
"""Offsets that are counted out before a table pays: most files of code ask for two or four."""


class Lines:
    r"""Turns offsets into lines and columns and back.

    Lines and columns count from 1, columns in code points. LF, CR LF and a lone
    CR end a line; nothing else does. Offsets are code points of a text, or bytes
    of UTF-8 for `of_utf8`. Strip a byte order mark first. The first few offsets
    cost a count over the text each; then a table of the lines is made, and an
    offset costs a search in it and, in UTF-8, a count within its line.

    >>> lines = Lines("robot: heron\r\ntitle: Reiher\n")
    >>> lines.locate(14, 19)
    (2, 1, 2, 6)
    >>> lines.index(2, 8), lines.line(2)
    (21, 'title: Reiher')
    """

    __slots__ = ("_counts", "_source", "_table", "_wide")

    def __init__(self, text: str) -> None:
        self._hold(text)

    @classmethod
    def of_utf8(cls, data: bytes) -> Lines:
        """Return the lines of a UTF-8 text whose offsets are bytes.

        Bytes that are not UTF-8 count as one column each.
        """
        lines = cls.__new__(cls)
        lines._hold(data)
        return lines

    def _hold(self, source: str | bytes) -> None:
        self._source = source
        self._table: tuple[list[int], list[int]] | None = None
        self._counts = 0 if _only_lf(source) else _FEW
        self._wide = isinstance(source, bytes) and not source.isascii()
        """Whether offsets and columns may differ within a line."""

    @property
    def _bounds(self) -> tuple[list[int], list[int]]:
        """Where each line starts, and where it ends."""
        if self._table is None:
            self._table = _bounds_of(self._source)
        return self._table

    def __len__(self) -> int:
        """Return the number of lines; a text that ends with a line end has an empty last one."""
        return len(self._bounds[0])

    def position(self, offset: int) -> tuple[int, int]:
        """Return line and column of an offset; an offset past the end counts as the end."""
        offset = max(0, min(offset, len(self._source)))
        if self._table is None and self._counts < _FEW:
            self._counts += 1
            line, start = _counted(self._source, offset)
        else:
            starts, _ = self._bounds
            line = bisect_right(starts, offset)
            start = starts[line - 1]
        if self._wide:
            return line, len(self._text(start, offset)) + 1
        return line, offset - start + 1

    def locate(self, start: int, end: int) -> tuple[int, int, int, int]:
        """Return line, column, end line and end column of a stretch; the end is exclusive."""
        return *self.position(start), *self.position(end)

    def index(self, line: int, column: int) -> int:
        """Return the offset of a line and column.

        Raises:
            IndexError: there is no such line, or the column lies more than one
                past its last letter.

        """
        start, end = self._bounds_at(line)
        if self._wide:
            text = self._text(start, end)
            length, before = len(text), len(_encoded(text[: column - 1]))
        else:
            length, before = end - start, column - 1
        if not 1 <= column <= length + 1:
            raise IndexError(f"line {line} has no column {column}")
        return start + before

    def line(self, number: int) -> str:
        """Return a line's text without its end.

        Raises:
            IndexError: there is no such line.

        """
        return self._text(*self._bounds_at(number))

    def _bounds_at(self, line: int) -> tuple[int, int]:
        starts, ends = self._bounds
        if not 1 <= line <= len(starts):
            raise IndexError(f"there is no line {line}")
        return starts[line - 1], ends[line - 1]

    def _text(self, start: int, end: int) -> str:
        piece = self._source[start:end]
        return piece if isinstance(piece, str) else piece.decode("utf-8", "surrogateescape")


def _only_lf(source: str | bytes) -> bool:
    """Whether LF alone ends lines here, which can be told several times faster."""
    return "\r" not in source if isinstance(source, str) else b"\r" not in source


def _bounds_of(source: str | bytes) -> tuple[list[int], list[int]]:
    """Return where each line starts, and where it ends."""
    if _only_lf(source):
        lines = source.split("\n") if isinstance(source, str) else source.split(b"\n")
        starts = list(map(add, accumulate(map(len, lines), initial=0), count()))
        return starts[:-1], list(map(sub, starts[1:], repeat(1)))
    ends = _END.finditer(source) if isinstance(source, str) else _END_BYTES.finditer(source)
    spans = [match.span() for match in ends]
    return [0] + [end for _, end in spans], [start for start, _ in spans] + [len(source)]


def _counted(source: str | bytes, offset: int) -> tuple[int, int]:
    """Return the line of an offset and where that line starts, where LF alone ends lines."""
    if isinstance(source, str):
        return source.count("\n", 0, offset) + 1, source.rfind("\n", 0, offset) + 1
    return source.count(b"\n", 0, offset) + 1, source.rfind(b"\n", 0, offset) + 1


def _encoded(text: str) -> bytes:
    return text.encode("utf-8", "surrogateescape")


def split_lines(text: str) -> list[str]:
    """Return the lines of a text without their ends, as `Lines` counts them."""
    return text.split("\n") if _only_lf(text) else _END.split(text)
