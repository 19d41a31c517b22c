"""Escapes for HTML."""

from __future__ import annotations

import html
import re

from namegen.targets.escapes import plain

_UNSAFE_IN_STYLE = re.compile(r"[^A-Za-z0-9 ._-]")


def text(content: str) -> str:
    """Return text for the inside of an element or of a quoted attribute."""
    return html.escape(plain.line(content))


def name(content: str) -> str:
    """Return a name that is to be typed, with each capital letter in bold."""
    return "".join(
        f"<b>{html.escape(char)}</b>" if char.isupper() else html.escape(char)
        for char in plain.line(content)
    )


def comment(content: str) -> str:
    """Return text for a comment, between other words of it."""
    return plain.line(content).replace("--", "- -").replace("<", "(").replace(">", ")")


def style(content: str) -> str:
    """Return a quoted string for a style sheet."""
    # The blank ends the escape and is no part of the text.
    quoted = _UNSAFE_IN_STYLE.sub(lambda match: f"\\{ord(match[0]):X} ", plain.line(content))
    return f'"{quoted}"'
