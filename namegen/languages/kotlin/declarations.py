"""What declares a name in Kotlin: properties, locals, parameters, enum entries, types."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.definitions import OVERRIDDEN
from namegen.languages.expressions import RUN_TIME
from namegen.languages.kotlin.expressions import opened
from namegen.languages.kotlin.lambdas import given_to
from namegen.languages.kotlin.scopes import TYPES, scope_of
from namegen.languages.kotlin.trees import (
    after_sign,
    called_of,
    child_of,
    default_of,
    lambda_of,
    last_name,
    modifiers_of,
    statements,
)
from namegen.languages.owned_names import Binding, Way
from namegen.languages.scopes import Scope
from namegen.languages.sources import Source, Stack, is_field, named_child, same


def declared(source: Source, stack: Stack) -> Binding | None:  # noqa: PLR0911 - one per form
    """Return the declaration of which the last node of the stack is the name."""
    leaf, parent = stack[-1], stack[-2]
    kind = parent.type
    first = same(named_child(parent, 0), leaf) or same(child_of(parent, "identifier"), leaf)
    scope = scope_of(source, stack)
    outer = scope.outer or scope
    if kind == "variable_declaration" and first:
        return _variable(source, stack, scope)
    if kind == "parameter" and first:
        return _parameter(stack, scope, default_of(stack[-3], parent))
    if kind == "class_parameter" and first:
        return _parameter(stack, scope, after_sign(parent, "="))
    if kind in {"catch_block", "setter"} and first:
        return Binding(leaf, scope.node.id, "unknown", scope, why=RUN_TIME)
    if kind == "enum_entry" and first:
        return Binding(leaf, scope.node.id, "constant", scope, parent)
    if kind == "type_alias" and is_field(parent, "type", leaf):
        return Binding(leaf, scope.node.id, "alias", scope, parent.children[-1])
    if not is_field(parent, "name", leaf):
        return None
    if kind in TYPES:
        return Binding(leaf, outer.node.id, "type", outer, parent)
    if kind == "function_declaration":
        return Binding(leaf, outer.node.id, "method", scope, parent)
    return None


def _variable(source: Source, stack: Stack, scope: Scope) -> Binding:
    """Return the binding of a property, a local, a loop's or a lambda's variable."""
    leaf, declared, above = stack[-1], type_of(stack[-2]), stack[-3]
    of = scope.node.id
    match above.type:
        case "property_declaration":
            value, why = _initial(source, above, scope)
            way: Way = "unknown" if why else "value" if value is not None else "declared"
            return Binding(leaf, of, way, scope, value, why, declared)
        case "for_statement":
            return Binding(leaf, of, "each", scope, after_sign(above, "in"))
        case "when_subject":
            return Binding(leaf, of, "value", scope, after_sign(above, "="))
        case "lambda_parameters":
            given = given_to(source, stack[:-3]) if above.named_child_count == 1 else None
            if given is not None:
                return Binding(leaf, of, given[0], scope, given[1])
            return Binding(leaf, of, "parameter", scope, None, "it is a parameter", declared)
    return Binding(leaf, of, "unknown", scope, None, RUN_TIME, declared)


def _initial(source: Source, declaration: Node, scope: Scope) -> tuple[Node | None, str]:
    """Return the value of a property, or why it is not known; neither where it is given later."""
    getter, delegate = child_of(declaration, "getter"), child_of(declaration, "property_delegate")
    value = after_sign(declaration, "=")
    if getter is not None:
        value = returned(getter)
    elif delegate is not None:
        value = _lazily(source, delegate)
    if value is None and (getter is not None or delegate is not None):
        return None, RUN_TIME
    if scope.sort == "type" and may_be_overridden(source, declaration, scope):
        return None, OVERRIDDEN
    return value, ""


def returned(function: Node) -> Node | None:
    """Return what the body of a function or getter always gives, if that is written as one."""
    body = child_of(function, "function_body")
    if body is None:
        return None
    value = after_sign(body, "=")
    block = child_of(body, "block")
    if value is not None or block is None:
        return value
    inner = statements(block)
    alone = inner[0] if len(inner) == 1 and inner[0].type == "return_expression" else None
    return named_child(alone, 0) if alone is not None else None


def _lazily(source: Source, delegate: Node) -> Node | None:
    """Return what ``by lazy { value }`` gives."""
    call = named_child(delegate, 0)
    body = lambda_of(call) if call is not None else None
    name = last_name(called_of(opened(call))) if call is not None else None
    if name is None and call is not None:  # lazy(MODE) { value }
        inner = called_of(call)
        name = last_name(called_of(inner)) if inner is not None else None
    if body is None or name is None or source.text(name) != "lazy":
        return None
    inner_statements = statements(body)
    return inner_statements[0] if len(inner_statements) == 1 else None


def may_be_overridden(source: Source, declaration: Node, owner: Scope) -> bool:
    """Whether a subclass can give the member another value or body."""
    words = modifiers_of(source, declaration)
    if words & {"final", "private"}:
        return False
    if owner.node.type != "class_declaration":
        return False
    is_interface = any(child.type == "interface" for child in owner.node.children)
    extended = modifiers_of(source, owner.node) & {"open", "abstract", "sealed"}
    return is_interface or bool(words & {"open", "abstract"} or (extended and "override" in words))


def _parameter(stack: Stack, scope: Scope, default: Node | None) -> Binding:
    of = f" of `{scope.name}`" if scope.name else ""
    why = f"it is a parameter{of}"
    return Binding(stack[-1], scope.node.id, "parameter", scope, default, why, type_of(stack[-2]))


def type_of(declaration: Node) -> Node | None:
    """Return the type in ``name: Type``."""
    return after_sign(declaration, ":")
