"""Where Kotlin makes an object of a class without saying the class by itself, like a function."""

from __future__ import annotations

from collections.abc import Iterator

from tree_sitter import Node

from namegen.languages.kotlin.scopes import TYPES
from namegen.languages.kotlin.trees import arguments_of, body_of, child_of
from namegen.languages.kotlin.types import type_words
from namegen.languages.sources import Source, Stack, elements, is_field, same
from namegen.languages.uses import Use
from namegen.model.workspaces import LookupRule


def constructions(source: Source, rule: LookupRule, stack: Stack) -> Iterator[Use]:
    """Yield what makes an object of the class of a rule, which the last of the stack names.

    That is ``class A : Motor("bow")``, ``super("bow")`` in the constructors of a class that is
    derived, and in the class itself ``this("bow")`` and, if it is an enum, its entries.
    """
    above = stack[-2]
    if above.type in TYPES and is_field(above, "name", stack[-1]):
        if rule.on is None:
            yield from _delegated(rule, stack[:-1], "this")
            yield from _entries(rule, stack[:-1])
        return
    base = constructed(source, rule, stack)
    if base is None:
        return
    if base[-1].type == "delegation_specifier":
        yield from _delegated(rule, base[:-2], "super")
    elif base[-1].type == "constructor_invocation" and base[-2].type != "annotation":
        given = arguments_of(base[-1])
        if given is not None:
            yield Use(rule, tuple(base), given)


def constructed(source: Source, rule: LookupRule, stack: Stack) -> Stack | None:
    """Return the stack down to ``a.Name(...)`` of an annotation, or a base class."""
    if len(stack) < 4 or stack[-2].type != "user_type":
        return None
    words = type_words(source, stack[-2]) or ()
    names = [one for one in elements(stack[-2]) if one.type == "identifier"]
    above = stack[-3].type
    if above not in {"constructor_invocation", "annotation", "delegation_specifier"}:
        return None
    is_named = same(names[-1], stack[-1]) and (rule.on is None or words[-2:-1] == (rule.on,))
    return stack[:-2] if is_named else None


def _delegated(rule: LookupRule, stack: Stack, word: str) -> Iterator[Use]:
    """Yield ``super(...)`` or ``this(...)`` of the constructors of the last class of the stack."""
    for above, member in _members(stack[-1]):
        call = child_of(member, "constructor_delegation_call")
        given = arguments_of(call) if call is not None else None
        if call is not None and given is not None and call.children[0].type == word:
            yield Use(rule, (*stack, *above, member, call), given)


def _entries(rule: LookupRule, stack: Stack) -> Iterator[Use]:
    """Yield the entries of an enum, the last of the stack, that are given something."""
    for above, entry in _members(stack[-1]):
        given = arguments_of(entry)
        if entry.type == "enum_entry" and given is not None:
            yield Use(rule, (*stack, *above, entry), given)


def _members(declaration: Node) -> Iterator[tuple[Stack, Node]]:
    """Yield what a class declares, with the nodes between it and the class."""
    body = body_of(declaration)
    for member in elements(body):
        if body is not None and member.is_error:  # what is whole in it counts
            yield from (([body, member], inner) for inner in elements(member))
        elif body is not None:
            yield [body], member
