"""Where a C++ variable gets another value than the one that it is declared with."""

from __future__ import annotations

from typing import Literal

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.cpp.altering import alters
from namegen.languages.cpp.names import dotted
from namegen.languages.cpp.scopes import Scope, scope_of
from namegen.languages.sources import Source, Stack, same
from namegen.model.facts import Path


class Change(Struct, frozen=True):
    """One place that changes a variable.

    ``words`` say which: ``("name",)``, ``("this", "name")``, ``("space", "name")``; empty
    where it is a member of another object, of whatever class. ``value`` is what it gets.
    """

    name: Node
    words: Path
    way: Literal["assigned", "unknown"]
    within: Scope
    value: Node | None = None


def change_at(source: Source, stack: Stack) -> Change | None:
    """Return the change that the last node of the stack names the variable of."""
    place, words = _whole(source, stack)
    above = stack[place - 1]
    scope = scope_of(source, stack)
    if above.type == "field_initializer" and same(above.named_children[0], stack[place]):
        own = ("this", source.text(stack[-1]))  # what a constructor's list gives to a member
        return Change(stack[-1], own, "assigned", scope, above.named_children[-1])
    left = above.child_by_field_name("left")
    if above.type == "assignment_expression" and same(left, stack[place]):
        operator = above.child_by_field_name("operator")
        plain = operator is not None and operator.type == "="
        value = above.child_by_field_name("right") if plain else None
        return Change(stack[-1], words, "assigned" if plain else "unknown", scope, value)
    return Change(stack[-1], words, "unknown", scope) if alters(source, stack) else None


def _whole(source: Source, stack: Stack) -> tuple[int, Path]:
    """Return where ``this->name`` or ``space::name`` stands as a whole, with its words."""
    place = len(stack) - 1
    above = stack[place - 1]
    if above.type == "field_expression" and same(above.child_by_field_name("field"), stack[-1]):
        whose = above.child_by_field_name("argument")
        is_own = whose is not None and whose.type == "this"
        return place - 1, ("this", source.text(stack[-1])) if is_own else ()
    while place > 1 and stack[place - 1].type == "qualified_identifier":
        if not same(stack[place - 1].child_by_field_name("name"), stack[place]):
            break
        place -= 1
    return place, dotted(source, stack[place]) or ()
