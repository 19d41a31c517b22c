r"""Escapes for Java source, in pure ASCII.

The compiler turns ``\uXXXX`` into a character before it looks for strings and
comments (Java Language Specification 3.3), so a backslash is never let
through alone, and a control character never becomes a ``\u`` escape.
"""

from __future__ import annotations

import re

from namegen.targets.escapes import plain

_SPECIAL = re.compile(r'[^ -~]|["\\]')
_SHORT = {"\n": r"\n", "\r": r"\r", "\t": r"\t", "\b": r"\b", "\f": r"\f", '"': r"\"", "\\": r"\\"}
_NAMED = {"&": "&amp;", "<": "&lt;", ">": "&gt;"}
_MARKUP = re.compile(r"[^ -~]|[&<>@\\]|(?<=\*)/|^/|\*$")


def string(text: str) -> str:
    """Return a string literal."""
    return '"' + _SPECIAL.sub(_escaped, text) + '"'


def doc(text: str) -> str:
    """Return text for the inside of a Javadoc comment, on one line.

    What Javadoc or HTML would read as markup becomes a character reference.
    """
    return _MARKUP.sub(_reference, plain.line(text))


def _escaped(match: re.Match[str]) -> str:
    char = match[0]
    if char in _SHORT:
        return _SHORT[char]
    if ord(char) < 0x80:
        return f"\\{ord(char):03o}"
    units = char.encode("utf-16-be", "surrogatepass")
    return "".join(f"\\u{units[i]:02x}{units[i + 1]:02x}" for i in range(0, len(units), 2))


def _reference(match: re.Match[str]) -> str:
    return _NAMED.get(match[0]) or f"&#{ord(match[0])};"
