"""Where a long Python file can be cut, so that only the pieces that matter are parsed.

A file is cut before functions and classes at its left edge. In valid code such a line begins
a statement of the module, unless a text in three quotes, a line before that goes on, or
a decorator is in the way: there nothing is cut.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from namegen.model.places import Span

LONG = 16_384
"""Bytes from which on parsing less saves more than looking for the joints costs. Files that
people write by hand are shorter: they are parsed and judged as a whole."""

_STATEMENTS = (b"\ndef ", b"\nclass ", b"\nasync def ")
_DECORATOR = b"\n@"
_GOING_ON = (b"\\\n", b"\\\r\n")
_TOKEN = re.compile(rb"\"\"\"|'''|\"(?:[^\"\\\n]|\\[\s\S])*\"|'(?:[^'\\\n]|\\[\s\S])*'|#[^\n\r]*")


def joints(data: bytes) -> Sequence[int]:
    """Return the offsets at which a file (UTF-8, lines ended by LF) can be cut, in order."""
    if len(data) < LONG:
        return ()
    edges = sorted(
        (place + 1, mark != _DECORATOR)
        for mark in (*_STATEMENTS, _DECORATOR)
        for place in _places(data, mark)
    )
    texts = _long_texts(data)
    text = next(texts, None)
    found = []
    decorated = data.startswith(_DECORATOR[1:])
    for offset, is_statement in edges:
        while text is not None and text.end <= offset:
            text = next(texts, None)
        if text is not None and text.start < offset:
            continue
        if is_statement and not decorated and not data.endswith(_GOING_ON, 0, offset):
            found.append(offset)
        decorated = not is_statement
    return found


def _places(data: bytes, wanted: bytes) -> Iterator[int]:
    place = data.find(wanted)
    while place >= 0:
        yield place
        place = data.find(wanted, place + 1)


def _long_texts(data: bytes) -> Iterator[Span]:
    """Yield the texts in or around three quotes, the last to the file's end if it is not clear."""
    at = 0
    quotes = {quote: data.find(quote) for quote in (b'"""', b"'''")}
    while True:
        for quote, place in quotes.items():
            if 0 <= place < at:
                quotes[quote] = data.find(quote, at)
        ahead = [(place, quote) for quote, place in quotes.items() if place >= 0]
        if not ahead:
            return
        start, quote = min(ahead)
        at = _end_of_token(data, _line(data, at, start), start)
        if at == start:
            at = _end_of_text(data, start, quote)
        yield Span(start, at)


def _line(data: bytes, after: int, place: int) -> int:
    """Return where the line of a place begins, with those that go on in it by a backslash."""
    start = max(after, data.rfind(b"\n", 0, place) + 1)
    while start > after and data.endswith(_GOING_ON, 0, start):
        start = max(after, data.rfind(b"\n", 0, start - 1) + 1)
    return start


def _end_of_token(data: bytes, line: int, quotes: int) -> int:
    """Return ``quotes`` if a text begins there, else where the token ends that they lie in."""
    for token in _TOKEN.finditer(data, line):
        if token.start() >= quotes:
            break
        if _nests(data, token.start(), token.end()):
            return len(data)
        if token.end() > quotes:
            return token.end()
    return quotes


def _end_of_text(data: bytes, start: int, quote: bytes) -> int:
    end = data.find(quote, start + len(quote))
    while end >= 0 and _is_escaped(data, end):
        end = data.find(quote, end + 1)
    end = end + len(quote) if end >= 0 else len(data)
    return len(data) if _nests(data, start, end) else end


def _nests(data: bytes, start: int, end: int) -> bool:
    """Whether a text may hold texts in the same quotes, so that it does not end where it seems to.

    From Python 3.12 on an f-string may, within its braces (PEP 701).
    """
    prefix = data[max(0, start - 2) : start].lower()
    return b"f" in prefix and data.count(b"{", start, end) != data.count(b"}", start, end)


def _is_escaped(data: bytes, place: int) -> bool:
    """Whether an odd number of backslashes stands before a place."""
    before = place
    while before and data[before - 1] == ord("\\"):
        before -= 1
    return (place - before) % 2 == 1
