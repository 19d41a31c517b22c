"""Reading values as text, whatever the language: one reader for each type of node."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Generic, TypeVar

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.sources import Source, elements, span_of
from namegen.model.facts import Expression, Join, Several, Unknown
from namegen.model.places import Span

DEEPEST = 30
"""Conditions and lists within one another, beyond which a value is not followed."""
RUN_TIME = "it is made at run time"

ScopeT = TypeVar("ScopeT")
Reader = Callable[[Source, ScopeT, Node, int], Expression]
"""Reads a node in a scope; the number is how deep it lies in the value asked for."""


class ExpressionReader(Struct, Generic[ScopeT], frozen=True):
    """Reads values of one language without following any name.

    ``reasons`` say of the types without a reader why their text is not known, and
    ``opened`` takes the brackets off a node. ``sums``, ``lists``, ``choices`` (nodes with a
    consequence and an alternative) and ``assignments`` are types that are read alike in every
    language.
    """

    readers: Mapping[str, Reader[ScopeT]]
    reasons: Mapping[str, str]
    opened: Callable[[Node], Node]
    sums: frozenset[str] = frozenset()
    lists: frozenset[str] = frozenset()
    choices: frozenset[str] = frozenset()
    assignments: frozenset[str] = frozenset()

    def __call__(
        self, source: Source, scope: ScopeT, node: Node | None, depth: int = 0
    ) -> Expression:
        """Return a value as text, or why it is not known."""
        if node is None:
            return Unknown("it is left out", Span(0, 0))
        node = self.opened(node)
        if depth > DEEPEST:
            return Unknown("it is nested too deeply to follow", span_of(node))
        reader = self.readers.get(node.type) or self._reader_of_all(node.type)
        if reader is not None:
            return reader(source, scope, node, depth + 1)
        return Unknown(self.reasons.get(node.type, RUN_TIME), span_of(node))

    def _reader_of_all(self, kind: str) -> Reader[ScopeT] | None:
        """Return what reads a type of node that all languages have."""
        if kind in self.sums:
            return self.sum
        if kind in self.lists:
            return self.sequence
        if kind in self.choices:
            return self.choice
        return self.assigned if kind in self.assignments else None

    def sum(self, source: Source, scope: ScopeT, node: Node, depth: int) -> Expression:
        """Return ``a + b + c`` as one join; any other calculation is not followed."""
        left, rights = _addends(node)
        if not rights:
            return Unknown(RUN_TIME, span_of(node))
        parts = (self(source, scope, part, depth) for part in (left, *rights))
        return Join(tuple(parts), span_of(node))

    def choice(self, source: Source, scope: ScopeT, node: Node, depth: int) -> Expression:
        """Return both values of ``a ? b : c``, one of which it will be."""
        ways = (node.child_by_field_name(name) for name in ("consequence", "alternative"))
        return Several(tuple(self(source, scope, way, depth) for way in ways), span_of(node))

    def assigned(self, source: Source, scope: ScopeT, node: Node, depth: int) -> Expression:
        """Return the value of ``a = b``, which is that of ``b``."""
        return self(source, scope, node.child_by_field_name("right"), depth)

    def sequence(self, source: Source, scope: ScopeT, node: Node, depth: int) -> Expression:
        """Return each element of a list, one of which it will be."""
        options = tuple(self(source, scope, part, depth) for part in elements(node))
        return Several(options, span_of(node), listed=True)


def _addends(node: Node) -> tuple[Node, list[Node]]:
    """Return the first and the other parts of ``a + b + c``, the node itself if it is no sum.

    A chain of sums leans left, so it is unrolled without recursion.
    """
    rights: list[Node] = []
    left = node
    while left.type == node.type:
        operator, right = left.child_by_field_name("operator"), left.child_by_field_name("right")
        inner = left.child_by_field_name("left")
        if operator is None or right is None or inner is None or operator.type != "+":
            break
        rights.append(right)
        left = inner
    return left, rights[::-1]
