"""What the grammar gets wrong, written so that it gets it right, with every offset as it was.

``get<Motor>("bow")`` is a chain of comparisons for the grammar, without an error. To Kotlin
it is a call: where what stands between ``<`` and ``>`` can be types and ``(`` follows, it
takes them for types, in ``f(a < b, c > (d))`` too. So type arguments become blanks here,
and `types.py` reads them from the text itself. ``boat.`motor` `` is another word than ``motor`` for
it: back-ticks become blanks where the word needs none. And a declaration that ends in the line of
its class's ``}`` is an error for the grammar: the blank before the brace becomes a line end.
``!motor("bow")`` is a call of ``!motor`` for it: the sign becomes a blank before a call or
a subscript without a receiver. Quotes that are not closed would go on over the lines: they
are closed at the end of theirs.
"""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Literal

from msgspec import Struct

from namegen.languages.kotlin.type_arguments import end_of_types
from namegen.model.places import Span

_PLAIN = re.compile(rb"[A-Za-z_\x80-\xff][\w\x80-\xff]*")
_KEYWORDS = frozenset(
    b"as break class continue do else false for fun if in interface is null object package "
    b"return super this throw true try typealias typeof val var when while".split()
)
"""Words that are no names without back-ticks (Kotlin documentation, Hard keywords)."""
_WORD = rb"(?:[A-Za-z_\x80-\xff][\w\x80-\xff]*|`[^`\r\n]+`)"
_OPENS = re.compile(rb"[ \t]*[({]")
_CALL = rb"(?=%b[ \t]*[(<\[])" % _WORD
_STARTS = rb"(?:(?<=[=(,\[{&|<>*/%:?;\r\n])[ \t]*|\b(?:else|in|return|throw)[ \t]+)"
"""What stands before a minus that takes nothing from anything."""
_PREFIX = b"|".join((rb"!(?!(?:in|is)\b)" + _CALL, _STARTS + b"[-+]" + _CALL))
_CODE = re.compile(
    rb"""//[^\r\n]*|/\*|\"{3}|"|'(?:\\[^\r\n][^'\r\n]*|[^'\\\r\n])'|[{}]|"""
    rb"""(?<=[\w\x80-\xff`])[ \t]*<|`[^`\r\n]+`|!!|""" + _PREFIX
)
_COMMENT = re.compile(rb"/\*|\*/")
_TEXT = re.compile(rb"""\\[^\r\n]|"|\$\{|[\r\n]""")
_RAW = re.compile(rb"""\"{3,}|\$\{""")
_PATTERNS = {"code": _CODE, "text": _TEXT, "raw": _RAW}


def is_plain(word: bytes) -> bool:
    """Whether a name may stand without back-ticks, so that it is the same name with them."""
    return _PLAIN.fullmatch(word) is not None and word not in _KEYWORDS


class Mended(Struct, frozen=True):
    """A text that the grammar reads as Kotlin does, and where quotes are not closed in it."""

    text: bytes
    unclosed: tuple[Span, ...] = ()


@lru_cache(maxsize=2)  # whoever parses a text asks for it, and whoever tells what is sound
def mended(data: bytes) -> Mended:
    """Return the text with the same offsets, in which the grammar finds what Kotlin does."""
    return _Mending(data).run()


class _Mending:
    """Goes through a text once, knowing whether it is in code or in which quotes."""

    def __init__(self, data: bytes) -> None:
        self.data = data
        self.done = bytearray(data)
        self.around: list[tuple[Literal["code", "text", "raw"], int]] = [("code", 0)]
        self.unclosed: list[Span] = []

    def run(self) -> Mended:
        at = 0
        while match := _PATTERNS[self.around[-1][0]].search(self.data, at):
            at = self._in_code(match) if self.around[-1][0] == "code" else self._in_quotes(match)
        return Mended(bytes(self.done), tuple(self.unclosed))

    def _in_quotes(self, match: re.Match[bytes]) -> int:
        """Take note of a template or of the end of the quotes, and return where to go on."""
        if match[0] == b"${":
            self.around.append(("code", match.start()))
        elif match[0][:1] != b"\\":
            _, start = self.around.pop()
            if match[0] in (b"\r", b"\n"):
                self._close(start, match.start())
        return match.end()

    def _close(self, start: int, end: int) -> None:
        """Close quotes at the end of their line, so that the next lines are read."""
        self.unclosed.append(Span(start, end))
        self.done[end - 1] = ord('"') if end - start > 1 else ord("0")

    def _in_code(self, match: re.Match[bytes]) -> int:
        """Mend what begins at a match, and return where to go on."""
        found, at = match[0], match.start()
        if found == b"/*":
            return _after_comment(self.data, match.end())
        if found in (b'"', b'"""'):
            self.around.append(("text" if found == b'"' else "raw", at))
        elif found == b"{":
            self.around.append(("code", at))
        elif found == b"}":
            if len(self.around) > 1:
                self.around.pop()
            if self.around[-1][0] == "code" and self.data[at - 1 : at] in (b" ", b"\t"):
                self.done[at - 1] = 0x0A
        elif found.endswith(b"<"):
            end = end_of_types(self.data, match.end())
            if end is not None and _OPENS.match(self.data, end):
                self.done[at:end] = b" " * (end - at)
                return end
        elif found[:1] == b"`" and is_plain(found[1:-1]):
            self.done[at] = self.done[match.end() - 1] = 0x20
        elif found[-1:] in (b"!", b"-", b"+") and found != b"!!":
            self.done[match.end() - 1] = 0x20
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
