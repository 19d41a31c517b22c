"""The proof by its tree that an edited file is as sound as before and its literals are right."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.edits import moved, respelt
from namegen.languages.readings import TreeReading
from namegen.languages.sources import Source
from namegen.model.facts import Respelling
from namegen.model.places import Span


def _whole(source: Source, _literal: Span) -> Node:
    return source.root


class TreeProof(Struct, frozen=True):
    """Proves edits in one language.

    ``read`` reads a text without rules, ``value_of`` gives what stands between quotes its
    meaning, and ``literals`` are the node types of the literals. ``closing`` gives the quotes
    that end a literal by those that open it, and ``root_around`` the root of the tree in which
    a literal lies.
    """

    language: str
    read: Callable[[bytes], TreeReading[Any, Any]]
    value_of: Callable[[str, str], str | None]
    literals: frozenset[str]
    closing: Callable[[str], str | None] = str
    root_around: Callable[[Source, Span], Node] = _whole

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
            root = self.root_around(now.source, span)
            node = root.descendant_for_byte_range(span.start, span.end)
            while node is not None and node.type not in self.literals:
                node = node.parent
            start = span.start - len(one.literal.opening.encode())
            end = span.end + len((self.closing(one.literal.opening) or "").encode())
            if node is None or (node.start_byte, node.end_byte) != (start, end):
                return "the name would no longer be one literal"
        return None
