"""What stands beside an identifier in Java where it may look something up, told from bytes."""

from __future__ import annotations

import re

from namegen.model.places import Span

_USED = re.compile(
    rb"(?:\s|//[^\r\n]*|/\*(?:[^*]|\*(?!/))*\*/)*[(<]" rb"|[ \t]+\"",
)
"""A call, a construction, an annotation; a quote where the bracket was forgotten."""


def looks_up(data: bytes, word: Span) -> bool:
    """Whether a look-up can stand at an identifier; False is certain."""
    return _USED.match(data, word.end) is not None
