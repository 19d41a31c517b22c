"""What stands beside an identifier in Java where it may look something up, told from bytes."""

from __future__ import annotations

import re

from namegen.languages.prefilters import is_referred_to
from namegen.model.places import Span

_GAP = rb"(?:\s|//[^\r\n]*|/\*(?:[^*]|\*(?!/))*\*/)*"
_USED = re.compile(_GAP + rb"(?:[(<{]|::|(?:extends|implements|permits)\b)|[ \t]+\"")
"""A call, a construction, an annotation, the head of a class, a reference; a quote where the
bracket was forgotten."""


def looks_up(data: bytes, word: Span) -> bool:
    """Whether a look-up can stand at an identifier; False is certain."""
    return _USED.match(data, word.end) is not None or is_referred_to(data, word)
