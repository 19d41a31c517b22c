"""Stretches of a file that could not be parsed, and stretches that touch one another."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby

from tree_sitter import Node

from namegen.languages.sources import LETTERS, Source, span_of
from namegen.model.places import Span


def unsound(source: Source, simple: frozenset[str], whole: frozenset[str]) -> tuple[Span, ...]:
    """Return what was not parsed without an error, widened to the simple statement around it.

    ``simple`` are the node types of statements that hold no others, ``whole``
    those of the statements and declarations that do: such a node without an
    error is sound even if the parser lost what is around it.
    """
    spans: list[Span] = []
    pending: list[tuple[Node, Span | None]] = [
        (root, None) for root in source.trees if root.has_error
    ]
    while pending:
        node, around = pending.pop()
        if node.type in simple:
            around = span_of(node)
        elif node.type in whole:
            around = None
        if node.is_missing or (node.is_error and around is not None):
            spans.append(around or span_of(node))
            continue
        sound = simple | whole if node.is_error else None
        spans += _runs(node, sound) if sound is not None else []
        spans += _skipped(source, node) if node.is_error or node.parent is None else []
        for child in node.children:
            if child.has_error and (sound is None or child.type in sound):
                whose = None if node.type in whole else around or span_of(node)
                pending.append((child, whose if child.is_missing else around))
    return merged(spans)


def _skipped(source: Source, error: Node) -> Iterator[Span]:
    """Yield what the parser passed over after an error: words of which the tree has no node."""
    ends = [error.start_byte, *(child.end_byte for child in error.children)]
    starts = [*(child.start_byte for child in error.children), error.end_byte]
    for start, end in zip(ends, starts, strict=True):
        text = source.data[start:end].strip()
        if not LETTERS.isdisjoint(text):
            at = source.data.index(text, start)
            yield Span(at, at + len(text))


def _runs(error: Node, sound: frozenset[str]) -> Iterator[Span]:
    """Yield the stretches of an error node between the statements in it that are whole."""
    if not error.child_count:
        yield span_of(error)
    for is_sound, run in groupby(error.children, key=lambda child: child.type in sound):
        if not is_sound:
            nodes = list(run)
            yield Span(nodes[0].start_byte, nodes[-1].end_byte)


def merged(spans: Iterable[Span]) -> tuple[Span, ...]:
    """Return spans in order, with those that touch or overlap made one."""
    joined: list[Span] = []
    for span in sorted(spans):
        if joined and span.start <= joined[-1].end:
            joined[-1] = Span(joined[-1].start, max(joined[-1].end, span.end))
        else:
            joined.append(span)
    return tuple(joined)


def touches(spans: Sequence[Span], span: Span) -> bool:
    """Whether one of the merged spans overlaps a span."""
    place = bisect_left(spans, span.end, key=lambda one: one.start)
    return place > 0 and spans[place - 1].end > span.start
