r"""String literals of C++: their value, and how another value is spelt in the same quotes.

Escapes, prefixes and raw strings are those of ISO C++20, final draft N4861,
[lex.ccon] and [lex.string]. A narrow text is taken for UTF-8, as compilers do.
"""

from __future__ import annotations

import re

from namegen.model.facts import Text

_ESCAPE = re.compile(
    rb"\\(?:([0-7]{1,3})|x([0-9a-fA-F]+)|u([0-9a-fA-F]{4})|U([0-9a-fA-F]{8})|(\r\n|\r|\n)|(.)|)",
    re.DOTALL,
)
_OPENING = re.compile(r'(?P<prefix>u8|[uUL])?(?:(?P<raw>R)"(?P<mark>[^()\\\s"]{0,16})\(|")\Z')
_SIMPLE = {
    b"a": "\a",
    b"b": "\b",
    b"f": "\f",
    b"n": "\n",
    b"r": "\r",
    b"t": "\t",
    b"v": "\v",
    b'"': '"',
    b"'": "'",
    b"?": "?",
    b"\\": "\\",
}
_SPELT = {value: "\\" + key.decode() for key, value in _SIMPLE.items() if value not in "'?"}
_UNITS = {"u": 0x10000, "U": 0x110000, "L": 0x110000}


def closing(opening: str) -> str | None:
    """Return what ends a literal that is opened so, or None if that opens none."""
    match = _OPENING.match(opening)
    if match is None:
        return None
    return f'){match["mark"]}"' if match["raw"] else '"'


def value_of(body: str, opening: str) -> str | None:
    """Return what the text between a literal's quotes means; None where it cannot be told."""
    match = _OPENING.match(opening)
    if match is None:
        return None
    if match["raw"]:
        return re.sub("\r\n?", "\n", body) if f'){match["mark"]}"' not in body else None
    if "\\" not in body:
        return None if re.search('["\r\n]', body) else body
    return _unescaped(body.encode("utf-8", "surrogatepass"), match["prefix"] or "")


def _unescaped(body: bytes, prefix: str) -> str | None:
    """Return a text with escapes; those with numbers give bytes, or units of a wide text."""
    pieces: list[bytes] = []
    done = 0
    for match in _ESCAPE.finditer(body):
        between = body[done : match.start()]
        value = _escaped(match, _UNITS.get(prefix, 0x100), wide=prefix in _UNITS)
        if value is None or re.search(rb'["\r\n]', between):
            return None
        pieces += (between, value)
        done = match.end()
    if re.search(rb'["\r\n]', body[done:]):
        return None
    try:
        return b"".join([*pieces, body[done:]]).decode("utf-8")
    except UnicodeDecodeError:
        return None


def _escaped(  # noqa: PLR0911 - one per form
    match: re.Match[bytes], units: int, *, wide: bool
) -> bytes | None:
    """Return the bytes in UTF-8 that an escape stands for."""
    octal, hexadecimal, short, long, line_end, other = match.groups()
    if line_end is not None:
        return b""
    if other is not None:
        simple = _SIMPLE.get(other)
        return simple.encode() if simple is not None else None
    number = int(octal, 8) if octal else int(hexadecimal or short or long or b"-1", 16)
    if number < 0:
        return None
    if octal or hexadecimal:
        if number >= units:
            return None
        if not wide:
            return bytes([number])
    if 0xD800 <= number < 0xE000 or number > 0x10FFFF:
        return None
    return chr(number).encode()


def spell(value: str, literal: Text) -> str | None:
    """Return the text that means ``value`` between the quotes of ``literal``, or None."""
    match = _OPENING.match(literal.opening)
    if match is None or "\0" in value:  # most code would take the text to end there
        return None
    if match["raw"]:
        written = value if all(map(str.isprintable, value)) else ""
    else:
        written = "".join(map(_spelt, value))
    return written if value_of(written, literal.opening) == value else None


def _spelt(character: str) -> str:
    if character in _SPELT:
        return _SPELT[character]
    if character.isprintable():
        return character
    code = ord(character)
    if code < 0x80:
        return f"\\{code:03o}"
    return f"\\u{code:04x}" if code < 0x10000 else f"\\U{code:08x}"
