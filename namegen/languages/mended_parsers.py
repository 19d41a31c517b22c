"""Parsers that see a text in which what their grammar gets wrong is written in another way."""

from __future__ import annotations

from collections.abc import Callable

from tree_sitter import Parser, Range, Tree


class MendedParser:
    """Parses a mended text; its offsets are those of the text that was given."""

    def __init__(self, parser: Parser, mended: Callable[[bytes], bytes]) -> None:
        self._parser = parser
        self._mended = mended
        self._last = (b"", b"")
        self.included_ranges: list[Range] = []

    def parse(self, source: bytes, /) -> Tree:
        """Return the tree of a text, or of the ranges of it that are included."""
        self._parser.included_ranges = self.included_ranges
        if self._last[0] is not source:  # the pieces of a file come one after the other
            self._last = source, self._mended(source)
        return self._parser.parse(self._last[1])
