"""Where Kotlin may change what a name holds without naming it in full, or without assigning."""

from __future__ import annotations

import re
from collections.abc import Iterator

from tree_sitter import Node

from namegen.languages.kotlin.trees import called_of, child_of, key_of, last_name
from namegen.languages.sources import Source, Stack, named_child, same

_METHODS = frozenset(
    {"add", "addAll", "addFirst", "addLast", "clear", "fill", "minusAssign", "plusAssign", "put"}
    | {"putAll", "remove", "removeAll", "removeAt", "removeFirst", "removeIf", "removeLast"}
    | {"replaceAll", "retainAll", "set"}
)
"""Methods of Kotlin's library that change a list, a set, a table or an array."""
_CHANGERS = frozenset({"addAll", "arraycopy", "fill", "replaceAll", "setAll"})
"""Functions of Java's library that change a list which they are given."""
_ON_ITSELF = frozenset({"also", "apply", "let", "run"})
"""Functions of Kotlin's library that hand what they are called on to a lambda."""


def is_changed(source: Source, stack: Stack) -> bool:
    """Whether the use of a list, the last of the stack, changes it.

    What a function of the program does with a list that it is given is not looked at.
    """
    node, above = stack[-1], stack[-2]
    match above.type:
        case "navigation_expression" if same(named_child(above, 0), node):
            word = _word(source, above)
            return word in _METHODS or (word in _ON_ITSELF and _changes_within(source, stack[-3]))
        case "index_expression" if same(named_child(above, 0), node):
            left = stack[-3].child_by_field_name("left")
            return stack[-3].type == "assignment" and same(left, above)
        case "value_argument" if not same(key_of(above), node):
            call = stack[-4] if len(stack) > 3 else None
            word = _word(source, called_of(call)) if call is not None else ""
            return word in _CHANGERS or (word == "with" and _changes_within(source, stack[-5]))
    return False


def _changes_within(source: Source, call: Node) -> bool:
    """Whether the lambda of a call says one of the methods that change."""
    return not _METHODS.isdisjoint(re.findall(r"\w+", source.text(call)))


def other_names(stack: Stack) -> Iterator[Node]:
    """Yield the name that is given just what the last node of the stack stands for."""
    node, above = stack[-1], stack[-2]
    if above.type == "property_declaration":
        name = child_of(child_of(above, "variable_declaration"), "identifier")
    elif above.type == "assignment" and same(above.child_by_field_name("right"), node):
        name = last_name(above.child_by_field_name("left"))
    else:
        name = None
    if name is not None:
        yield name


def _word(source: Source, node: Node | None) -> str:
    name = last_name(node)
    return source.text(name) if name is not None else ""
