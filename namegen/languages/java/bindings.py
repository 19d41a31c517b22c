"""Where a Java name gets a value: fields, locals, parameters, enum constants, types."""

from __future__ import annotations

from typing import Literal

from msgspec import Struct
from msgspec.structs import replace
from tree_sitter import Node

from namegen.languages.java.scopes import TYPES, scope_of
from namegen.languages.scopes import Scope
from namegen.languages.sources import Source, Stack, same

Way = Literal[
    "value", "each", "type", "constant", "method", "parameter", "unknown", "declared", "assigned"
]

_HIDES = "further up it is another one"
_FIELDS = frozenset({"field_declaration", "constant_declaration"})
_PARAMETERS = frozenset({"formal_parameter", "spread_parameter", "catch_formal_parameter"})


class Binding(Struct, frozen=True):
    """One place that declares a name or gives it a value.

    ``owner`` is the node of the type or region that the name belongs to,
    ``value`` what it gets, worked out in ``within``.
    """

    name: Node
    owner: int
    way: Way
    within: Scope
    value: Node | None = None
    why: str = ""
    declared: Node | None = None
    """The type it is declared with here."""


def bindings_of(source: Source, word: str) -> list[Binding]:
    """Return every binding of a word in the file, in every scope, in order."""
    found: list[Binding] = []
    changes: list[tuple[int, Binding, tuple[int, ...]]] = []
    last_use = -1
    for stack in source.stacks([word]):
        if stack[-1].type != "identifier" or len(stack) < 2:
            continue
        binding = _declared(source, stack)
        if binding is not None:
            if binding.within.hides(binding.owner, last_use):
                found.append(replace(binding, way="unknown", value=None, why=_HIDES))
            found.append(binding)
        else:
            last_use = stack[-1].start_byte if _is_alone(stack) else last_use
            changed = _assigned(source, stack)
            changes += [(len(found), *changed)] if changed is not None else []
    # An assignment belongs to the innermost scope around it that declares the name.
    owners = {binding.owner for binding in found if binding.way not in {"method", "type"}}
    for place, change, scopes in reversed(changes):
        owner = next((scope for scope in scopes if scope in owners), None)
        if owner is not None:
            found.insert(place, replace(change, owner=owner))
    return found


def _is_alone(stack: Stack) -> bool:
    """Whether a word is the name of a variable by itself, of no method and no object's field."""
    leaf, above = stack[-1], stack[-2]
    if above.type in {"field_access", "scoped_identifier"}:
        return same(above.named_children[0], leaf)
    return above.type != "method_invocation" or not same(above.child_by_field_name("name"), leaf)


def _declared(source: Source, stack: Stack) -> Binding | None:  # noqa: PLR0911 - one per form
    """Return the declaration of which the last node of the stack is the name."""
    leaf, parent = stack[-1], stack[-2]
    kind = parent.type
    if kind in {"lambda_expression", "inferred_parameters"}:
        return _lambda_parameter(source, stack)
    if not same(parent.child_by_field_name("name"), leaf):
        return None
    scope = scope_of(source, stack)
    if kind == "variable_declarator":
        return _variable(source, stack, scope)
    if kind in _PARAMETERS:
        return _parameter(source, stack[-2], leaf, scope)
    value = parent.child_by_field_name("value")
    if kind == "resource":
        return Binding(
            leaf, scope.node.id, "value", scope, value, "", parent.child_by_field_name("type")
        )
    if kind == "enhanced_for_statement":
        return Binding(leaf, parent.id, "each", scope, value)
    if kind == "enum_constant":
        return Binding(leaf, scope.node.id, "constant", scope, parent)
    if kind in TYPES:
        return Binding(leaf, scope.node.id, "type", scope, parent)
    if kind == "method_declaration":
        owner = scope.outer.node.id if scope.outer is not None else scope.node.id
        return Binding(leaf, owner, "method", scope, parent)
    if kind in {"instanceof_expression", "record_pattern_component", "type_pattern"}:
        return Binding(leaf, scope.node.id, "unknown", scope, why="it is matched at run time")
    return None


def _variable(source: Source, stack: Stack, scope: Scope) -> Binding | None:
    leaf, declarator, statement = stack[-1], stack[-2], stack[-3]
    if statement.type == "spread_parameter":
        return _parameter(source, statement, leaf, scope)
    value = declarator.child_by_field_name("value")
    declared = statement.child_by_field_name("type")
    owner = scope.type if statement.type in _FIELDS else scope
    return Binding(
        leaf,
        (owner or scope).node.id,
        "value" if value is not None else "declared",
        scope,
        value,
        "",
        declared,
    )


def _parameter(source: Source, parameter: Node, leaf: Node, scope: Scope) -> Binding:
    declared = parameter.child_by_field_name("type")
    of = f" of `{scope.name}`" if scope.name else ""
    return Binding(
        leaf, scope.node.id, "parameter", scope, None, f"it is a parameter{of}", declared
    )


def _lambda_parameter(source: Source, stack: Stack) -> Binding | None:
    """Return the binding of ``x`` in ``x -> ...`` and ``(x, y) -> ...``."""
    leaf = stack[-1]
    owner = stack[-2] if stack[-2].type == "lambda_expression" else stack[-3]
    parameters = owner.child_by_field_name("parameters")
    if not (same(parameters, leaf) or same(parameters, stack[-2])):
        return None
    scope = scope_of(source, stack)
    return Binding(leaf, owner.id, "parameter", scope, why="it is a parameter")


def _assigned(source: Source, stack: Stack) -> tuple[Binding, tuple[int, ...]] | None:
    """Return the value that an assignment gives, with the scopes around it, innermost first."""
    place = len(stack) - 1
    whose = stack[place - 1].child_by_field_name("object")
    member = stack[place - 1].type == "field_access" and whose is not None
    if member:
        if not same(stack[place - 1].child_by_field_name("field"), stack[place]):
            return None
        place -= 1
    element = stack[place - 1].type == "array_access"
    if element:
        if not same(stack[place - 1].child_by_field_name("array"), stack[place]):
            return None
        place -= 1
    above = stack[place - 1]
    if above.type != "assignment_expression" or not same(
        above.child_by_field_name("left"), stack[place]
    ):
        return None
    scope = scope_of(source, stack)
    operator = above.child_by_field_name("operator")
    plain = operator is not None and operator.type == "=" and not element
    value = above.child_by_field_name("right") if plain else None
    binding = Binding(
        stack[-1],
        0,
        "assigned" if plain else "unknown",
        scope,
        value,
        "it is changed at run time",
    )
    around = _around(source, scope, whose if member else None)
    return (binding, around) if around else None


def _around(source: Source, scope: Scope, whose: Node | None) -> tuple[int, ...]:
    """Return the scopes around a place in which a name may be declared, innermost first.

    With ``whose`` before it, as in ``this.name`` or ``Names.name``, these are types alone.
    """
    around: list[int] = []
    current: Scope | None = scope
    while current is not None:
        named = whose is None or whose.type == "this" or current.name == source.text(whose)
        if named and (whose is None or current.sort != "region"):
            around.append(current.node.id)
        current = current.outer
    return tuple(around)
