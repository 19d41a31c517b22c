"""What a looked-up device is put into in Java, and the type it is declared with."""

from __future__ import annotations

from collections.abc import Sequence

from tree_sitter import Node

from namegen.languages.java.definitions import Definitions
from namegen.languages.sources import Source, is_field

_DECLARATIONS = frozenset(
    {"field_declaration", "local_variable_declaration", "formal_parameter", "resource"}
)


def holder(source: Source, stack: Sequence[Node]) -> str | None:
    """Return the variable, field or parameter that the last node of the stack fills."""
    name = _target(stack)
    return source.text(name) if name is not None else None


def declared_type(definitions: Definitions, stack: Sequence[Node]) -> Node | None:
    """Return the type that the filled variable is declared with, or that the look-up is cast to."""
    above = stack[-2]
    if above.type == "cast_expression":
        return above.child_by_field_name("type")
    if stack[-1].type == "annotation":
        return stack[-3].child_by_field_name("type")
    return definitions.declared_type(_target(stack))


def _target(stack: Sequence[Node]) -> Node | None:
    """Return the name of what the last node of the stack is put into."""
    if stack[-1].type == "annotation":
        return _annotated(stack[-3])
    place = len(stack) - 1
    while place > 1 and stack[place - 1].type in {"parenthesized_expression", "cast_expression"}:
        place -= 1
    node, above = stack[place], stack[place - 1]
    if above.type in {"variable_declarator", "resource"}:
        value = is_field(above, "value", node)
        return above.child_by_field_name("name") if value else None
    if above.type != "assignment_expression" or not is_field(above, "right", node):
        return None
    left = above.child_by_field_name("left")
    if left is not None and left.type == "field_access":
        return left.child_by_field_name("field")
    return left if left is not None and left.type == "identifier" else None


def _annotated(declaration: Node) -> Node | None:
    """Return the name of the one variable that an annotation stands before."""
    if declaration.type not in _DECLARATIONS:
        return None
    declarators = declaration.children_by_field_name("declarator")
    if len(declarators) == 1:
        return declarators[0].child_by_field_name("name")
    return declaration.child_by_field_name("name") if not declarators else None
