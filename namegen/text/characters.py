"""What a single character is to a reader: seen or not, typed or not, and what to call it."""

from __future__ import annotations

import unicodedata

# Default_Ignorable_Code_Point of Unicode 17.0, DerivedCoreProperties.txt.
_IGNORABLE_RANGES = (
    (0x00AD, 0x00AD),
    (0x034F, 0x034F),
    (0x061C, 0x061C),
    (0x115F, 0x1160),
    (0x17B4, 0x17B5),
    (0x180B, 0x180F),
    (0x200B, 0x200F),
    (0x202A, 0x202E),
    (0x2060, 0x206F),
    (0x3164, 0x3164),
    (0xFE00, 0xFE0F),
    (0xFEFF, 0xFEFF),
    (0xFFA0, 0xFFA0),
    (0xFFF0, 0xFFF8),
    (0x1BCA0, 0x1BCA3),
    (0x1D173, 0x1D17A),
    (0xE0000, 0xE0FFF),
)
_CONTROLS = {
    "\0": "NUL",
    "\a": "BELL",
    "\b": "BACKSPACE",
    "\t": "TAB",
    "\n": "LINE FEED",
    "\r": "CARRIAGE RETURN",
    "\x1b": "ESCAPE",
    "\x7f": "DELETE",
}


def is_ignorable(char: str) -> bool:
    r"""Whether Unicode says that a renderer shows nothing for the character by default.

    >>> is_ignorable("\u200b"), is_ignorable("a")
    (True, False)
    """
    code = ord(char)
    return code >= 0xAD and any(first <= code <= last for first, last in _IGNORABLE_RANGES)


def is_visible(char: str) -> bool:
    """Whether a reader sees the character for what it is; the plain blank counts as seen.

    Not seen: control and format characters, blanks of other widths, line and
    paragraph separators, surrogates, private and unassigned code points.
    """
    return char.isprintable() and not is_ignorable(char)


def is_typeable(char: str) -> bool:
    """Whether the character is on a plain keyboard: printable ASCII."""
    return " " <= char <= "~"


def name_of(char: str) -> str:
    r"""Return Unicode's name of a character with its code point.

    >>> name_of("\u043e"), name_of("\t")
    ('CYRILLIC SMALL LETTER O (U+043E)', 'TAB (U+0009)')
    """
    fallback = {"Cc": "CONTROL", "Cs": "SURROGATE", "Co": "PRIVATE USE", "Cn": "UNASSIGNED"}
    name = _CONTROLS.get(char) or unicodedata.name(char, "")
    name = name or fallback.get(unicodedata.category(char), "CHARACTER")
    return f"{name} (U+{ord(char):04X})"
