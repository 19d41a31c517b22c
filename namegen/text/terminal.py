"""Showing text that somebody else wrote on a terminal, so that it can do nothing there."""

from __future__ import annotations

from namegen.text.characters import is_visible

_SHORT = {"\t": r"\t", "\n": r"\n", "\r": r"\r"}


def escaped(char: str) -> str:
    """Return one character as it is shown: itself, or a visible escape when it is not seen."""
    if is_visible(char):
        return char
    return _SHORT.get(char) or f"\\u{{{ord(char):X}}}"


def printable(text: str) -> str:
    r"""Return text made harmless and visible for a terminal; letters stay as they are.

    Control characters and with them escape sequences, bidirectional controls,
    invisible characters, unusual blanks and lone surrogates become escapes. The
    result is a single line. A backslash of the text stays as it is.

    >>> print(printable("bow\x1b[2J\u202eThruster\n"))
    bow\u{1B}[2J\u{202E}Thruster\n
    """
    if text.isascii() and text.isprintable():
        return text
    return "".join(map(escaped, text))
