"""What Kotlin code is called on: what stands before a call, what ``this`` is around it."""

from __future__ import annotations

from collections.abc import Sequence

from tree_sitter import Node

from namegen.languages.kotlin.expressions import dotted, opened
from namegen.languages.kotlin.lambdas import given_to, receiver_within
from namegen.languages.kotlin.trees import called_of, child_of
from namegen.languages.kotlin.types import type_words
from namegen.languages.sources import Source, elements, named_child
from namegen.model.facts import Path

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


def words_of_receiver(source: Source, stack: Sequence[Node]) -> Path | None:
    """Return the type, or the name of the object, whose members have names in a region.

    The region, a lambda or a function, is the last of the stack. None where that is not said.
    """
    region = stack[-1]
    if region.type == "lambda_literal":
        receiver = receiver_within(source, stack)
        value = opened(receiver) if receiver is not None else None
        made = value is not None and value.type == "call_expression"
        return dotted(source, called_of(value) if made and value is not None else value)
    declaration = stack[-2] if region.type == "getter" else region
    for at, child in enumerate(declaration.children):
        if child.type == ".":
            return type_words(source, declaration.children[at - 1])
    return None


def words_of_parameter(source: Source, function: Node) -> Path | None:
    """Return the type whose members the lambda sees that a function gets as its last argument."""
    listed = child_of(function, "function_value_parameters")
    last = next(reversed(elements(listed)), None) if listed is not None else None
    kind = child_of(last, "function_type") if last is not None else None
    if kind is None or kind.child_count < 2 or kind.children[1].type != ".":
        return None
    return type_words(source, kind.children[0])
