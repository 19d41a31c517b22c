"""What stands beside an identifier in Python where it may look something up, told from bytes."""

from __future__ import annotations

import re

from namegen.model.places import Span

_BLANKS = rb"(?:[ \t\f\r\n]|\\[\r\n]|#[^\r\n]*)*"
_USED = re.compile(_BLANKS + rb"(?:[(\[]|as\b|\.[ \t]*__init__\b)|[ \t]+[\"']")
"""A call, a subscript, an import under another name; a quote where the bracket was forgotten."""
_PASSED = re.compile(_BLANKS + rb"[,)]")
"""An argument, or a base of a class."""
_NOT_PASSED = re.compile(rb"[ \t]*(?:#[^\"']*\Z|(?:async[ \t]+)?def[ \t]+\w+\([^=()\r\n]*\Z)")
"""A comment's line, or the head of a function up to one of its parameters."""
_STATEMENT_ENDS = re.compile(rb"[ \t\f]*(?:[\r\n;#\\]|\Z)")
_BEFORE = 200
"""Bytes before a word that are looked at; where all of them are blank, anything may be."""


def looks_up(data: bytes, word: Span) -> bool:
    """Whether a look-up, or another name for one, can stand at an identifier; False is certain.

    Another name is given by ``import fitted as device`` or by ``device = boat.fitted``.
    """
    if _USED.match(data, word.end):
        return True
    if _PASSED.match(data, word.end):
        line = max(data.rfind(end, 0, word.start) for end in (b"\n", b"\r")) + 1
        return _NOT_PASSED.match(data[line : word.start]) is None
    if not _STATEMENT_ENDS.match(data, word.end):
        return False
    before = data[max(0, word.start - _BEFORE) : word.start]
    bare = before.rstrip(b" \t\f\r\n\\")
    # Above a line end may stand a comment, whose last letter says nothing.
    return bare[-1:] in b".=" or b"\n" in before[len(bare) :] or b"\r" in before[len(bare) :]
