"""Escapes for CSV (RFC 4180)."""

from __future__ import annotations

import re

_FORMULA = tuple("=+-@\t\r\n'\uff1d\uff0b\uff0d\uff20")
_QUOTED = re.compile(r'[,;"\s]|^$')


def cell(text: str) -> str:
    """Return a cell that no spreadsheet takes for a formula.

    A text that begins with ``= + - @``, their full-width forms, a tab, a line
    break or an apostrophe gets an apostrophe in front; whoever reads the file
    takes one leading apostrophe away again.
    """
    if text.startswith(_FORMULA):
        text = "'" + text
    if text and not _QUOTED.search(text):
        return text
    return '"' + text.replace('"', '""') + '"' if text else ""
