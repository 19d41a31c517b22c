"""Types of Kotlin as they are written: their words, arguments and bases."""

from __future__ import annotations

import re

from tree_sitter import Node

from namegen.languages.kotlin.trees import child_of
from namegen.languages.sources import Source, elements, named_child
from namegen.model.facts import Path
from namegen.model.places import Span

_TYPE = re.compile(r"(?:[^\W\d]\w*\s*\.\s*)*([^\W\d]\w*)")
_SIGNS = frozenset({"in", "out"})


def type_words(source: Source, node: Node | None) -> Path | None:
    """Return the dotted name of a type without its arguments; None for that of a function."""
    while node is not None and node.type in {"nullable_type", "parenthesized_type"}:
        node = named_child(node, 0)
    if node is None or node.type != "user_type":
        return None
    return tuple(source.text(one) for one in elements(node) if one.type == "identifier")


def last_words(source: Source, node: Node | None) -> set[str]:
    """Return the last word of each type in a type expression: ``List<lib.Motor>`` has two."""
    found: set[str] = set()
    pending = [node] if node is not None else []
    while pending:
        one = pending.pop()
        words = type_words(source, one)
        found |= {words[-1]} if words else set()
        pending += elements(one)
    return found


def words_between(source: Source, span: Span) -> set[str]:
    """Return the last word of each type in the text of type arguments, which no tree shows."""
    text = source.data[span.start : span.end].decode("utf-8", "replace")
    return {match[1] for match in _TYPE.finditer(text)} - _SIGNS


def base_types(source: Source, node: Node) -> list[Path]:
    """Return the types that a type extends and implements."""
    listed = child_of(node, "delegation_specifiers")
    found: list[Path] = []
    for one in elements(listed):
        inner = named_child(one, 0)
        if inner is not None and inner.type in {"constructor_invocation", "explicit_delegation"}:
            inner = named_child(inner, 0)
        words = type_words(source, inner)
        found += [words] if words else []
    return found
