"""The parser of Python."""

from __future__ import annotations

import re
from functools import cache

import tree_sitter_python
from tree_sitter import Language, Parser

from namegen.languages.mended_parsers import MendedParser

_TYPE_CALLED = re.compile(rb"type(?=[ \t]*\()")


@cache
def parser() -> MendedParser:
    """Return the parser; one serves all files of a process.

    The grammar takes ``type(self).NAME = "bow"`` for the statement ``type X = int``.
    """
    return MendedParser(Parser(Language(tree_sitter_python.language())), _mended)


def _mended(source: bytes) -> bytes:
    """Return the text with another word of the same length for ``type`` where it is called."""
    places = [
        one.start() for one in _TYPE_CALLED.finditer(source) if _is_at_start(source, one.start())
    ]
    mended = bytearray(source) if places else bytearray()
    for place in places:
        mended[place : place + 4] = b"tipe"
    return bytes(mended) if places else source


def _is_at_start(source: bytes, place: int) -> bool:
    """Whether only blanks stand between a place and the start of a statement."""
    while place and source[place - 1] in b" \t":
        place -= 1
    return not place or source[place - 1] in b"\n\r;:"
