"""What stands beside an identifier in C++ where it may look something up, told from bytes."""

from __future__ import annotations

import re

from namegen.model.places import Span

_USED = re.compile(
    rb"(?:\s|\\\r?\n|//(?:[^\\\r\n]|\\(?:\r\n|.|\n))*|/\*(?:[^*]|\*(?!/))*\*/)*"
    rb"[(\[{<>,&*\"A-Za-z_\x80-\xff]"
)
"""A call, a subscript, a list; among template arguments; the type of the variable behind it."""

_RUN = re.compile(rb"[\s\w()]+")
_LIST = re.compile(rb":(?!:)\s*\w+\s*[({]")
"""What begins a constructor's list behind its parameters: ``Heron::Heron(Boat& b) : bow_(b)``."""


def looks_up(data: bytes, word: Span) -> bool:
    """Whether a look-up can stand at an identifier; False is certain."""
    return _USED.match(data, word.end) is not None


def initialises(data: bytes) -> bool:
    """Whether a constructor outside of its class can give something to members."""
    if b"::" not in data:
        return False
    runs = _RUN.finditer(data)
    return any(b")" in run[0] and _LIST.match(data, run.end()) for run in runs)
