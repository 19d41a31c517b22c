"""The proof by its tree that an edited file is as sound as before and its literals are right."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any

from msgspec import Struct

from namegen.languages.edits import moved, respelt
from namegen.languages.readings import TreeReading
from namegen.model.facts import Respelling


class TreeProof(Struct, frozen=True):
    """Proves edits in one language.

    ``read`` reads a text without rules, ``value_of`` gives what stands between quotes its
    meaning, and ``literals`` are the node types of the literals.
    """

    language: str
    read: Callable[[bytes], TreeReading[Any, Any]]
    value_of: Callable[[str, str], str | None]
    literals: frozenset[str]

    def objection(
        self, before: bytes, after: bytes, respellings: Sequence[Respelling]
    ) -> str | None:
        """Return why ``after`` must not be written, or None when it is proved."""
        if after != respelt(before, respellings):
            return "something outside the names would change"
        for one in respellings:
            if self.value_of(one.spelling, one.literal.opening) != one.value:
                return f"the literal would not mean {one.value!r}"
        was, now = self.read(before), self.read(after)
        if len(now.unsound) != len(was.unsound):
            return f"the edited file would not be valid {self.language}"
        for one, span in moved(respellings):
            node = now.source.root.descendant_for_byte_range(span.start, span.end)
            while node is not None and node.type not in self.literals:
                node = node.parent
            quotes = len(one.literal.opening)
            if node is None or (node.start_byte, node.end_byte) != (
                span.start - quotes,
                span.end + quotes,
            ):
                return "the name would no longer be one literal"
        return None
