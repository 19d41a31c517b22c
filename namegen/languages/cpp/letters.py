"""Arrays of letters in C++, which a literal can fill and a constant cannot."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from tree_sitter import Node

from namegen.languages.cpp.classes import classes_of
from namegen.languages.cpp.declarators import INDIRECT, nested
from namegen.languages.cpp.names import dotted, is_of_letters, type_arguments
from namegen.languages.sources import Source, elements, is_field, same

_ALIASES = frozenset({"alias_declaration", "type_definition"})
_FILLED = {
    "compound_literal_expression": "value",
    "init_declarator": "value",
    "field_declaration": "default_value",
    "new_expression": "arguments",
}
"""What gives a value to something of a type, with the field of the value."""
_LOOSE = INDIRECT | {"abstract_pointer_declarator", "abstract_reference_declarator"}
_UNNAMED = frozenset(
    {"abstract_array_declarator", "abstract_function_declarator", "abstract_pointer_declarator"}
    | {"abstract_parenthesized_declarator", "abstract_reference_declarator"}
    | {"parenthesized_declarator", "reference_declarator"}
)
"""Declarators of which the grammar does not name what lies in them."""


def fills_letters(source: Source, around: Sequence[Node]) -> bool:
    """Whether a literal, with what it stands in, fills an array of letters or a part of one."""
    for place, node in enumerate(around[1:], 1):
        field = _FILLED.get(node.type)
        if field is None or around[place - 1].type in {"argument_list", "call_expression"}:
            continue
        if not any(same(one, around[place - 1]) for one in node.children_by_field_name(field)):
            continue
        statement = around[place + 1] if node.type == "init_declarator" else node
        kind = statement.child_by_field_name("type")
        ways = _ways(node.child_by_field_name("declarator"))
        directly = place == 1 and "array_declarator" in ways
        if _LOOSE.isdisjoint(ways) and (
            directly or _is_filled(source, kind, brackets="array_declarator" in ways)
        ):
            return True
    return False


def _ways(declarator: Node | None) -> set[str]:
    """Return the types of a declarator and of those within it."""
    return {one.type for one in nested(declarator, _UNNAMED)}


def _is_filled(source: Source, kind: Node | None, *, brackets: bool) -> bool:
    """Whether a text in a list of values for this type can fill an array of letters."""
    pending: list[tuple[Node | None, bool]] = [(kind, brackets)]
    seen: set[str] = set()
    while pending:
        node, is_array = pending.pop()
        if node is not None and node.type == "type_descriptor":
            ways = _ways(node.child_by_field_name("declarator"))
            if not _LOOSE.isdisjoint(ways):
                continue
            is_array = is_array or "abstract_array_declarator" in ways
            node = node.child_by_field_name("type")
        if node is None:
            continue
        if is_of_letters(source, node):
            if is_array:
                return True
            continue
        words = dotted(source, node) or ("",)
        given = type_arguments(node)
        if words[-1] == "array" and given is not None:
            pending.append((next(iter(elements(given)), None), True))
        elif words[-1] not in seen:
            seen.add(words[-1])
            pending += [(one, is_array or more) for one, more in _meant(source, words[-1])]
    return False


def _meant(source: Source, word: str) -> Iterator[tuple[Node | None, bool]]:
    """Yield the types that a name stands for in the file, or that the members of a class have.

    The second says whether it is an array of them.
    """
    for stack in source.stacks([word]):
        above = next((one for one in reversed(stack) if one.type in _ALIASES), None)
        if above is not None and not is_field(above, "type", stack[-1]):
            yield from _typed(above)
    for one in classes_of(source, word):
        for statement in one.body:
            if statement.type == "field_declaration":
                yield from _typed(statement)


def _typed(statement: Node) -> Iterator[tuple[Node | None, bool]]:
    """Yield the type of each name that a statement declares, but for pointers."""
    kind = statement.child_by_field_name("type")
    declarators: Sequence[Node | None] = statement.children_by_field_name("declarator")
    for declarator in declarators or [None]:
        ways = _ways(declarator)
        if _LOOSE.isdisjoint(ways):
            yield kind, "array_declarator" in ways
