"""String literals of Python: their value, and how another value is spelt in the same quotes.

The escapes are those of the Python Language Reference, section "String and
Bytes literals" (2.4.1).
"""

from __future__ import annotations

import re
import unicodedata

from namegen.model.facts import Text

_OPENING = re.compile(r"([A-Za-z]*)('''|\"\"\"|'|\")")
_ESCAPE = re.compile(
    r"\\(?:\n|[0-7]{1,3}|x[0-9a-fA-F]{2}|u[0-9a-fA-F]{4}|U[0-9a-fA-F]{8}|N\{[^}]*\}|.)", re.DOTALL
)
_SIMPLE = {
    "\n": "",
    "\\": "\\",
    "'": "'",
    '"': '"',
    "a": "\a",
    "b": "\b",
    "f": "\f",
    "n": "\n",
    "r": "\r",
    "t": "\t",
    "v": "\v",
}
_SPELT = {"\\": "\\\\", "\n": "\\n", "\r": "\\r", "\t": "\\t"}


def prefix_and_quote(opening: str) -> tuple[str, str]:
    """Return the prefix in lower case and the quote of a literal's opening."""
    match = _OPENING.fullmatch(opening)
    return (match[1].lower(), match[2]) if match else ("?", "")


def value_of(body: str, opening: str) -> str | None:
    """Return what the text between a literal's quotes means; None where it is no text."""
    prefix, _ = prefix_and_quote(opening)
    if "b" in prefix or "t" in prefix or "?" in prefix:
        return None
    body = body.replace("\r\n", "\n").replace("\r", "\n")
    if "f" in prefix:
        body = body.replace("{{", "{").replace("}}", "}")
    if "r" in prefix or "\\" not in body:
        return body
    try:
        return _ESCAPE.sub(lambda match: _unescape(match[0][1:]), body)
    except (KeyError, ValueError, OverflowError):
        return None


def _unescape(escape: str) -> str:
    """Return what an escape means, given without its backslash."""
    first = escape[0]
    if first in _SIMPLE:
        return _SIMPLE[first]
    if first in "01234567":
        return chr(int(escape, 8))
    if first in "xuU" and len(escape) > 1:
        return chr(int(escape[1:], 16))
    if first == "N" and len(escape) > 1:
        return unicodedata.lookup(escape[2:-1])
    if first in "xuUN":
        raise ValueError("not a whole escape")
    return "\\" + escape


def spell(value: str, literal: Text) -> str | None:
    """Return the text that means ``value`` between the quotes of ``literal``, or None."""
    prefix, quote = prefix_and_quote(literal.opening)
    if not quote or set(prefix) - set("ruf"):
        return None
    spelling = value if "r" in prefix else _escaped(value, quote)
    if "f" in prefix:
        spelling = spelling.replace("{", "{{").replace("}", "}}")
    if "r" in prefix and not _fits_raw(spelling, quote):
        return None
    return spelling if value_of(spelling, literal.opening) == value else None


def _escaped(value: str, quote: str) -> str:
    """Return the value with everything escaped that would not survive between the quotes."""
    written = []
    for character in value:
        if character in _SPELT:
            written.append(_SPELT[character])
        elif character == quote[0]:
            written.append("\\" + character)
        elif character.isprintable():
            written.append(character)
        else:
            code = ord(character)
            written.append(
                f"\\x{code:02x}"
                if code < 256
                else f"\\u{code:04x}"
                if code < 65536
                else f"\\U{code:08x}"
            )
    return "".join(written)


def _fits_raw(spelling: str, quote: str) -> bool:
    """Whether a text stands in a raw literal as it is: nothing there can be escaped."""
    return quote[0] not in spelling and "\\" not in spelling and spelling.isprintable()
