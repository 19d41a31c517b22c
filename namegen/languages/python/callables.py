"""Where Python hands a look-up on instead of calling it, or calls one by the name of its class."""

from __future__ import annotations

from collections.abc import Iterator

from tree_sitter import Node

from namegen.languages.sources import Source, Stack, elements, is_field, occurrences, place_in, same
from namegen.languages.uses import Use
from namegen.model.places import Span
from namegen.model.workspaces import LookupRule

_INIT = "__init__"


def constructions(source: Source, rule: LookupRule, stack: Stack, place: int) -> Iterator[Use]:
    """Yield the calls of ``__init__`` of the class that the node at a place names.

    That is ``super().__init__("bow")`` in a class derived from it alone or first, and
    ``Motor.__init__(self, "bow")``.
    """
    node, above = stack[place], stack[place - 1]
    if above.type == "attribute" and is_field(above, "object", node):
        call = stack[place - 2]
        listed = call.child_by_field_name("arguments") if call.type == "call" else None
        if listed is not None and _is_init(source, above):
            yield Use(rule, tuple(stack[: place - 1]), listed, first=1)
    owner = stack[place - 2] if place > 1 else above
    if owner.type != "class_definition" or not same(
        owner.child_by_field_name("superclasses"), above
    ):
        return
    if same(next(iter(elements(above)), None), node):
        yield from _by_super(source, rule, owner)


def _by_super(source: Source, rule: LookupRule, owner: Node) -> Iterator[Use]:
    """Yield ``super().__init__(...)`` in the methods that a class has itself."""
    start = owner.start_byte
    within = source.data[start : owner.end_byte]
    places = (Span(start + at.start, start + at.end) for at in occurrences(within, "super"))
    for stack in source.above(places):
        inner = (one for one in reversed(stack) if one.type == "class_definition")
        if len(stack) < 4 or not same(next(inner, None), owner):
            continue
        called, attribute, call = stack[-2], stack[-3], stack[-4]
        listed = call.child_by_field_name("arguments")
        if (
            called.type == call.type == "call"
            and listed is not None
            and _is_init(source, attribute)
        ):
            yield Use(rule, tuple(stack[:-3]), listed)


def _is_init(source: Source, attribute: Node) -> bool:
    name = attribute.child_by_field_name("attribute") if attribute.type == "attribute" else None
    return name is not None and source.text(name) == _INIT


def argument_of(stack: Stack, place: int) -> tuple[Node, int] | None:
    """Return the call that the node at a place is an argument of, and which of them, from 0.

    A keyword counts as none of them: -1.
    """
    node, above, at = stack[place], stack[place - 1], 0
    if above.type == "keyword_argument" and is_field(above, "value", node):
        place, above, at = place - 1, stack[place - 2], -1
    call = stack[place - 2] if place > 1 else above
    if above.type != "argument_list" or call.type != "call":
        return None
    if at == 0:
        at = place_in(above, node)
    return call, at
