"""Escapes for Markdown (CommonMark, and tables as in GitHub's extension).

Bars, backslashes and angle brackets become character references, because
readers differ in how they split table cells at an escaped bar.
"""

from __future__ import annotations

import re

from namegen.targets.escapes import plain

_SPECIAL = re.compile(r"[\\|<>&`*_\[\]~#!$]")
_REFERENCES = frozenset("\\|<>&")
_SIMPLE = re.compile(r"[A-Za-z0-9_.:/-]+(?: [A-Za-z0-9_.:/-]+)*")


def text(content: str) -> str:
    """Return text for the middle of a line or for a table cell."""
    return _SPECIAL.sub(_escaped, plain.line(content))


def code(content: str) -> str:
    """Return text in a monospaced face, for the middle of a line or for a table cell."""
    if _SIMPLE.fullmatch(content):
        return f"`{content}`"
    return f"<code>{text(content)}</code>"


def _escaped(match: re.Match[str]) -> str:
    char = match[0]
    return f"&#{ord(char)};" if char in _REFERENCES else f"\\{char}"
