"""String literals of Kotlin: their value, and how another value is spelt in the same quotes.

Escapes, templates and raw strings are those of the Kotlin language specification, section
"String interpolation expressions", and of its grammar of tokens.
"""

from __future__ import annotations

import re

from namegen.languages.surrogates import escaped, joined
from namegen.model.facts import Text

RAW = '"""'
_ESCAPE = re.compile(r"\\(u[0-9a-fA-F]{4}|.?)", re.DOTALL)
_LINE_END = re.compile(r"\r\n?|\n")
_TEMPLATE = re.compile(r"\$(?=[^\W\d]|[`{])")
"""A dollar sign that does not stand for itself."""
_SIMPLE = {
    "t": "\t",
    "b": "\b",
    "n": "\n",
    "r": "\r",
    "'": "'",
    '"': '"',
    "\\": "\\",
    "$": "$",
}
_SPELT = {value: "\\" + escape for escape, value in _SIMPLE.items() if escape not in "'$"}
_PLAIN = re.compile(r'[^"$\r\n]*')
"""What means itself between three quotes, whatever stands beside it."""


def value_of(body: str, opening: str) -> str | None:
    """Return what the text between a literal's quotes means; None where it cannot be told."""
    if opening == RAW:
        return None if _TEMPLATE.search(body) else _LINE_END.sub("\n", body)
    if _LINE_END.search(body) or _TEMPLATE.search(_ESCAPE.sub(" ", body)):
        return None
    return unescaped(body)


def unescaped(body: str) -> str | None:
    """Return a part of a literal between single quotes with its escapes replaced."""
    if "\\" not in body:
        return body
    try:
        return joined(_ESCAPE.sub(lambda match: _unescape(match[1]), body))
    except KeyError:
        return None


def spell(value: str, literal: Text) -> str | None:
    """Return the text that means ``value`` between the quotes of ``literal``, or None.

    Three quotes take no escapes, so they cannot say everything.
    """
    if literal.opening == RAW:
        return value if _PLAIN.fullmatch(value) else None
    if literal.opening != '"':
        return None
    pairs = zip(value, value[1:] + '"', strict=False)
    written = "".join(_spelt(character, after) for character, after in pairs)
    return written if value_of(written, literal.opening) == value else None


def _spelt(character: str, after: str) -> str:
    if character == "$" and _TEMPLATE.match(character + after):
        return "\\$"
    if character in _SPELT:
        return _SPELT[character]
    if character.isprintable():
        return character
    return escaped(character)


def _unescape(escape: str) -> str:
    """Return what an escape means, given without its backslash."""
    return chr(int(escape[1:], 16)) if len(escape) == 5 else _SIMPLE[escape]
