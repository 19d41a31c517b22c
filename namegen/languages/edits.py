"""Literals that get another text, spliced into the bytes of a file."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from namegen.model.facts import Respelling
from namegen.model.places import Span


def respelt(before: bytes, respellings: Sequence[Respelling]) -> bytes:
    """Return the text with the literals changed and every other byte as it was."""
    return spliced(
        before, [(one.literal.span, one.spelling.encode("utf-8")) for one in respellings]
    )


def spliced(before: bytes, edits: Sequence[tuple[Span, bytes]]) -> bytes:
    """Return the text with each span replaced and every other byte as it was."""
    pieces: list[bytes] = []
    done = 0
    for span, text in sorted(edits, key=lambda edit: edit[0]):
        pieces += (before[done : span.start], text)
        done = span.end
    return b"".join([*pieces, before[done:]])


def moved(respellings: Sequence[Respelling]) -> Iterator[tuple[Respelling, Span]]:
    """Yield each change with the span of its literal in the text afterwards."""
    shift = 0
    for one in _ordered(respellings):
        start = one.literal.span.start + shift
        size = len(one.spelling.encode("utf-8"))
        yield one, Span(start, start + size)
        shift += size - (one.literal.span.end - one.literal.span.start)


def _ordered(respellings: Sequence[Respelling]) -> list[Respelling]:
    return sorted(respellings, key=lambda one: one.literal.span)
