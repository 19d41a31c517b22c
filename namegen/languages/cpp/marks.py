"""What stands beside an identifier in C++ where it may look something up, told from bytes."""

from __future__ import annotations

import re

from namegen.model.places import Span

_USED = re.compile(
    rb"(?:\s|\\\r?\n|//(?:[^\\\r\n]|\\(?:\r\n|.|\n))*|/\*(?:[^*]|\*(?!/))*\*/)*"
    rb"[(\[{<>,&*\"A-Za-z_\x80-\xff]"
)
"""A call, a subscript, a list; among template arguments; the type of the variable behind it."""

_INITIALISES = re.compile(rb"\)[\s\w()]*(?<!:):(?!:)\s*\w+\s*[({]")
"""A constructor's list, which may construct members that another file declares."""


def looks_up(data: bytes, word: Span) -> bool:
    """Whether a look-up can stand at an identifier; False is certain."""
    return _USED.match(data, word.end) is not None


def initialises(data: bytes) -> bool:
    """Whether a constructor outside of its class can give something to members."""
    return b"::" in data and _INITIALISES.search(data) is not None
