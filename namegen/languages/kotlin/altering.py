"""Where Kotlin may change what a name holds without naming it in full, or without assigning."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.kotlin.trees import called_of
from namegen.languages.sources import Source, named_child, same

_METHODS = frozenset(
    {
        "add",
        "addAll",
        "addFirst",
        "addLast",
        "clear",
        "fill",
        "put",
        "putAll",
        "remove",
        "removeAll",
    }
    | {"removeAt", "removeFirst", "removeIf", "removeLast", "replaceAll", "retainAll", "reverse"}
    | {"set", "shuffle", "sort", "sortBy", "sortDescending"}
)
"""Methods of Kotlin's library that change a list, a set, a table or an array."""


def alters(source: Source, name: Node, around: Node, call: Node) -> bool:
    """Whether what holds several is changed in place: ``names[0] = "bow"``, ``names.add("bow")``.

    ``around`` and ``call`` are the two nodes above the name.
    """
    if not same(named_child(around, 0), name):
        return False
    if around.type == "index_expression":
        return call.type == "assignment" and same(call.child_by_field_name("left"), around)
    if around.type != "navigation_expression" or call.type != "call_expression":
        return False
    last = named_child(around, around.named_child_count - 1)
    called = same(called_of(call), around) and last is not None
    return called and last is not None and source.text(last) in _METHODS


def has_receiver(node: Node) -> bool:
    """Whether names in it may be those of an object: a lambda, a function ``Boat.name()``."""
    if node.type == "lambda_literal":
        return True
    return node.type == "function_declaration" and any(one.type == "." for one in node.children)
