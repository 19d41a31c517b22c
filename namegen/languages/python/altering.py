"""Where Python changes a list or a table without assigning to its name, or names it anew."""

from __future__ import annotations

from typing import Literal

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
_READERS = frozenset({"copy", "count", "get", "index", "items", "keys", "values"})
_DISPLAYS = frozenset(
    {"dictionary", "dictionary_comprehension", "list", "list_comprehension", "set"}
    | {"set_comprehension"}
)
"""What makes a list, a set or a table that can be changed later."""
_CHOICES = frozenset(
    {"boolean_operator", "conditional_expression", "named_expression", "parenthesized_expression"}
)
"""What gives one of its parts itself."""
_READING = frozenset(
    {"aliased_import", "assert_statement", "binary_operator", "comparison_operator"}
    | {"dictionary_splat", "dotted_name", "elif_clause", "expression_statement", "for_in_clause"}
    | {"for_statement", "global_statement", "if_statement", "interpolation", "keyword_argument"}
    | {"list_splat", "nonlocal_statement", "not_operator", "type", "while_statement"}
)
"""What a list may stand in without being changed."""


def is_changeable_list(value: Node) -> bool:
    """Whether a value is a written-out list, set or table, which tuples are not."""
    return value.type in _DISPLAYS


def changed_by(source: Source, stack: Stack) -> Literal["in place", "another name"] | None:
    """Return whether the use of a list, the last of the stack, changes it or gives it a name.

    What a function of the program does with a list that it is given is not looked at.
    """
    place = len(stack) - 1
    while place > 1 and stack[place - 1].type in _CHOICES:
        place -= 1
    whole, above = stack[place], stack[place - 1]
    match above.type:
        case "attribute":
            if not same(above.child_by_field_name("object"), whole):
                return None
            word = _text(source, above.child_by_field_name("attribute"))
            return "in place" if word in _METHODS else None if word in _READERS else "another name"
        case "subscript":
            is_set = _is_set(above, stack[place - 2])
            return "in place" if is_set and same(_value(above), whole) else None
        case "argument_list":
            called = stack[place - 2].child_by_field_name("function")
            word = _text(source, called).rpartition(".")[2]
            return "in place" if word in _CHANGERS else None
    return None if above.type in _READING else "another name"


def _is_set(subscript: Node, above: Node) -> bool:
    is_left = same(above.child_by_field_name("left"), subscript)
    return above.type == "delete_statement" or (above.type in SETTERS and is_left)


def _value(subscript: Node) -> Node | None:
    return subscript.child_by_field_name("value")


def _text(source: Source, node: Node | None) -> str:
    return source.text(node) if node is not None else ""
