"""The parser of Python."""

from __future__ import annotations

import re
from functools import cache

import tree_sitter_python
from tree_sitter import Language, Parser

from namegen.languages.mended_parsers import MendedParser

_TYPE_CALLED = re.compile(rb"(?:\A|(?<=[\n\r;:]))([ \t]*)type(?=[ \t]*\()")


@cache
def parser() -> MendedParser:
    """Return the parser; one serves all files of a process.

    The grammar takes ``type(self).NAME = "bow"`` for the statement ``type X = int``.
    """
    return MendedParser(Parser(Language(tree_sitter_python.language())), _mended)


def _mended(source: bytes) -> bytes:
    """Return the text with another word for ``type`` where it is called, of the same length."""
    return _TYPE_CALLED.sub(rb"\1tipe", source) if b"type" in source else source
