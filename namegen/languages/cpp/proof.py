"""The proof that an edited C++ file is as sound as before and its literals are right."""

from __future__ import annotations

from collections.abc import Sequence

from namegen.languages.cpp.grammar import parser
from namegen.languages.cpp.literals import closing, value_of
from namegen.languages.cpp.reading import CppReading
from namegen.languages.edits import moved, respelt
from namegen.model.facts import Respelling

_LITERALS = frozenset({"string_literal", "raw_string_literal"})


def objection(before: bytes, after: bytes, respellings: Sequence[Respelling]) -> str | None:
    """Return why ``after`` must not be written, or None when it is proved."""
    if after != respelt(before, respellings):
        return "something outside the names would change"
    for one in respellings:
        if value_of(one.spelling, one.literal.opening) != one.value:
            return f"the literal would not mean {one.value!r}"
    was, now = CppReading(before, parser(), ()), CppReading(after, parser(), ())
    if len(now.unsound) != len(was.unsound):
        return "the edited file would not be valid C++"
    for one, span in moved(respellings):
        node = now.source.root.descendant_for_byte_range(span.start, span.end)
        while node is not None and node.type not in _LITERALS:
            node = node.parent
        start = span.start - len(one.literal.opening.encode())
        end = span.end + len(closing(one.literal.opening) or "")
        if node is None or (node.start_byte, node.end_byte) != (start, end):
            return "the name would no longer be one literal"
    return None
