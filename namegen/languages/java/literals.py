"""String literals of Java: their value, and how another value is spelt in the same quotes.

Unicode escapes, escapes and text blocks are those of the Java Language
Specification 17, sections 3.3, 3.10.6 and 3.10.7.
"""

from __future__ import annotations

import re

from namegen.languages.surrogates import escaped, joined
from namegen.model.facts import Text

_UNICODE = re.compile(r"\\(?:\\|u+([0-9a-fA-F]{4}))|\\u")
_ESCAPE = re.compile(r"\\(?:[0-3][0-7]{0,2}|[4-7][0-7]?|\r\n|.)", re.DOTALL)
_LINE_END = re.compile(r"\r\n|\r|\n")
_BLANK = (
    " \t\f\x0b\x1c\x1d\x1e\x1f\u1680\u2000\u2001\u2002\u2003\u2004\u2005\u2006"
    "\u2008\u2009\u200a\u2028\u2029\u205f\u3000"
)
"""What `Character.isWhitespace` holds for, but for the line ends."""
_SIMPLE = {
    "b": "\b",
    "s": " ",
    "t": "\t",
    "n": "\n",
    "f": "\f",
    "r": "\r",
    '"': '"',
    "'": "'",
    "\\": "\\",
}
_SPELT = {value: "\\" + escape for escape, value in _SIMPLE.items() if escape not in "s'"}


def value_of(body: str, opening: str) -> str | None:
    """Return what the text between a literal's quotes means; None where it cannot be told."""
    if "\\u" in body:
        translated = _translated(body)
        if translated is None:
            return None
        body = translated
    if opening != '"""' and _LINE_END.search(body):
        return None
    if opening == '"""':
        stripped = _stripped(body)
        if stripped is None:
            return None
        body = stripped
    if "\\" not in body:
        return body
    try:
        return joined(_ESCAPE.sub(lambda match: _unescape(match[0][1:]), body))
    except KeyError:
        return None


def spell(value: str, literal: Text) -> str | None:
    """Return the text that means ``value`` between the quotes of ``literal``, or None.

    A text block is laid out by hand, so it is not rewritten.
    """
    if literal.opening != '"':
        return None
    written = "".join(_spelt(character) for character in value)
    return written if value_of(written, literal.opening) == value else None


def _spelt(character: str) -> str:
    if character in _SPELT:
        return _SPELT[character]
    if character.isprintable():
        return character
    return escaped(character)


def _translated(body: str) -> str | None:
    """Return the text with unicode escapes replaced.

    None if one is a quote, a backslash or a line end: those are seen before the
    literal is, so they would end it or start an escape.
    """
    pieces: list[str] = []
    done = 0
    for match in _UNICODE.finditer(body):
        pieces.append(body[done : match.start()])
        done = match.end()
        if match[0] == "\\\\":
            pieces.append(match[0])
            continue
        character = chr(int(match[1], 16)) if match[1] else "\\"
        if character in '\\"\r\n':
            return None
        pieces.append(character)
    return joined("".join([*pieces, body[done:]]))


def _unescape(escape: str) -> str:
    """Return what an escape means, given without its backslash."""
    if escape[0] in "\r\n":
        return ""
    if escape[0] in "01234567":
        return chr(int(escape, 8))
    return _SIMPLE[escape]


def _stripped(body: str) -> str | None:
    """Return a text block without its first line end and the indentation all lines share."""
    lines = _LINE_END.split(body)
    if len(lines) < 2 or lines[0].strip(_BLANK):
        return None
    lines = lines[1:]
    counted = [line for line in lines[:-1] if line.strip(_BLANK)] + lines[-1:]
    indent = min(len(line) - len(line.lstrip(_BLANK)) for line in counted)
    return "\n".join(line[indent:].rstrip(_BLANK) for line in lines)
