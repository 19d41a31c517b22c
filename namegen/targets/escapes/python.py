"""Escapes for Python source."""

from __future__ import annotations

import re

from namegen.targets.escapes import plain

_SPECIAL = re.compile(r"[^ -~]|\\")


def string(text: str) -> str:
    """Return a string literal in ASCII, with the quotes that a formatter would choose."""
    body = _SPECIAL.sub(_escaped, text)
    if body.count('"') > body.count("'"):
        return "'" + body.replace("'", "\\'") + "'"
    return '"' + body.replace('"', '\\"') + '"'


def doc(text: str) -> str:
    """Return text for the inside of a triple double-quoted docstring, on one line."""
    return plain.line(text).replace("\\", "\\\\").replace('"', '\\"')


def _escaped(match: re.Match[str]) -> str:
    return match[0].encode("unicode_escape").decode("ascii")
