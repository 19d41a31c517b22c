"""Where Kotlin may change what a name holds without naming it in full, or without assigning."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.kotlin.expressions import opened
from namegen.languages.kotlin.trees import called_of, key_of, last_name
from namegen.languages.sources import Source, Stack, named_child, same

_CHANGEABLE = frozenset(
    {"arrayListOf", "arrayOf", "hashSetOf", "linkedSetOf", "mutableListOf", "mutableSetOf"}
    | {"sortedSetOf"}
)
"""Functions of Kotlin's library that give a list which can be changed."""
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


def hands_on_list(source: Source, stack: Stack) -> bool:
    """Whether the use of a list, the last of the stack, may change it or is another name for it.

    What a function of the program does with a list that it is given is not looked at.
    """
    node, above = stack[-1], stack[-2]
    match above.type:
        case "navigation_expression" if same(named_child(above, 0), node):
            last = last_name(above)
            return last is None or source.text(last) not in _READERS
        case "navigation_expression":
            return False
        case "index_expression":
            is_set = stack[-3].type == "assignment"
            return is_set and same(stack[-3].child_by_field_name("left"), above)
        case "for_statement":
            return False
        case "value_argument":
            return not same(key_of(above), node) and _is_given_to_changer(source, stack)
    return above.type not in _READING


def _is_given_to_changer(source: Source, stack: Stack) -> bool:
    call = stack[-4] if len(stack) > 3 else None
    name = last_name(called_of(call)) if call is not None else None
    return name is not None and source.text(name) in _CHANGERS
