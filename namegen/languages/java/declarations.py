"""What declares a name in Java: fields, locals, parameters, enum constants, types."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.java.scopes import TYPES, scope_of
from namegen.languages.owned_names import Binding
from namegen.languages.scopes import Scope
from namegen.languages.sources import Source, Stack, is_field, same

_FIELDS = frozenset({"field_declaration", "constant_declaration"})
_CALL = "method_invocation"
EACH = frozenset({"allMatch", "anyMatch", "filter", "forEach", "map", "noneMatch", "peek"})
"""Methods of Java's library that hand over each of what they are called on."""
_PARAMETERS = frozenset({"formal_parameter", "spread_parameter", "catch_formal_parameter"})


def declared(source: Source, stack: Stack) -> Binding | None:  # noqa: PLR0911 - one per form
    """Return the declaration of which the last node of the stack is the name."""
    leaf, parent = stack[-1], stack[-2]
    kind = parent.type
    if kind in {"lambda_expression", "inferred_parameters"}:
        return _lambda_parameter(source, stack)
    if not is_field(parent, "name", leaf):
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
    over = _runs_over(source, stack[: stack.index(owner)], owner)
    count = 1 if parameters is None or same(parameters, leaf) else parameters.named_child_count
    if over is not None and count == 1:
        return Binding(leaf, owner.id, "each", scope, over)
    return Binding(leaf, owner.id, "parameter", scope, why="it is a parameter")


def _runs_over(source: Source, stack: Stack, function: Node) -> Node | None:
    """Return what a lambda is handed each element of: ``ALL`` in ``ALL.forEach(n -> ...)``."""
    given, call = stack[-1], stack[-2]
    if given.type != "argument_list" or given.named_child_count != 1 or call.type != _CALL:
        return None
    name = call.child_by_field_name("name")
    each = name is not None and source.text(name) in EACH
    return call.child_by_field_name("object") if each else None
