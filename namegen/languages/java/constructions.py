"""Where Java makes an object of a class, in each of the ways there are."""

from __future__ import annotations

from collections.abc import Iterator

from tree_sitter import Node

from namegen.languages.java.scopes import TYPES
from namegen.languages.java.types import type_arguments
from namegen.languages.sources import Source, Stack, elements, is_field, named_child, same
from namegen.languages.uses import Use
from namegen.model.workspaces import LookupRule

_DOTTED = frozenset({"scoped_type_identifier", "field_access"})


def constructions(source: Source, rule: LookupRule, stack: Stack) -> Iterator[Use]:
    """Yield what makes an object of the class of a rule, which the last of the stack names.

    That is ``new Motor("bow")``, ``Motor::new``, ``super("bow")`` of a class that extends it,
    and in the class itself ``this("bow")`` and, if it is an enum, its constants.
    """
    place, qualifier = _whole(source, stack)
    if rule.on is not None and qualifier != rule.on:
        return
    named, above = stack[place], stack[place - 1]
    match above.type:
        case "object_creation_expression" if is_field(above, "type", named):
            given = above.child_by_field_name("arguments")
            if given is not None:
                yield Use(rule, tuple(stack[:place]), given, type_arguments(named))
        case "method_reference" if above.children[-1].type == "new":
            yield Use(rule, tuple(stack[:place]), above, passed_on=True)
        case "superclass":
            yield from _invoked(rule, stack[: place - 1], "super")
        case kind if kind in TYPES and is_field(above, "name", named):
            yield from _invoked(rule, stack[:place], "this")
            yield from _constants(rule, stack[:place])


def _whole(source: Source, stack: Stack) -> tuple[int, str | None]:
    """Return where the type stands as a whole, with its arguments, and the word before its own."""
    place, qualifier = len(stack) - 1, None
    above = stack[place - 1]
    if above.type in _DOTTED and same(elements(above)[-1], stack[place]):
        place -= 1
        before = source.text(elements(above)[0])
        qualifier = before.rpartition(".")[2].strip()
    if stack[place - 1].type == "generic_type" and same(
        named_child(stack[place - 1], 0), stack[place]
    ):
        place -= 1
    return place, qualifier


def _invoked(rule: LookupRule, stack: Stack, word: str) -> Iterator[Use]:
    """Yield ``super(...)`` or ``this(...)`` in the constructors of the last type of the stack."""
    for above, member in _members(stack[-1]):
        body = member.child_by_field_name("body")
        if member.type != "constructor_declaration" or body is None:
            continue
        for one in elements(body):
            if one.type != "explicit_constructor_invocation":
                continue
            called = one.child_by_field_name("constructor")
            given = one.child_by_field_name("arguments")
            if called is not None and called.type == word and given is not None:
                yield Use(rule, (*stack, *above, member, body, one), given)


def _constants(rule: LookupRule, stack: Stack) -> Iterator[Use]:
    """Yield the constants of an enum, the last of the stack, that are given something."""
    for above, member in _members(stack[-1]):
        given = member.child_by_field_name("arguments")
        if member.type == "enum_constant" and given is not None:
            yield Use(rule, (*stack, *above, member), given)


def _members(declaration: Node) -> Iterator[tuple[Stack, Node]]:
    """Yield what a type declares, with the nodes between it and the type."""
    body = declaration.child_by_field_name("body")
    for member in elements(body):
        if body is not None and member.type in {"enum_body_declarations", "ERROR"}:
            yield from (([body, member], inner) for inner in elements(member))
        elif body is not None:
            yield [body], member
