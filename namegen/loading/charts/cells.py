"""Single cells of a chart: yes or no, an address, several texts."""

from __future__ import annotations

import re

_YES = frozenset({"yes", "y", "true", "x", "1", "on", "✓", "✔", "optional", "reversed", "reverse"})
_NO = frozenset({"", "no", "n", "false", "0", "off", "-", "forward", "normal"})
_NUMBER = re.compile(r"0x[0-9a-f]{1,8}|[0-9]{1,9}", re.IGNORECASE)


def flag(cell: str) -> bool | None:
    """Return yes or no, or None where the cell says neither."""
    word = cell.strip().casefold()
    return True if word in _YES else False if word in _NO else None


def address(cell: str) -> int | None:
    """Return a bus address, decimal or with ``0x``, or None where the cell holds none."""
    word = cell.strip()
    if not _NUMBER.fullmatch(word):
        return None
    return int(word, 16) if word[:2].lower() == "0x" else int(word)


def several(cell: str) -> tuple[str, ...]:
    """Return the texts of a cell with ``, `` between them."""
    return tuple(text for text in cell.split(", ") if text)
