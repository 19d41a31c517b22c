"""The parser of Kotlin."""

from __future__ import annotations

from functools import cache

import tree_sitter_kotlin
from tree_sitter import Language, Parser

from namegen.languages.kotlin.mending import mended
from namegen.languages.mended_parsers import MendedParser


@cache
def parser() -> MendedParser:
    """Return the parser; one serves all files of a process."""
    return MendedParser(
        Parser(Language(tree_sitter_kotlin.language())), lambda text: mended(text).text
    )
