"""Where C++ changes what a variable holds without assigning to it."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.cpp.names import dotted
from namegen.languages.sources import Source, Stack, same

_METHODS = frozenset(
    {"append", "assign", "clear", "emplace", "emplace_back", "erase", "fill", "insert", "pop_back"}
    | {"push_back", "replace", "resize", "swap"}
    | {"concat", "remove", "setCharAt", "toLowerCase", "toUpperCase", "trim"}
)
"""Methods that change a text or a list; those of the last row are usual on small boards."""
_FUNCTIONS = frozenset(
    {"exchange", "getline", "memcpy", "memmove", "memset", "ref", "sort", "sscanf", "strcat"}
    | {"strcpy", "strncat", "strncpy", "strtok", "sprintf", "snprintf", "swap", "vsnprintf"}
    | {"strlcat", "strlcpy", "strcpy_s", "strcat_s", "sprintf_s"}
)
"""Functions of the C and C++ libraries that change what they are given."""

_AROUND = frozenset({"parenthesized_expression", "qualified_identifier"})


def alters(source: Source, stack: Stack) -> bool:  # noqa: PLR0911 - one per form
    """Whether the use of a variable that the stack leads to may change what it holds.

    What a function of the program does with a reference that it is given is not looked at.
    """
    place = _whole(stack)
    node, above = stack[place], stack[place - 1]
    match above.type:
        case "update_expression":
            return True
        case "assignment_expression":  # of an element; else it is an assignment like others
            return node.type == "subscript_expression" and same(_field(above, "left"), node)
        case "pointer_expression":
            return _sign(above) == "&"
        case "binary_expression":
            return _sign(above) == ">>" and same(_field(above, "right"), node)
        case "init_declarator":
            return same(_field(above, "value"), node) and _refers(stack[place - 2], above)
        case "field_expression":
            return _text(source, _field(above, "field")) in _METHODS and (
                stack[place - 2].type == "call_expression"
            )
        case "argument_list":
            called = dotted(source, _field(stack[place - 2], "function"))
            return called is not None and called[-1] in _FUNCTIONS
    return False


def _whole(stack: Stack) -> int:
    """Return where the variable stands as a whole: ``boat.names[2]``, ``space::name``."""
    place = len(stack) - 1
    while place > 2:
        above = stack[place - 1]
        of_object = above.type == "field_expression" and same(_field(above, "field"), stack[place])
        of_list = above.type == "subscript_expression" and same(
            _field(above, "argument"), stack[place]
        )
        if not (of_object or of_list or above.type in _AROUND):
            break
        place -= 1
    return place


def _refers(statement: Node, declarator: Node) -> bool:
    """Whether a declaration makes another name through which the variable can be changed."""
    named = _field(declarator, "declarator")
    is_constant = any(child.type == "type_qualifier" for child in statement.children)
    return named is not None and named.type == "reference_declarator" and not is_constant


def _field(node: Node, name: str) -> Node | None:
    return node.child_by_field_name(name)


def _sign(node: Node) -> str:
    operator = _field(node, "operator")
    return operator.type if operator is not None else ""


def _text(source: Source, node: Node | None) -> str:
    return source.text(node) if node is not None else ""
