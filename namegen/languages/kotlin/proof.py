"""The proof that an edited Kotlin file is as sound as before and its literals are right."""

from __future__ import annotations

from collections.abc import Sequence

from namegen.languages.edits import moved, respelt
from namegen.languages.kotlin.grammar import parser
from namegen.languages.kotlin.literals import value_of
from namegen.languages.kotlin.reading import KotlinReading
from namegen.model.facts import Respelling

LITERALS = frozenset({"string_literal", "multiline_string_literal"})


def objection(before: bytes, after: bytes, respellings: Sequence[Respelling]) -> str | None:
    """Return why ``after`` must not be written, or None when it is proved."""
    if after != respelt(before, respellings):
        return "something outside the names would change"
    for one in respellings:
        if value_of(one.spelling, one.literal.opening) != one.value:
            return f"the literal would not mean {one.value!r}"
    was, now = KotlinReading(before, parser(), ()), KotlinReading(after, parser(), ())
    if len(now.unsound) != len(was.unsound):
        return "the edited file would not be valid Kotlin"
    for one, span in moved(respellings):
        node = now.source.root.descendant_for_byte_range(span.start, span.end)
        while node is not None and node.type not in LITERALS:
            node = node.parent
        quotes = len(one.literal.opening)
        if node is None or (node.start_byte, node.end_byte) != (
            span.start - quotes,
            span.end + quotes,
        ):
            return "the name would no longer be one literal"
    return None
