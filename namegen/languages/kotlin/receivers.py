"""What Kotlin code is called on: what stands before a call, what ``this`` is around it."""

from __future__ import annotations

from collections.abc import Sequence

from tree_sitter import Node

from namegen.languages.kotlin.lambdas import given_to, receiver_within
from namegen.languages.kotlin.trees import called_of, child_of
from namegen.languages.kotlin.types import type_words
from namegen.languages.sources import Source, elements, named_child

_FIRST = frozenset(
    {"unary_expression", "parenthesized_expression", "as_expression", "index_expression"}
)


def last_word(source: Source, node: Node | None) -> str | None:
    """Return the last word of ``a.b``, ``a.b()``, ``a.b[0]``, ``b!!``, ``b::class``: here ``b``."""
    while node is not None:
        if node.type == "identifier":
            return source.text(node)
        if node.type == "this_expression":
            return "this"
        if node.type == "user_type":
            words = type_words(source, node)
            return words[-1] if words else None
        if node.type in {"string_literal", "multiline_string_literal"}:
            return source.text(node).strip('"')
        if node.type == "navigation_expression":
            node = _step(source, node)
        elif node.type == "call_expression":
            node = called_of(node)
        elif node.type == "callable_reference":
            node = named_child(node, 0)
        else:
            node = next(iter(elements(node)), None) if node.type in _FIRST else None
    return None


def _step(source: Source, node: Node) -> Node | None:
    """Return where the last word of ``a.b`` is looked for; in ``b::class.java`` before the sign."""
    last = named_child(node, node.named_child_count - 1)
    first = named_child(node, 0)
    if any(child.type == "::" for child in node.children):
        return first
    inner = first
    while inner is not None and inner.type in {"navigation_expression", "callable_reference"}:
        if any(child.type == "::" for child in inner.children):
            return inner
        inner = named_child(inner, 0) if inner.type == "navigation_expression" else None
    return last


def receiver_around(source: Source, stack: Sequence[Node], word: str | None) -> str | None:
    """Return the last word of what a lambda around a call gives it to be called on.

    ``word`` is what stands before the call: nothing, or ``this``, in
    ``with(boat) { motor("bow") }``, ``it`` in ``boat.let { it.motor("bow") }``. Only the
    innermost lambda that gives anything counts.
    """
    for place in range(len(stack) - 1, 0, -1):
        inner = stack[place]
        if inner.type != "lambda_literal":
            continue
        above = stack[: place + 1]
        if word == "it":
            if child_of(inner, "lambda_parameters") is None:
                given = given_to(source, above)
                return last_word(source, given[1]) if given is not None else None
            continue
        receiver = receiver_within(source, above)
        if receiver is not None:
            return last_word(source, receiver)
    return None
