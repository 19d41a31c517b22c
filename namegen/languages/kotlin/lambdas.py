"""Lambdas of Kotlin: what the call that gets one hands to it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from tree_sitter import Node

from namegen.languages.kotlin.trees import called_of, last_name
from namegen.languages.sources import Source, named_child

EACH = frozenset(
    {
        "all",
        "any",
        "associateBy",
        "associateWith",
        "filter",
        "flatMap",
        "forEach",
        "map",
        "mapNotNull",
        "none",
        "onEach",
    }
)
"""Functions of Kotlin's library that hand over each of what they are called on."""
WHOLE = frozenset({"also", "let"})
"""Those that hand over what they are called on (Kotlin documentation, Scope functions)."""
_WITHIN = frozenset({"apply", "run"})
"""Those in whose lambda calls without a receiver are calls of it."""


def given_to(source: Source, stack: Sequence[Node]) -> tuple[Literal["each", "value"], Node] | None:
    """Return what the one parameter of a lambda, the last of the stack, stands for."""
    name, receiver = _call_on(stack)
    if name is None or receiver is None:
        return None
    word = source.text(name)
    if word in WHOLE:
        return "value", receiver
    return ("each", receiver) if word in EACH else None


def receiver_within(source: Source, stack: Sequence[Node]) -> Node | None:
    """Return the receiver of calls without one in a lambda, the last of the stack."""
    name, receiver = _call_on(stack)
    if name is not None and receiver is not None and source.text(name) in _WITHIN:
        return receiver
    call = stack[-3] if len(stack) > 2 else None
    inner = called_of(call) if call is not None and call.type == "call_expression" else None
    if inner is None or inner.type != "call_expression":
        return None
    function = last_name(called_of(inner))
    if function is None or source.text(function) != "with":
        return None
    given = named_child(inner, inner.named_child_count - 1)
    argument = named_child(given, 0) if given is not None else None
    return named_child(argument, 0) if argument is not None else None


def _call_on(stack: Sequence[Node]) -> tuple[Node | None, Node | None]:
    """Return the name and the receiver of ``receiver.name { ... }``."""
    if len(stack) < 3 or stack[-2].type != "annotated_lambda":
        return None, None
    callee = called_of(stack[-3])
    if callee is None or callee.type != "navigation_expression":
        return None, None
    return last_name(callee), named_child(callee, 0)
