"""The proof that an edited Java file is as sound as before and its literals are right."""

from __future__ import annotations

from collections.abc import Sequence

from namegen.languages.edits import moved, respelt
from namegen.languages.java.grammar import parser
from namegen.languages.java.literals import value_of
from namegen.languages.java.reading import JavaReading
from namegen.model.facts import Respelling


def objection(before: bytes, after: bytes, respellings: Sequence[Respelling]) -> str | None:
    """Return why ``after`` must not be written, or None when it is proved."""
    if after != respelt(before, respellings):
        return "something outside the names would change"
    for one in respellings:
        if value_of(one.spelling, one.literal.opening) != one.value:
            return f"the literal would not mean {one.value!r}"
    was, now = JavaReading(before, parser(), ()), JavaReading(after, parser(), ())
    if len(now.unsound) != len(was.unsound):
        return "the edited file would not be valid Java"
    for one, span in moved(respellings):
        node = now.source.root.descendant_for_byte_range(span.start, span.end)
        while node is not None and node.type != "string_literal":
            node = node.parent
        quotes = len(one.literal.opening)
        if node is None or (node.start_byte, node.end_byte) != (
            span.start - quotes,
            span.end + quotes,
        ):
            return "the name would no longer be one literal"
    return None
