"""What a looked-up device is put into in C++, and the type it is declared with."""

from __future__ import annotations

from collections.abc import Sequence

from tree_sitter import Node

from namegen.languages.cpp.declarators import STATEMENTS
from namegen.languages.cpp.definitions import Definitions
from namegen.languages.cpp.lists import GIVEN
from namegen.languages.cpp.names import dotted
from namegen.languages.sources import Source, elements, field_of, is_field

_SAME_VALUE = frozenset({"parenthesized_expression", "cast_expression", "pointer_expression"})
_CASTS = frozenset({"const_cast", "dynamic_cast", "move", "reinterpret_cast", "static_cast"})
_INNER = ("declarator", "name")


def holder(source: Source, stack: Sequence[Node]) -> str | None:
    """Return the variable, member or parameter that the last node of the stack fills."""
    name = _target(source, stack)
    return source.text(name) if name is not None else None


def declared_type(source: Source, definitions: Definitions, stack: Sequence[Node]) -> Node | None:
    """Return the type that the filled variable is declared with, or that the look-up is cast to."""
    cast = _cast_type(source, stack)
    if cast is not None:
        return cast
    return definitions.declared_type(_target(source, stack))


def _cast_type(source: Source, stack: Sequence[Node]) -> Node | None:
    """Return the type of ``(Motor&) x`` and of ``static_cast<Motor&>(x)``, x being the last."""
    above = stack[-2]
    if above.type == "cast_expression":
        return above.child_by_field_name("type")
    call = stack[-3] if above.type == "argument_list" and len(stack) > 3 else None
    if call is None or not _is_cast(source, call):
        return None
    called = call.child_by_field_name("function")
    return field_of(called, "arguments")


def _is_cast(source: Source, call: Node) -> bool:
    words = dotted(source, call.child_by_field_name("function"))
    return call.type == "call_expression" and words is not None and words[-1] in _CASTS


def _target(source: Source, stack: Sequence[Node]) -> Node | None:
    """Return the name of what the last node of the stack is put into."""
    place = len(stack) - 1
    node = stack[place]
    if node.type in {"function_declarator", "init_declarator", *STATEMENTS}:
        return _declared_name(node) if len(_declarators(node)) < 2 else None
    if node.type == "initializer_list":  # one of several
        return None
    if node.type == "field_initializer":
        return node.named_children[0]
    while place > 1:
        above = stack[place - 1]
        listed = above.type in GIVEN and len(elements(above)) == 1
        if listed and stack[place - 2].type == "call_expression":
            if not _is_cast(source, stack[place - 2]):
                return None
            place -= 2
        elif above.type in _SAME_VALUE or listed:
            place -= 1
        else:
            break
    return _filled(stack[place - 1], stack[place]) if place else None


def _filled(above: Node, node: Node) -> Node | None:  # noqa: PLR0911 - one per form
    """Return the name that a statement or a constructor's list fills with a node."""
    if above.type == "field_initializer":
        return above.named_children[0]
    if above.type == "init_declarator":
        return _declared_name(above) if is_field(above, "value", node) else None
    if above.type == "field_declaration":
        return _declared_name(above) if len(_declarators(above)) == 1 else None
    if above.type == "declaration":
        return _declared_name(above) if is_field(above, "value", node) else None
    left = above.child_by_field_name("left")
    if above.type != "assignment_expression" or not is_field(above, "right", node):
        return None
    if left is not None and left.type == "field_expression":
        return left.child_by_field_name("field")
    return left if left is not None and left.type == "identifier" else None


def _declarators(statement: Node) -> list[Node]:
    return statement.children_by_field_name("declarator")


def _declared_name(node: Node) -> Node | None:
    """Return the name inside a declarator; None where it is that of a list of several."""
    found: Node | None = node
    while found is not None and found.type not in {"identifier", "field_identifier"}:
        if found.type in {"array_declarator", "structured_binding_declarator"}:
            return None
        inner = (found.child_by_field_name(field) for field in _INNER)
        last = found.named_children[-1] if found.type == "reference_declarator" else None
        found = next((one for one in inner if one is not None), last)
    return found
