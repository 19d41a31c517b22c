"""Where Kotlin may change what a name holds without naming it in full, or without assigning."""

from __future__ import annotations

from typing import Literal

from tree_sitter import Node

from namegen.languages.kotlin.expressions import opened
from namegen.languages.kotlin.trees import called_of, key_of, last_name
from namegen.languages.sources import Source, Stack, named_child, same

_CHANGEABLE = frozenset(
    {"arrayListOf", "arrayOf", "hashSetOf", "linkedSetOf", "mutableListOf", "mutableSetOf"}
    | {"sortedSetOf"}
)
"""Functions of Kotlin's library that give a list which can be changed."""
_METHODS = frozenset(
    {"add", "addAll", "addFirst", "addLast", "clear", "fill", "minusAssign", "plusAssign", "put"}
    | {"putAll", "remove", "removeAll", "removeAt", "removeFirst", "removeIf", "removeLast"}
    | {"replaceAll", "retainAll", "set"}
)
"""Methods of Kotlin's library that change a list, a set, a table or an array."""
_CHANGERS = frozenset({"addAll", "arraycopy", "fill", "replaceAll", "setAll", "with"})
"""Functions of Java's library that change a list which they are given, and ``with``."""
_READERS = frozenset(
    {"all", "any", "asSequence", "associateBy", "associateWith", "contains", "containsAll"}
    | {"contentToString", "count", "distinct", "drop", "elementAt", "filter", "filterNot", "find"}
    | {"first", "firstOrNull", "flatMap", "forEach", "forEachIndexed", "get", "getOrElse"}
    | {"getOrNull", "indexOf", "indexOfFirst", "indices", "isEmpty", "isNotEmpty", "joinToString"}
    | {"last", "lastIndex", "lastOrNull", "map", "mapIndexed", "mapNotNull", "none", "onEach"}
    | {"random", "reversed", "shuffled", "single", "size", "sorted", "sortedBy", "take", "toList"}
    | {"toSet", "toTypedArray", "withIndex", "zip"}
)
"""Members of Kotlin's lists that leave them as they are and hand no other way to them on."""
_READING = frozenset(
    {"binary_expression", "import", "in_expression", "interpolation", "value_argument"}
    | {"package_header", "qualified_identifier", "spread_expression", "user_type"}
)
"""What a list may stand in without being changed."""


def is_changeable_list(source: Source, value: Node) -> bool:
    """Whether a value is a written-out list, set or array that can be changed later."""
    value = opened(value)
    name = last_name(called_of(value)) if value.type == "call_expression" else None
    return name is not None and source.text(name) in _CHANGEABLE


def changed_by(source: Source, stack: Stack) -> Literal["in place", "another name"] | None:
    """Return whether the use of a list, the last of the stack, changes it or gives it a name.

    What a function of the program does with a list that it is given is not looked at.
    """
    node, above = stack[-1], stack[-2]
    match above.type:
        case "navigation_expression":
            if not same(named_child(above, 0), node):
                return None
            word = _word(source, above)
            return "in place" if word in _METHODS else None if word in _READERS else "another name"
        case "index_expression":
            left = stack[-3].child_by_field_name("left")
            is_set = stack[-3].type == "assignment" and same(left, above)
            return "in place" if is_set and same(named_child(above, 0), node) else None
        case "for_statement":
            return None
        case "value_argument":
            call = stack[-4] if len(stack) > 3 else None
            given = call is not None and _word(source, called_of(call)) in _CHANGERS
            return "in place" if given and not same(key_of(above), node) else None
    return None if above.type in _READING else "another name"


def _word(source: Source, node: Node | None) -> str:
    name = last_name(node)
    return source.text(name) if name is not None else ""
