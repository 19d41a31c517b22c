"""What the grammar gets wrong, written so that it gets it right, with every offset as it was.

``get<Motor>("bow")`` is a chain of comparisons for the grammar, without an error. To Kotlin
it is a call: where what stands between ``<`` and ``>`` can be types and ``(`` follows, it
takes them for types, in ``f(a < b, c > (d))`` too. So type arguments become blanks here,
and `types.py` reads them from the text itself. And a declaration that ends in the line of
its class's ``}`` is an error for the grammar: the blank before the brace becomes a line end.
"""

from __future__ import annotations

import re
from typing import Literal

_DEEPEST = 3
"""Types within one another that are told from comparisons."""
_BLANKS = rb"[ \t\r\n]*"
_WORD = rb"(?:[A-Za-z_\x80-\xff][\w\x80-\xff]*|`[^`\r\n]+`)"


def _types(depth: int) -> bytes:
    """Return the pattern of ``<A, out B?, (C) -> D>`` with so many more inside of one another."""
    inner = b"(?:%b)?" % _types(depth - 1) if depth else b""
    named = rb"%b(?:%b\.%b%b)*%b\??" % (_WORD, _BLANKS, _BLANKS, _WORD, inner)
    listed = rb"%b(?:%b,%b%b)*" % (named, _BLANKS, _BLANKS, named)
    function = rb"\(%b(?:%b)?%b\)%b->%b%b" % (_BLANKS, listed, _BLANKS, _BLANKS, _BLANKS, named)
    one = rb"(?:(?:(?:in|out)[ \t]+)?%b|\*|%b)" % (named, function)
    return rb"<%b%b(?:%b,%b%b)*%b>" % (_BLANKS, one, _BLANKS, _BLANKS, one, _BLANKS)


_ARGUMENTS = re.compile(rb"(?<=[\w\x80-\xff`])[ \t]*%b(?=[ \t]*[({])" % _types(_DEEPEST))
_CODE = re.compile(
    rb"""//[^\r\n]*|/\*|\"{3}|"|'(?:\\[^\r\n][^'\r\n]*|[^'\\\r\n])'|[{}]|"""
    rb"""(?<=[\w\x80-\xff`])[ \t]*<"""
)
_COMMENT = re.compile(rb"/\*|\*/")
_TEXT = re.compile(rb"""\\.|"|\$\{|[\r\n]""", re.DOTALL)
_RAW = re.compile(rb"""\"{3,}|\$\{""")

_Where = Literal["code", "text", "raw"]


def mended(data: bytes) -> bytes:
    """Return the text with the same offsets, in which the grammar finds what Kotlin does."""
    if b"}" not in data and b"<" not in data:
        return data
    done = bytearray(data)
    around: list[_Where] = ["code"]
    at = 0
    while at < len(data):
        match = _pattern(around[-1]).search(data, at)
        if match is None:
            break
        at = match.end()
        if around[-1] == "code":
            at = _in_code(data, done, match, around)
        elif match[0] == b"${":
            around.append("code")
        elif match[0][:1] != b"\\":  # its quotes, or the end of a line that they should stand in
            around.pop()
    return bytes(done)


def _pattern(where: _Where) -> re.Pattern[bytes]:
    return {"code": _CODE, "text": _TEXT, "raw": _RAW}[where]


def _in_code(data: bytes, done: bytearray, match: re.Match[bytes], around: list[_Where]) -> int:
    """Mend what begins at a match, and return where to go on."""
    found, at = match[0], match.start()
    if found == b"/*":
        return _after_comment(data, match.end())
    if found in (b'"', b'"""'):
        around.append("text" if found == b'"' else "raw")
    elif found == b"{":
        around.append("code")
    elif found == b"}":
        if len(around) > 1:
            around.pop()
        if around[-1] == "code" and data[at - 1 : at] in (b" ", b"\t"):
            done[at - 1] = 0x0A
    elif found.endswith(b"<"):
        types = _ARGUMENTS.match(data, at)
        if types is not None:
            done[at : types.end()] = b" " * (types.end() - at)
            return types.end()
    return match.end()


def _after_comment(data: bytes, at: int) -> int:
    """Return where a comment ends; comments of Kotlin lie within one another."""
    depth = 1
    while depth:
        match = _COMMENT.search(data, at)
        if match is None:
            return len(data)
        depth += 1 if match[0] == b"/*" else -1
        at = match.end()
    return at
