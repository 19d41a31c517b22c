"""Text for people: one line, nothing invisible in it."""

from __future__ import annotations

import re

_BLANKS = re.compile(r"\s+")


def line(text: str) -> str:
    """Return the text on one line: blanks and line breaks become one space each run.

    Characters that cannot be seen or that turn the writing direction (Unicode
    categories C and Z) are shown as ``[U+202E]``.
    """
    if text.isascii() and text.isprintable() and "  " not in text and text == text.strip():
        return text
    text = _BLANKS.sub(" ", text).strip()
    if text.isprintable():
        return text
    return "".join(char if char.isprintable() else f"[U+{ord(char):04X}]" for char in text)
