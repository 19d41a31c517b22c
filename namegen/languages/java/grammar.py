"""The parser of Java."""

from __future__ import annotations

from functools import cache

import tree_sitter_java
from tree_sitter import Language, Parser


@cache
def parser() -> Parser:
    """Return the parser; one serves all files of a process."""
    return Parser(Language(tree_sitter_java.language()))
