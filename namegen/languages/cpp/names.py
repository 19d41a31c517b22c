"""Names of C++ as they are written: ``a::b``, ``a.b``, ``this->b``, types with their arguments."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.sources import Source, elements, field_of, is_field
from namegen.model.facts import Path

_LEAVES = frozenset(
    {"identifier", "field_identifier", "type_identifier", "namespace_identifier", "this"}
)
_TEMPLATES = frozenset({"template_type", "template_function", "template_method"})
_TYPES = frozenset(
    {"template_argument_list", "type_descriptor", "qualified_identifier", *_TEMPLATES}
)
_LETTERS = frozenset({"char", "char16_t", "char32_t", "char8_t", "wchar_t"})
LETTERS = "char"
"""What stands for all types of letters as the last word of a path."""
_FIELDS = {
    **dict.fromkeys(_TEMPLATES, ("name",)),
    "qualified_identifier": ("scope", "name"),
    "field_expression": ("argument", "field"),
}
"""The fields in which names stand that make a longer one, in their order."""


def dotted(source: Source, node: Node | None) -> Path | None:
    """Return the words of ``a::b``, ``a.b`` or ``this->b``, or None where it is anything else.

    Template arguments are left out; the first word of ``::a`` is empty. There is no limit to
    how many words a name has, so nothing here calls itself.
    """
    words: list[str] = []
    pending = [node]
    while pending:
        one = pending.pop()
        if one is None:
            return None
        if one.type in _LEAVES:
            words.append(source.text(one))
        elif one.type == "qualified_identifier" and one.child_by_field_name("scope") is None:
            words.append("")
            pending.append(one.child_by_field_name("name"))
        else:
            parts = _parts(one)
            if not parts:
                return None
            pending += reversed(parts)
    return tuple(words)


def _parts(node: Node) -> list[Node | None]:
    """Return the names that a longer name consists of; none where it is no name."""
    if node.type in _FIELDS:
        return [node.child_by_field_name(field) for field in _FIELDS[node.type]]
    if node.type == "nested_namespace_specifier":
        return [*elements(node)]
    return [*elements(node)[:1]] if node.type == "dependent_name" else []


def whole_name(node: Node) -> Node:
    """Return the ``a::b::c`` that a node is the end of, or the node itself."""
    above = node.parent
    while (
        above is not None and above.type == "qualified_identifier" and is_field(above, "name", node)
    ):
        node, above = above, above.parent
    return node


def type_words(source: Source, node: Node | None) -> Path | None:
    """Return the dotted name of a type without its arguments; None for ``auto`` and ``int``."""
    if node is not None and node.type == "type_descriptor":
        node = node.child_by_field_name("type")
    return dotted(source, node)


def is_of_letters(source: Source, node: Node | None) -> bool:
    """Whether a type is one of letters, without the ``*`` or ``[]`` beside it."""
    if node is not None and node.type == "type_descriptor":
        node = node.child_by_field_name("type")
    if node is None or node.type not in {"primitive_type", "sized_type_specifier"}:
        return False
    return not _LETTERS.isdisjoint(source.text(node).split())


def is_constant(source: Source, node: Node | None) -> bool:
    """Whether a declaration, a type or a ``*`` says itself that it is constant."""
    qualified = node.children if node is not None else []
    words = (source.text(one) for one in qualified if one.type == "type_qualifier")
    return not {"const", "constexpr"}.isdisjoint(words)


def last_words(source: Source, node: Node | None) -> set[str]:
    """Return the last word of each type: ``std::unique_ptr<lib::Motor>`` has two."""
    found: set[str] = set()
    pending = [node] if node is not None else []
    while pending:
        one = pending.pop()
        words = type_words(source, one)
        found |= {words[-1]} if words else set()
        if one.type in _TYPES:
            inner = elements(one)
            pending += [each for each in inner if each.type in {"type_identifier", *_TYPES}]
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
    return field_of(node, "arguments")
