"""Escapes for CSV (RFC 4180)."""

from __future__ import annotations

import re
from collections.abc import Iterable

from namegen.targets.unescaped import raw

_FORMULA = tuple("=+-@\t\r\n'\uff1d\uff0b\uff0d\uff20")
_QUOTED = re.compile(r'[,;"]|[^\S ]|^ | $')


def cell(text: str) -> str:
    """Return a cell that no spreadsheet takes for a formula.

    A text that begins with ``= + - @``, their full-width forms, a tab, a line
    break or an apostrophe gets an apostrophe in front; whoever reads the file
    takes one leading apostrophe away again.
    """
    if text.startswith(_FORMULA):
        text = "'" + text
    return '"' + text.replace('"', '""') + '"' if _QUOTED.search(text) else text


def joined(items: Iterable[object]) -> str:
    """Return a cell that holds several texts, with ``, `` between them."""
    return cell(", ".join(map(raw, items)))
