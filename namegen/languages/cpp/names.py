"""Names of C++ as they are written: ``a::b``, ``a.b``, ``this->b``, types with their arguments."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.sources import Source, elements, same
from namegen.model.facts import Path

_LEAVES = frozenset(
    {"identifier", "field_identifier", "type_identifier", "namespace_identifier", "this"}
)
_TEMPLATES = frozenset({"template_type", "template_function", "template_method"})
_TYPES = frozenset(
    {"template_argument_list", "type_descriptor", "qualified_identifier", *_TEMPLATES}
)


def dotted(source: Source, node: Node | None) -> Path | None:  # noqa: PLR0911 - one per form
    """Return the words of ``a::b``, ``a.b`` or ``this->b``, or None where it is anything else.

    Template arguments are left out; the first word of ``::a`` is empty.
    """
    if node is None:
        return None
    if node.type in _LEAVES:
        return (source.text(node),)
    if node.type in _TEMPLATES:
        return dotted(source, node.child_by_field_name("name"))
    if node.type == "dependent_name":
        return dotted(source, next(iter(elements(node)), None))
    if node.type == "nested_namespace_specifier":
        return tuple(word for one in elements(node) for word in dotted(source, one) or ())
    if node.type == "qualified_identifier":
        return _qualified(source, node)
    if node.type == "field_expression":
        before = dotted(source, node.child_by_field_name("argument"))
        after = dotted(source, node.child_by_field_name("field"))
        return (*before, *after) if before and after else None
    return None


def _qualified(source: Source, node: Node) -> Path | None:
    """Return the words of a name with ``::``, whose tree leans right, without recursion."""
    words: list[str] = []
    last: Node | None = node
    while last is not None and last.type == "qualified_identifier":
        scope = last.child_by_field_name("scope")
        before = dotted(source, scope) if scope is not None else ("",)
        if before is None:
            return None
        words += before
        last = last.child_by_field_name("name")
    after = dotted(source, last)
    return (*words, *after) if after else None


def whole_name(node: Node) -> Node:
    """Return the ``a::b::c`` that a node is the end of, or the node itself."""
    above = node.parent
    while (
        above is not None
        and above.type == "qualified_identifier"
        and same(above.child_by_field_name("name"), node)
    ):
        node, above = above, above.parent
    return node


def type_words(source: Source, node: Node | None) -> Path | None:
    """Return the dotted name of a type without its arguments; None for ``auto`` and ``int``."""
    if node is not None and node.type == "type_descriptor":
        node = node.child_by_field_name("type")
    return dotted(source, node)


def last_words(source: Source, node: Node | None) -> set[str]:
    """Return the last word of each type: ``std::unique_ptr<lib::Motor>`` has two."""
    if node is None:
        return set()
    words = type_words(source, node)
    found = {words[-1]} if words else set()
    if node.type in _TYPES:
        for child in elements(node):
            if child.type in _TYPES or child.type == "type_identifier":
                inner = last_words(source, child)
                found |= inner if child.type != "namespace_identifier" else set()
    return found


def type_arguments(node: Node | None) -> Node | None:
    """Return the ``<...>`` of a type, or of what is called."""
    while node is not None and node.type not in _TEMPLATES:
        if node.type == "qualified_identifier":
            node = node.child_by_field_name("name")
        elif node.type == "field_expression":
            node = node.child_by_field_name("field")
        elif node.type == "dependent_name":
            node = next(iter(elements(node)), None)
        else:
            return None
    return node.child_by_field_name("arguments") if node is not None else None


def base_types(source: Source, node: Node) -> list[Path]:
    """Return the types that a class is derived from."""
    clause = next((one for one in node.named_children if one.type == "base_class_clause"), None)
    bases = elements(clause) if clause is not None else []
    return [words for one in bases if (words := type_words(source, one))]
