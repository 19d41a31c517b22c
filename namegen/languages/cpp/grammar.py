"""The parser of C++, and what it is shown of a file."""

from __future__ import annotations

import re
from functools import cache

import tree_sitter_cpp
from tree_sitter import Language, Parser

from namegen.languages.mended_parsers import MendedParser

_BEHIND = re.compile(
    rb"""(?<!extern\ "C)(?<!extern\ "C\+\+)"[ \t]+
    (?!(?:and|or|xor|bitand|bitor|not_eq)\b|(?:u8|[uUL])?R?["'])[A-Za-z_]\w*\b(?![ \t]*\()""",
    re.VERBOSE,
)
"""A macro behind a text: ``"bow" SIDE``."""
_BEFORE = re.compile(
    rb"""(?P<word>\b(?:class|struct))\s+[A-Z][A-Z0-9_]*(?:\([^()\r\n]*\))?
    (?=\s+\w+\s*(?:final\s*)?[:{])""",
    re.VERBOSE,
)
"""A macro before the name of a class: ``class API Boat {``."""
_FOR_C = re.compile(
    rb"""^(?P<before>[ \t]*\#[ \t]*if(?P<condition>[^\r\n]*)[\r\n]+[ \t]*)
    (?P<bracket>extern[ \t]+"C"\s*\{|\})""",
    re.VERBOSE | re.MULTILINE,
)
"""Brackets that C++ alone is to see, in a header that is C as well."""
_PLACED = re.compile(rb"(?<!define )\b(?:PROGMEM|[ID]RAM_ATTR|ICACHE_RAM_ATTR)\b")
"""Macros that say where in the memory of a small board something lies. Common practice."""

_LONE = re.compile(
    rb"""(?P<before>[;{}][ \t]*(?://[^\r\n]*)?\r?\n\s*)(?P<word>[A-Z][A-Z0-9_]{2,})
    (?=[ \t]*(?://[^\r\n]*)?\r?\n\s*[A-Za-z_])""",
    re.VERBOSE,
)
"""A macro on a line by itself that needs no semicolon, above a statement."""


def readable(data: bytes) -> bytes:
    """Return the text with blanks for what is no C++ before macros are, at the same offsets.

    A line that goes on after a backslash ends with LF alone, as the grammar wants it.
    Where a quote that opens a text is taken for one that closes it, words of the text
    become blanks: the tree is the same, and values are read from the file itself.
    """
    code = data.lstrip(b" ")
    return b" " * (len(data) - len(code)) + _readable(code)  # the text of a macro lies far behind


def _readable(data: bytes) -> bytes:
    data = data.replace(b"\\\r\n", b" \\\n")
    if b"__cplusplus" in data:
        data = _FOR_C.sub(_without_bracket, data)
    data = _PLACED.sub(lambda one: b" " * len(one[0]), data)
    data = _LONE.sub(lambda one: one["before"] + b" " * len(one["word"]), data)
    data = _BEHIND.sub(lambda one: one[0][:1] + b" " * (len(one[0]) - 1), data)
    return _BEFORE.sub(lambda one: one["word"] + b" " * (len(one[0]) - len(one["word"])), data)


def _without_bracket(found: re.Match[bytes]) -> bytes:
    """Return a condition with a blank for the bracket below it, where it asks for C++."""
    if b"__cplusplus" not in found["condition"]:
        return found[0]
    return found["before"] + b" " * len(found["bracket"])


@cache
def parser() -> MendedParser:
    """Return the parser; one serves all files of a process."""
    return MendedParser(Parser(Language(tree_sitter_cpp.language())), readable)
