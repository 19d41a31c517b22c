"""Escapes for YAML (1.1 and 1.2)."""

from __future__ import annotations

import re

from namegen.targets.escapes import plain

_SPECIAL = re.compile(r'[^ -~]|["\\]')


def string(text: str) -> str:
    """Return a double-quoted scalar; it stays text in every version and schema."""
    return '"' + _SPECIAL.sub(_escaped, text) + '"'


def comment(text: str) -> str:
    """Return text for a comment, on one line."""
    return plain.line(text)


def _escaped(match: re.Match[str]) -> str:
    char, code = match[0], ord(match[0])
    if char in '"\\':
        return "\\" + char
    if char.isprintable():
        return char
    return (
        f"\\x{code:02X}"
        if code < 0x100
        else f"\\u{code:04X}"
        if code < 0x10000
        else f"\\U{code:08X}"
    )
