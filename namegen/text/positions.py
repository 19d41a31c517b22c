"""Lines and columns of a text, counted the way every place in namegen counts them."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterable
from itertools import accumulate

_END = re.compile(r"\r\n?|\n")
_END_BYTES = re.compile(rb"\r\n?|\n")


class Lines:
    r"""Turns offsets into lines and columns and back.

    Lines and columns count from 1, columns in code points. LF, CR LF and a lone
    CR end a line; nothing else does. Offsets are code points of a text, or bytes
    of UTF-8 for `of_utf8`. Strip a byte order mark first. An offset costs a
    search over the line starts and, in UTF-8, a count within its line.

    >>> lines = Lines("robot: heron\r\ntitle: Reiher\n")
    >>> lines.locate(14, 19)
    (2, 1, 2, 6)
    >>> lines.index(2, 8), lines.line(2)
    (21, 'title: Reiher')
    """

    __slots__ = ("_ends", "_source", "_starts", "_wide")

    def __init__(self, text: str) -> None:
        self._fill(text)

    @classmethod
    def of_utf8(cls, data: bytes) -> Lines:
        """Return the lines of a UTF-8 text whose offsets are bytes.

        Bytes that are not UTF-8 count as one column each.
        """
        lines = cls.__new__(cls)
        lines._fill(data)
        return lines

    def _fill(self, source: str | bytes) -> None:
        self._source = source
        lengths = _plain_lengths(source)
        if lengths is not None:
            after = list(accumulate(length + 1 for length in lengths))
            self._ends = [place - 1 for place in after]
            self._starts = [0, *after[:-1]]
        else:
            ends = _END.finditer(source) if isinstance(source, str) else _END_BYTES.finditer(source)
            spans = [match.span() for match in ends]
            self._ends = [start for start, _ in spans] + [len(source)]
            self._starts = [0] + [end for _, end in spans]
        self._wide = isinstance(source, bytes) and not source.isascii()
        """Whether offsets and columns may differ within a line."""

    def __len__(self) -> int:
        """Return the number of lines; a text that ends with a line end has an empty last one."""
        return len(self._starts)

    def position(self, offset: int) -> tuple[int, int]:
        """Return line and column of an offset; an offset past the end counts as the end."""
        offset = max(0, min(offset, len(self._source)))
        line = bisect_right(self._starts, offset)
        start = self._starts[line - 1]
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
        start, end = self._bounds(line)
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
        return self._text(*self._bounds(number))

    def _bounds(self, line: int) -> tuple[int, int]:
        if not 1 <= line <= len(self._starts):
            raise IndexError(f"there is no line {line}")
        return self._starts[line - 1], self._ends[line - 1]

    def _text(self, start: int, end: int) -> str:
        piece = self._source[start:end]
        return piece if isinstance(piece, str) else piece.decode("utf-8", "surrogateescape")


def _plain_lengths(source: str | bytes) -> Iterable[int] | None:
    """Return the lines' lengths where only LF ends a line, several times faster; else None."""
    if isinstance(source, str):
        return None if "\r" in source else map(len, source.split("\n"))
    return None if b"\r" in source else map(len, source.split(b"\n"))


def _encoded(text: str) -> bytes:
    return text.encode("utf-8", "surrogateescape")


def split_lines(text: str) -> list[str]:
    """Return the lines of a text without their ends, as `Lines` counts them."""
    return _END.split(text)
