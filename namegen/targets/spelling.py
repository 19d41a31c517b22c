"""How to say a name aloud so that nobody types it wrongly."""

from __future__ import annotations

import re
from functools import lru_cache

_RUNS = re.compile(r"[A-Z]+|[0-9]+|[^A-Za-z0-9]")
_MARKS = {
    "_": "underscore",
    "-": "hyphen",
    " ": "blank",
    ".": "full stop",
    ":": "colon",
    "/": "slash",
    "'": "apostrophe",
    '"': "quotation mark",
    "\\": "backslash",
}


@lru_cache(maxsize=4096)
def spelling(name: str) -> str:
    """Return what is not a small letter in a name, in order.

    >>> spelling("bowThruster"), spelling("hull_temp2"), spelling("rudder")
    ('capital T', 'underscore, digit 2', 'small letters only')
    """
    said = [_said(run) for run in _RUNS.findall(name)]
    return ", ".join(said) if said else "small letters only"


def _said(run: str) -> str:
    if run.isdigit() and run.isascii():
        return f"digit {run}" if len(run) == 1 else f"digits {' '.join(run)}"
    if run.isascii() and run.isupper():
        return f"capital {run}" if len(run) == 1 else f"capitals {' '.join(run)}"
    return _MARKS.get(run) or (f"the sign {run}" if run.isprintable() else f"U+{ord(run):04X}")
