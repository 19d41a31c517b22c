"""Where Java may change an array or a list without assigning to its name."""

from __future__ import annotations

from collections.abc import Iterator

from tree_sitter import Node

from namegen.languages.sources import Source, Stack, same

_METHODS = frozenset({"replaceAll", "set", "sort"})
"""Methods that change a list of as many as before, as ``Arrays.asList`` gives."""
_CHANGERS = frozenset({"addAll", "arraycopy", "fill", "replaceAll", "setAll", "sort"})
"""Methods of Java's library that change an array or a list which they are given."""


def is_changed(source: Source, stack: Stack) -> bool:
    """Whether the use of a list, the last of the stack, changes it.

    What a method of the program does with a list that it is given is not looked at.
    """
    node, above = stack[-1], stack[-2]
    match above.type:
        case "array_access" if same(above.child_by_field_name("array"), node):
            left = stack[-3].child_by_field_name("left")
            return stack[-3].type == "assignment_expression" and same(left, above)
        case "method_invocation" if same(above.child_by_field_name("object"), node):
            return _word(source, above, "name") in _METHODS
        case "argument_list":
            return _word(source, stack[-3], "name") in _CHANGERS
    return False


def other_names(stack: Stack) -> Iterator[Node]:
    """Yield the name or field that is given just what the last node of the stack stands for."""
    node, above = stack[-1], stack[-2]
    name: Node | None = None
    if above.type == "variable_declarator" and same(above.child_by_field_name("value"), node):
        name = above.child_by_field_name("name")
    elif above.type == "assignment_expression" and same(above.child_by_field_name("right"), node):
        left = above.child_by_field_name("left")
        field = left.child_by_field_name("field") if left is not None else None
        name = field or left
    if name is not None and name.type == "identifier":
        yield name


def _word(source: Source, node: Node, field: str) -> str:
    name = node.child_by_field_name(field)
    return source.text(name) if name is not None else ""
