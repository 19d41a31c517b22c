"""What stands beside an identifier in Kotlin where it may look something up, told from bytes."""

from __future__ import annotations

import re

from namegen.languages.prefilters import behind, is_behind, is_referred_to
from namegen.model.places import Span

_USED = re.compile(rb"`?\s*(?:[(<\[{/]|as\b|::)")
"""A call, an annotation, a subscript; a comment before one; another name for an import."""
_GIVEN = re.compile(rb"\s*[\"'`!+-]|\s+\w")
"""What stands behind the name of an infix call."""
_BEFORE = b" \t\r\n\f\v/)]}\"'`!"
_LISTED = re.compile(rb"`?\s*(?:,|where\b)")
_BASES = behind(rb"[:,.]")
"""What stands behind and before a base class that is constructed further down."""
_HEAD = behind(rb"\bclass")
_IMPLICIT = re.compile(rb"\b(?:it|this)\b")


def looks_up(data: bytes, word: Span) -> bool:
    """Whether a look-up can stand at an identifier; False is certain."""
    if _USED.match(data, word.end) is not None:
        return True
    before = data[word.start - 1 : word.start]
    if before != b"" and before in _BEFORE and _GIVEN.match(data, word.end) is not None:
        return True
    return is_referred_to(data, word) or _is_in_head(data, word)


def _is_in_head(data: bytes, word: Span) -> bool:
    """Whether a class can be declared by this name, or one that is derived from it."""
    listed = _LISTED.match(data, word.end) is not None
    return is_behind(data, word, _HEAD) or (listed and is_behind(data, word, _BASES))


def has_implicit(data: bytes) -> bool:
    """Whether ``it`` or ``this`` can stand for a receiver; False is certain."""
    return _IMPLICIT.search(data) is not None
