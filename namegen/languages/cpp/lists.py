"""Lists of values in a C++ file that may make objects, and the types that they are given to."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.cpp.names import is_constant, last_words
from namegen.languages.sources import Source, elements, field_of

_FUNCTIONS = frozenset({"function_definition", "lambda_expression"})
_WITHIN = frozenset({"initializer_list", "initializer_pair"})
GIVEN = frozenset({"argument_list", "initializer_list"})
"""Nodes with what a variable, an object or a function is given."""
_MADE = frozenset({"compound_literal_expression", "new_expression"})
_DECLARED = frozenset({"declaration", "field_declaration", "optional_parameter_declaration"})


class GivenList(Struct, frozen=True):
    """A list of values.

    ``kinds`` are the last words of the type that it is given to as a whole, or, within other
    lists, these are; None where the code beside it does not tell.
    """

    node: Node
    kinds: frozenset[str] | None
    inner: bool
    """Whether it lies within another list."""

    @property
    def values(self) -> list[Node]:
        """What is listed, in order."""
        return elements(self.node)


@lru_cache(maxsize=64)  # one file is asked about again and again
def given_lists(source: Source) -> Sequence[GivenList]:
    """Return the lists of values in a file that are not empty, in order."""
    return [*_found(source)]


def _found(source: Source) -> Iterator[GivenList]:
    at = source.data.find(b"{")
    while at >= 0:
        brace = source.root.descendant_for_byte_range(at, at + 1)
        node = brace.parent if brace is not None else None
        if node is not None and node.type == "initializer_list" and elements(node):
            yield _given(source, node)
        at = source.data.find(b"{", at + 1)


def _given(source: Source, node: Node) -> GivenList:
    top, above = node, node.parent
    while above is not None and above.type in _WITHIN:
        top, above = above, above.parent
    kind = _kind(above)
    words = None
    if kind is not None and kind.type != "placeholder_type_specifier":
        words = frozenset(last_words(source, kind))
    return GivenList(node, words, top.id != node.id)


def _kind(above: Node | None) -> Node | None:
    """Return the type of what takes a list that stands right below a node."""
    if above is not None and above.type == "return_statement":
        while above is not None and above.type not in _FUNCTIONS:
            above = above.parent
        return field_of(above, "type")
    if above is not None and above.type == "init_declarator":
        while above is not None and above.type.endswith("declarator"):
            above = above.parent
    elif above is not None and above.type in _MADE:
        kind = above.child_by_field_name("type")
        if kind is not None and kind.text:
            return kind
        above = above.parent  # `Part part = {}` of a parameter: the parser supposes a type
    known = above is not None and above.type in _DECLARED
    return above.child_by_field_name("type") if known and above is not None else None


@lru_cache(maxsize=64)
def taken_apart(source: Source) -> frozenset[int]:
    """Return how many members objects have that get new names for these: ``auto& [a, b] = c``."""
    found: set[int] = set()
    at = source.data.find(b"[")
    while at >= 0:
        bracket = source.root.descendant_for_byte_range(at, at + 1)
        node = bracket.parent if bracket is not None else None
        above = node.parent if node is not None else None
        if node is not None and above is not None and node.type == "structured_binding_declarator":
            statement = above.parent
            while statement is not None and statement.type.endswith("declarator"):
                statement = statement.parent
            if above.type == "reference_declarator" and not is_constant(source, statement):
                found.add(len(elements(node)))
        at = source.data.find(b"[", at + 1)
    return frozenset(found)
