"""Single cells of a chart: yes or no, an address, several texts."""

from __future__ import annotations

import re

_YES = frozenset({"yes", "y", "true", "x", "1", "on", "✓", "✔", "optional", "reversed", "reverse"})
_NO = frozenset({"", "no", "n", "false", "0", "off", "-", "forward", "normal"})
_NOTHING = frozenset(
    {"", "-", "--", "\u2013", "\u2014", "n/a", "none", "nothing"}
    | {"empty", "unused", "not used", "free"}
)
_NUMBER = re.compile(r"0x[0-9a-f]{1,8}|[0-9]{1,9}", re.IGNORECASE)
_WHOLE = re.compile(r"([0-9]{1,9})\.0")
"""A whole number as some spreadsheets write it out."""
_HEX = re.compile(r"([0-9][0-9a-f]{0,3})h", re.IGNORECASE)


def flag(cell: str) -> bool | None:
    """Return yes or no, or None where the cell says neither."""
    word = cell.strip().casefold()
    return True if word in _YES else False if word in _NO else None


def address(cell: str) -> int | None:
    """Return a bus address, decimal, ``0x3A`` or ``3Ah``, or None where the cell holds none."""
    word = _HEX.sub(r"0x\1", _WHOLE.sub(r"\1", cell.strip()))
    if not _NUMBER.fullmatch(word):
        return None
    return int(word, 16) if word[:2].lower() == "0x" else int(word)


def several(cell: str) -> tuple[str, ...]:
    """Return the texts of a cell with ``, `` between them."""
    return tuple(text for text in cell.split(", ") if text)


def nothing(cell: str) -> bool:
    """Whether a cell says that there is nothing: it is empty, ``-``, ``(empty)``, ``unused``."""
    return " ".join(cell.casefold().strip(" ()[]").split()) in _NOTHING
