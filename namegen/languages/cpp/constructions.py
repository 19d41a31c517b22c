"""Objects that C++ code constructs: which places do so with a class, and what they are given.

``Sensor(b, "x")``, ``Sensor{b, "x"}``, ``new Sensor(b, "x")``, ``Sensor s(b, "x")``,
``std::make_unique<Sensor>(b, "x")``, lists of several, and the lists of constructors:
``: Sensor(b, "x")`` of a base class, ``: bow_(b, "x")`` of a member whose type is the class.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from tree_sitter import Node

from namegen.languages.cpp.declarators import (
    INDIRECT,
    arguments_as_parameters,
    declared,
    nested,
    value_after,
)
from namegen.languages.cpp.library import LISTS, SMART_MAKERS
from namegen.languages.cpp.lists import GIVEN
from namegen.languages.cpp.names import dotted
from namegen.languages.cpp.scopes import scope_of
from namegen.languages.sources import Source, Stack, elements, is_field, same

_OUTER = frozenset(
    {"declaration_list", "linkage_specification", "namespace_definition", "template_declaration"}
    | {"preproc_elif", "preproc_else", "preproc_if", "preproc_ifdef"}
)
_STATEMENTS = frozenset({"declaration", "field_declaration"})


class Construction(NamedTuple):
    """The nodes from the root down to what constructs, and the arguments that it gives."""

    stack: tuple[Node, ...]
    given: Node


def constructions(source: Source, stack: Stack) -> Iterator[Construction]:
    """Yield the constructions of the class that the last node of the stack names."""
    place = _whole_type(stack)
    node, above = stack[place], stack[place - 1]
    given = above.child_by_field_name("arguments")
    if above.type == "call_expression" and is_field(above, "function", node):
        if given is not None and node.type != "field_expression":
            yield Construction(tuple(stack[:place]), given)
    elif above.type == "new_expression" and is_field(above, "type", node):
        if given is not None:
            yield Construction(tuple(stack[:place]), given)
    elif above.type == "compound_literal_expression":
        value = above.child_by_field_name("value")
        if value is not None and is_field(above, "type", node):
            yield Construction(tuple(stack[:place]), value)
    elif above.type == "field_initializer" and same(above.named_children[0], node):
        yield Construction(tuple(stack[:place]), above.named_children[-1])
    elif above.type in _STATEMENTS and is_field(above, "type", node):
        yield from _declared(source, stack[:place], many=False)
    elif above.type == "type_descriptor":
        yield from _as_argument(source, stack, place - 1)


def _whole_type(stack: Stack) -> int:
    """Return where the whole name stands that the last node ends: ``lib::Sensor<int>``."""
    place = len(stack) - 1
    while place > 1:
        above = stack[place - 1]
        if above.type not in {
            "qualified_identifier",
            "template_type",
            "template_function",
            "template_method",
        }:
            break
        if not is_field(above, "name", stack[place]):
            break
        place -= 1
    return place


def _as_argument(source: Source, stack: Stack, place: int) -> Iterator[Construction]:
    """Yield what ``make_unique<Sensor>`` and ``std::vector<Sensor>`` construct.

    ``place`` is where the type stands within the ``<...>``.
    """
    if place < 3 or stack[place - 1].type != "template_argument_list":
        return
    template = _whole_type(stack[: place - 1])
    words = dotted(source, stack[template]) or ("",)
    above = stack[template - 1]
    given = above.child_by_field_name("arguments")
    if words[-1] in SMART_MAKERS and above.type == "call_expression" and given is not None:
        yield Construction(tuple(stack[:template]), given)
    elif words[-1] in LISTS and above.type in _STATEMENTS:
        yield from _declared(source, stack[:template], many=True)


def _declared(source: Source, stack: Stack, *, many: bool) -> Iterator[Construction]:
    """Yield what the declaration at the end of the stack constructs, each with its arguments."""
    statement = stack[-1]
    for declarator in statement.children_by_field_name("declarator"):
        below = [*stack, declarator]
        value = declarator.child_by_field_name("value")
        if value is None and statement.type == "field_declaration":
            value = value_after(statement, declarator)
            below = [*stack] if value is not None else below
        if value is not None and value.type in GIVEN:
            kinds = {one.type for one in nested(declarator)}
            if many or "array_declarator" in kinds:
                yield from _several(below, value)
            elif INDIRECT.isdisjoint(kinds):
                yield Construction(tuple(below), value)
        elif declarator.type == "function_declarator" and not many:
            if statement.type == "declaration" and arguments_as_parameters(declarator):
                given = declarator.child_by_field_name("parameters")
                yield Construction(tuple(below), given or declarator)
        elif declarator.type in {"field_identifier", "identifier"} and not many:
            yield from _members(source, below)


def _several(stack: Stack, listed: Node) -> Iterator[Construction]:
    """Yield the lists within a list: ``{{boat, "a"}, {boat, "b"}}``, once more in braces or not."""
    pending = [((*stack, listed), one) for one in reversed(elements(listed))]
    while pending:
        above, one = pending.pop()
        if one.type != "initializer_list":
            continue
        inner = elements(one)
        if inner and all(each.type == "initializer_list" for each in inner):
            pending += [((*above, one), each) for each in reversed(inner)]
        else:
            yield Construction((*above, one), one)


def _members(source: Source, stack: Stack) -> Iterator[Construction]:
    """Yield what the constructors of a class give to the member that the stack declares."""
    known = declared(source, stack)
    own = scope_of(source, stack).type
    if known is None or own is None or known.statement.type != "field_declaration":
        return
    for found in source.stacks([source.text(stack[-1])]):
        above = found[-2]
        if above.type != "field_initializer" or not same(above.named_children[0], found[-1]):
            continue
        theirs = scope_of(source, found).type
        if theirs is not None and theirs.path == own.path:
            yield Construction(tuple(found[:-1]), above.named_children[-1])


def out_of_class(source: Source) -> Iterator[Construction]:
    """Yield what constructors that stand outside of their class give to its members.

    What type such a member is of, the class tells, which may stand in another file.
    """
    pending: list[tuple[Node, ...]] = [(source.root,)]
    while pending:
        stack = pending.pop()
        for node in stack[-1].named_children:
            if node.type == "function_definition":
                yield from _initializers((*stack, node))
            elif node.type in _OUTER:
                pending.append((*stack, node))


def _initializers(stack: tuple[Node, ...]) -> Iterator[Construction]:
    listed = next((one for one in stack[-1].children if one.type == "field_initializer_list"), None)
    for one in elements(listed):
        name = one.named_children[0]
        if one.type == "field_initializer" and name.type == "field_identifier":
            yield Construction((*stack, listed or one, one), one.named_children[-1])
