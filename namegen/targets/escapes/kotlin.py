"""Escapes for Kotlin source."""

from __future__ import annotations

import re

from namegen.targets.escapes import plain

_SPECIAL = re.compile(r'[^ -~]|["\\$]')
_MARKUP = re.compile(r"[&\[\]@`]|(?<=\*)/|^/|/$|(?<=/)\*|^\*|\*$")
_SHORT = {"\n": r"\n", "\r": r"\r", "\t": r"\t", "\b": r"\b", '"': r"\"", "\\": r"\\", "$": r"\$"}


def string(text: str) -> str:
    """Return a string literal in ASCII, without templates."""
    return '"' + _SPECIAL.sub(_escaped, text) + '"'


def doc(text: str) -> str:
    """Return text for the inside of a KDoc comment, on one line.

    Block comments nest in Kotlin, so both ends of one are taken apart; square
    brackets would be links.
    """
    return _MARKUP.sub(lambda match: f"&#{ord(match[0])};", plain.line(text))


def _escaped(match: re.Match[str]) -> str:
    char = match[0]
    if char in _SHORT:
        return _SHORT[char]
    units = char.encode("utf-16-be", "surrogatepass")
    return "".join(f"\\u{units[i]:02x}{units[i + 1]:02x}" for i in range(0, len(units), 2))
