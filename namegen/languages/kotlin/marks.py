"""What stands beside an identifier in Kotlin where it may look something up, told from bytes."""

from __future__ import annotations

import re

from namegen.model.places import Span

_USED = re.compile(rb"\s*(?:[(<\[{/]|as\b)")
"""A call, an annotation, a subscript; a comment before one; another name for an import."""
_GIVEN = re.compile(rb"\s*[\"'`!+-]|\s+\w")
"""What stands behind the name of an infix call."""
_BEFORE = b" \t\r\n\f\v/)]}\"'`!"
_IMPLICIT = re.compile(rb"\b(?:it|this)\b")


def looks_up(data: bytes, word: Span) -> bool:
    """Whether a look-up can stand at an identifier; False is certain."""
    if _USED.match(data, word.end) is not None:
        return True
    before = data[word.start - 1 : word.start]
    return before != b"" and before in _BEFORE and _GIVEN.match(data, word.end) is not None


def has_implicit(data: bytes) -> bool:
    """Whether ``it`` or ``this`` can stand for a receiver; False is certain."""
    return _IMPLICIT.search(data) is not None
