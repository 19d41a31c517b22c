"""Where Python changes a list or a table without assigning to its name, or names it anew."""

from __future__ import annotations

from collections.abc import Iterator

from tree_sitter import Node

from namegen.languages.sources import Source, Stack, same

PATTERNS = frozenset({"pattern_list", "tuple_pattern", "list_pattern"})
SETTERS = PATTERNS | {"assignment", "augmented_assignment", "for_statement", "as_pattern_target"}
"""What may stand around an attribute or a subscript that is set."""
_METHODS = frozenset(
    {"append", "clear", "extend", "insert", "pop", "popitem", "remove", "reverse", "setdefault"}
    | {"sort", "update"}
)
_CHANGERS = frozenset({"heappop", "heappush", "insort", "insort_left", "insort_right"})
"""Functions of Python's library that change what they are given first."""
_CHOICES = frozenset(
    {"boolean_operator", "conditional_expression", "named_expression", "parenthesized_expression"}
)
"""What gives one of its parts itself."""


def is_changed(source: Source, stack: Stack) -> bool:
    """Whether the use of a list, the last of the stack, changes it.

    What a function of the program does with a list that it is given is not looked at.
    """
    whole, above, beyond = _given(stack)
    match above.type:
        case "attribute" if same(above.child_by_field_name("object"), whole):
            return _text(source, above.child_by_field_name("attribute")) in _METHODS
        case "subscript" if same(above.child_by_field_name("value"), whole):
            return beyond is not None and _is_set(above, beyond)
        case "argument_list" if beyond is not None:
            called = _text(source, beyond.child_by_field_name("function"))
            return called.rpartition(".")[2] in _CHANGERS
    return False


def other_names(stack: Stack) -> Iterator[Node]:
    """Yield the names and attributes that are assigned just what the last node stands for."""
    whole, above, _ = _given(stack)
    node: Node | None = above
    while node is not None and node.type == "assignment":
        left = node.child_by_field_name("left")
        if left is None or not same(node.child_by_field_name("right"), whole):
            return
        name = left.child_by_field_name("attribute") if left.type == "attribute" else left
        if name is not None and name.type == "identifier":
            yield name
        whole, node = node, node.parent  # `a = b = names`


def _given(stack: Stack) -> tuple[Node, Node, Node | None]:
    """Return what gives the last node itself, with the two nodes above that."""
    place = len(stack) - 1
    while place > 1 and stack[place - 1].type in _CHOICES:
        place -= 1
    return stack[place], stack[place - 1], stack[place - 2] if place > 1 else None


def _is_set(subscript: Node, above: Node) -> bool:
    is_left = same(above.child_by_field_name("left"), subscript)
    return above.type == "delete_statement" or (above.type in SETTERS and is_left)


def _text(source: Source, node: Node | None) -> str:
    return source.text(node) if node is not None else ""
