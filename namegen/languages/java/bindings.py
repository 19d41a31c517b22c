"""Where a Java name gets a value: fields, locals, parameters, enum constants, types."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.alterations import Alterations
from namegen.languages.java.scopes import TYPES, scope_of
from namegen.languages.java.types import base_types, modifiers_of
from namegen.languages.owned_bindings import Binding, Change, WordBindings
from namegen.languages.scopes import Scope
from namegen.languages.sources import Source, Stack, same

_FIELDS = frozenset({"field_declaration", "constant_declaration"})
_PARAMETERS = frozenset({"formal_parameter", "spread_parameter", "catch_formal_parameter"})


def bindings_of(alterations: Alterations, word: str) -> list[Binding]:
    """Return every binding of a word in the file, in every scope, in order."""
    return _JavaBindings(alterations, word).all()


class _JavaBindings(WordBindings):
    """Finds all bindings of one word in a Java file."""

    def _declared(self, stack: Stack) -> Binding | None:
        return _declared(self.source, stack)

    def _is_alone(self, stack: Stack) -> bool:
        leaf, above = stack[-1], stack[-2]
        if above.type in {"field_access", "scoped_identifier"}:
            return same(above.named_children[0], leaf)
        is_method = above.type == "method_invocation"
        return not (is_method and same(above.child_by_field_name("name"), leaf))

    def _change(self, stack: Stack) -> Change | None:
        place, whose = _whole(stack)
        scope = scope_of(self.source, stack)
        scopes = self._scopes(scope, whose)
        above = stack[place - 1]
        left = above.child_by_field_name("left")
        if above.type != "assignment_expression" or not same(left, stack[place]):
            return self._alteration(stack, place, scopes)
        operator = above.child_by_field_name("operator")
        plain = operator is not None and operator.type == "="
        if not plain or not scopes:
            return Change(stack[-1], scope, scopes)
        value = above.child_by_field_name("right")
        return Change(stack[-1], scope, scopes, value=value)

    def _scopes(self, scope: Scope, whose: Node | None) -> tuple[Scope, ...]:
        """Return the scopes that may declare a name, innermost first; none for any object's.

        ``whose`` stands before it: ``this``, or a type around that is named.
        """
        if whose is None:
            return tuple(scope.enclosing)
        types = [one for one in scope.enclosing if one.sort != "region"]
        if whose.type == "this":
            return tuple(types)
        return tuple(one for one in types if one.name == self.source.text(whose))

    def _is_variable(self, declaration: Binding) -> bool:
        declarator = declaration.name.parent
        statement = declarator.parent if declarator is not None else None
        return statement is not None and "final" not in modifiers_of(self.source, statement)

    def _scope(self, stack: Stack) -> Scope:
        return scope_of(self.source, stack)

    def _opens_more(self, scope: Scope) -> bool:
        is_type = scope.sort == "anonymous" or scope.node.type == "class_declaration"
        return is_type and bool(base_types(self.source, scope.node))


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


def _whole(stack: Stack) -> tuple[int, Node | None]:
    """Return where ``name`` or ``boat.name`` stands, and what stands before it."""
    above = stack[-2]
    whose = above.child_by_field_name("object") if above.type == "field_access" else None
    if whose is None or not same(above.child_by_field_name("field"), stack[-1]):
        return len(stack) - 1, None
    return len(stack) - 2, whose
