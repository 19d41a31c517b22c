"""The parser of Kotlin."""

from __future__ import annotations

from functools import cache

import tree_sitter_kotlin
from tree_sitter import Language, Parser, Range, Tree

from namegen.languages.kotlin.mending import mended


class MendingParser:
    """Parses a text in which what the grammar gets wrong is written in another way."""

    def __init__(self, parser: Parser) -> None:
        self._parser = parser
        self.included_ranges: list[Range] = []

    def parse(self, source: bytes, /) -> Tree:
        """Return the tree of a text, with the text's own offsets."""
        return self._parser.parse(mended(source).text)


@cache
def parser() -> MendingParser:
    """Return the parser; one serves all files of a process."""
    return MendingParser(Parser(Language(tree_sitter_kotlin.language())))
