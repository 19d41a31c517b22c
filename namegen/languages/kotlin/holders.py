"""What a looked-up device is put into in Kotlin, and the type it is declared with."""

from __future__ import annotations

from collections.abc import Sequence

from tree_sitter import Node

from namegen.languages.kotlin.definitions import Definitions
from namegen.languages.kotlin.trees import (
    after_sign,
    called_of,
    child_of,
    key_of,
    lambda_of,
    last_name,
    statements,
)
from namegen.languages.sources import Source, elements, is_field, same

_ASIDE = frozenset({b"also", b"apply"})
"""Functions of Kotlin's library that give what they are called on."""
_DECLARATIONS = frozenset({"property_declaration", "class_parameter", "parameter"})


def holder(source: Source, stack: Sequence[Node]) -> str | None:
    """Return the variable, property, parameter or keyword that the last node fills."""
    name = _target(stack)
    return source.text(name) if name is not None else None


def declared_type(definitions: Definitions, stack: Sequence[Node]) -> Node | None:
    """Return the type that the filled variable is declared with, or that the look-up is cast to."""
    place = len(stack) - 1
    if stack[place].type == "annotation":
        declaration = _annotated(stack)
        return _type_of(declaration) if declaration is not None else None
    while place > 0:
        above = stack[place - 1]
        if above.type == "as_expression":
            return above.child_by_field_name("right")
        if above.type == "function_body":
            return _type_of(stack[place - 2])
        if not _gives(above, stack[place]):
            break
        place -= 1
    return definitions.declared_type(_target(stack))


def _type_of(declaration: Node) -> Node | None:
    """Return the type that a property, a parameter or a function is declared with."""
    variable = child_of(declaration, "variable_declaration")
    return after_sign(variable if variable is not None else declaration, ":")


def _target(stack: Sequence[Node]) -> Node | None:
    """Return the name of what the last node of the stack is put into."""
    if stack[-1].type == "annotation":
        declaration = _annotated(stack)
        return _name_of(declaration) if declaration is not None else None
    place = len(stack) - 1
    while place > 1 and _gives(stack[place - 1], stack[place]):
        place -= 1
    node, above = stack[place], stack[place - 1]
    match above.type:
        case "property_declaration" | "class_parameter":
            return _name_of(above)
        case "function_value_parameters":  # the default of the parameter before it
            return child_of(node.prev_named_sibling, "identifier")
        case "value_argument":
            return key_of(above)
        case "assignment" if is_field(above, "right", node):
            return last_name(above.child_by_field_name("left"))
    return None


def _gives(above: Node, node: Node) -> bool:  # noqa: PLR0911 - one per form
    """Whether a node above gives just what the node gives."""
    match above.type:
        case "parenthesized_expression" | "property_delegate" | "annotated_lambda":
            return True
        case "as_expression" | "unary_expression":
            operator = above.child_by_field_name("operator")
            return operator is None or operator.type == "!!"
        case "binary_expression":
            operator = above.child_by_field_name("operator")
            left = above.child_by_field_name("left")
            return operator is not None and operator.type == "?:" and same(left, node)
        case "lambda_literal":
            return same(statements(above)[-1], node)
        case "navigation_expression":
            called = last_name(above)
            aside = called is not None and called.text in _ASIDE
            return aside and same(elements(above)[0], node)
        case "call_expression":
            return _passes(above, node)
    return False


def _passes(call: Node, node: Node) -> bool:
    """Whether a call gives what one of its parts does: ``lazy { x }``, ``x.apply { ... }``."""
    body, callee = lambda_of(call), called_of(call)
    if body is None or callee is None:
        return False
    if same(callee, node):
        return node.type in {"call_expression", "navigation_expression"}
    inner = called_of(callee) if callee.type == "call_expression" else callee
    name = last_name(inner)
    return name is not None and name.text in {b"lazy", b"run"}


def _name_of(declaration: Node) -> Node | None:
    """Return the name that a property or a parameter declares."""
    variable = child_of(declaration, "variable_declaration")
    return child_of(variable if variable is not None else declaration, "identifier")


def _annotated(stack: Sequence[Node]) -> Node | None:
    """Return the declaration that an annotation stands before."""
    above = stack[-3] if len(stack) > 2 and stack[-2].type == "modifiers" else None
    if above is not None and above.type in _DECLARATIONS:
        return above
    if stack[-2].type == "parameter_modifiers":  # beside the parameter, not in it
        after = stack[-2].next_named_sibling
        return after if after is not None and after.type == "parameter" else None
    return None
