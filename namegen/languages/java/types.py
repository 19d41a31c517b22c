"""Types of Java as they are written: their words, arguments and bases."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.sources import Source, elements, named_child
from namegen.model.facts import Path

_AROUND_TYPES = frozenset(
    {"array_type", "class_literal", "generic_type", "type_arguments", "wildcard"}
)


def type_words(source: Source, node: Node | None) -> Path | None:
    """Return the dotted name of a type without its arguments; None for an array or ``var``."""
    words: list[str] = []
    while node is not None and node.type in {"generic_type", "scoped_type_identifier"}:
        parts = elements(node)
        if node.type == "scoped_type_identifier":
            words.append(source.text(parts[-1]))
        node = parts[0]
    if node is None or node.type not in {"type_identifier", "identifier"}:
        return None
    word = source.text(node)
    return None if word == "var" and not words else (word, *reversed(words))


def type_arguments(node: Node | None) -> Node | None:
    """Return the ``<...>`` of a type or a call."""
    if node is None:
        return None
    if node.type == "generic_type":
        return next((one for one in node.named_children if one.type == "type_arguments"), None)
    return node.child_by_field_name("type_arguments")


def last_words(source: Source, node: Node | None) -> set[str]:
    """Return the last word of each type in a type expression: ``List<lib.Motor>`` has two."""
    found: set[str] = set()
    pending = [node] if node is not None else []
    while pending:
        one = pending.pop()
        words = type_words(source, one)
        found |= {words[-1]} if words else set()
        pending += elements(one) if one.type in _AROUND_TYPES else []
    return found


def base_types(source: Source, node: Node) -> list[Path]:
    """Return the types that a type extends and implements, or that an object is made of."""
    if node.type == "object_creation_expression":
        words = type_words(source, node.child_by_field_name("type"))
        return [words] if words else []
    found: list[Path] = []
    for child in node.named_children:
        if child.type in {"superclass", "super_interfaces", "extends_interfaces"}:
            for base in elements(child):
                listed = elements(base) if base.type == "type_list" else [base]
                found += [words for one in listed if (words := type_words(source, one))]
    return found


def modifiers_of(source: Source, declaration: Node) -> set[str]:
    """Return the words and annotations that stand before a declaration: ``private``, ``final``."""
    first = named_child(declaration, 0)
    return set(source.text(first).split()) if first and first.type == "modifiers" else set()
