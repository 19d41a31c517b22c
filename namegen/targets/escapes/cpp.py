"""Escapes for C++ source, in pure ASCII, the bytes of a literal being UTF-8."""

from __future__ import annotations

import re

from namegen.targets.escapes import plain

_SPECIAL = re.compile(r'[^ -~]|["\\?]')
_SHORT = {"\n": r"\n", "\r": r"\r", "\t": r"\t", '"': r"\"", "\\": r"\\", "?": r"\?"}


def string(text: str) -> str:
    """Return a narrow string literal whose bytes are the text in UTF-8.

    Octal escapes end after three digits, so that a digit may follow; a question
    mark is escaped, so that no trigraph can arise.
    """
    return '"' + _SPECIAL.sub(_escaped, text) + '"'


def comment(text: str) -> str:
    """Return text for the inside of a ``//`` comment, on one line.

    A backslash becomes a slash: at the end of a line it would join the next
    line to the comment. So would the trigraph ``??/``, which is spaced out.
    """
    shown = plain.line(text).replace("\\", "/").replace("??", "? ?").replace("??", "? ?")
    return shown if shown.isascii() else "".join(map(_shown, shown))


def _escaped(match: re.Match[str]) -> str:
    short = _SHORT.get(match[0])
    return short or "".join(f"\\{byte:03o}" for byte in match[0].encode("utf-8", "surrogatepass"))


def _shown(char: str) -> str:
    return char if char.isascii() else f"[U+{ord(char):04X}]"
