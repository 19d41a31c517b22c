"""Where a Kotlin name gets a value: properties, locals, parameters, enum entries, types."""

from __future__ import annotations

from typing import Literal

from msgspec import Struct
from msgspec.structs import replace
from tree_sitter import Node

from namegen.languages.expressions import RUN_TIME
from namegen.languages.kotlin.altering import alters, has_receiver
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
from namegen.languages.scopes import Scope
from namegen.languages.sources import Source, Stack, named_child, same

Way = Literal[
    "value",
    "each",
    "type",
    "alias",
    "constant",
    "method",
    "parameter",
    "unknown",
    "declared",
    "assigned",
]

_IT = "it"
"""What the one parameter of a lambda is called that names none."""
_HIDES = "further up it is another one"
_CHANGED = "it is changed at run time"
_OPEN = "a subclass may give another one"


class Binding(Struct, frozen=True):
    """One place that declares a name or gives it a value.

    ``owner`` is the node of the type or region that the name belongs to,
    ``value`` what it gets, worked out in ``within``. A parameter's is its default.
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
    of_others: list[Binding] = []
    last_use = -1
    for stack in source.stacks([word]):
        if stack[-1].type != "identifier" or len(stack) < 2:
            continue
        binding = _it(source, stack, found) if word == _IT else _declared(source, stack)
        if binding is not None:
            if word != _IT and binding.within.hides(binding.owner, last_use):
                found.append(replace(binding, way="unknown", value=None, why=_HIDES))
            found.append(binding)
        else:
            last_use = stack[-1].start_byte if _is_alone(stack) else last_use
            changed = _assigned(source, stack)
            changes += [(len(found), *changed)] if changed is not None else []
            of_others += _of_another(source, stack)
    # An assignment belongs to the innermost scope around it that declares the name.
    owners = {binding.owner for binding in found if binding.way not in {"method", "type"}}
    for place, change, scopes in reversed(changes):
        owner = next((scope for scope in scopes if scope in owners), None)
        if owner is not None:
            found.insert(place, replace(change, owner=owner))
    # Which object it is whose property gets another value, nobody knows: it may be any.
    whose = {one.owner for one in found if _is_variable(one)}
    return found + [replace(one, owner=owner) for one in of_others for owner in sorted(whose)]


def _is_alone(stack: Stack) -> bool:
    """Whether a word is a name by itself: no object's, no type's, no argument's."""
    leaf, above = stack[-1], stack[-2]
    if above.type == "navigation_expression":
        return same(named_child(above, 0), leaf)
    is_key = above.type == "value_argument" and above.child_count > 1
    return not (is_key and same(above.children[0], leaf)) and above.type not in {
        "call_expression",
        "user_type",
    }


def _declared(source: Source, stack: Stack) -> Binding | None:  # noqa: PLR0911 - one per form
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
    if kind == "type_alias" and same(parent.child_by_field_name("type"), leaf):
        return Binding(leaf, scope.node.id, "alias", scope, parent.children[-1])
    if not same(parent.child_by_field_name("name"), leaf):
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


def _it(source: Source, stack: Stack, found: list[Binding]) -> Binding | None:
    """Return what ``it`` is in the innermost lambda without parameters, once for each."""
    for place in range(len(stack) - 1, 0, -1):
        inner = stack[place]
        if inner.type != "lambda_literal" or child_of(inner, "lambda_parameters") is not None:
            continue
        if any(one.owner == inner.id for one in found):
            return None
        scope = scope_of(source, stack[: place + 2])
        way, value = given_to(source, stack[: place + 1]) or ("parameter", None)
        return Binding(stack[-1], inner.id, way, scope, value, "it is a parameter")
    return None


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
        return None, _OPEN
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


def _assigned(source: Source, stack: Stack) -> tuple[Binding, tuple[int, ...]] | None:
    """Return the value that an assignment gives, with the scopes around it, innermost first."""
    place, own = _whole(stack)
    target, above = stack[place], stack[place - 1]
    scope = scope_of(source, stack)
    if place > 1 and alters(source, target, above, stack[place - 2]):
        return Binding(stack[-1], 0, "unknown", scope, None, _CHANGED), _around(scope, own=own)
    if above.type != "assignment" or not same(above.child_by_field_name("left"), target):
        return None
    operator = above.child_by_field_name("operator")
    plain = operator is not None and operator.type == "="
    value = above.child_by_field_name("right") if plain else None
    way: Way = "assigned" if plain else "unknown"
    return Binding(stack[-1], 0, way, scope, value, _CHANGED), _around(scope, own=own)


def _whole(stack: Stack) -> tuple[int, bool]:
    """Return where ``name`` or ``this.name`` stands in the stack, and whether ``this`` is there."""
    above = stack[-2]
    own = above.type == "navigation_expression" and same(above.named_children[-1], stack[-1])
    if own and above.named_children[0].type == "this_expression" and len(stack) > 2:
        return len(stack) - 2, True
    return len(stack) - 1, False


def _around(scope: Scope, *, own: bool) -> tuple[int, ...]:
    """Return the scopes in which a name may be declared, innermost first; of ``this``, types."""
    found: list[int] = []
    current: Scope | None = scope
    while current is not None:
        if not own or current.sort != "region":
            found.append(current.node.id)
        current = current.outer
    return tuple(found)


def _is_variable(binding: Binding) -> bool:
    """Whether a name is that of a property of objects, declared with ``var``."""
    declaration = binding.name.parent
    if declaration is not None and declaration.type == "variable_declaration":
        declaration = declaration.parent
    if binding.within.sort not in {"type", "anonymous"} or declaration is None:
        return False
    return any(child.type == "var" for child in declaration.children)


def _of_another(source: Source, stack: Stack) -> list[Binding]:
    """Return that a property is changed through an object: ``boat.name = "bow"``.

    In a lambda, or in a function of another class, ``name = "bow"`` may do so too.
    """
    place, own = _whole(stack)
    access = stack[-2]
    if access.type == "navigation_expression" and not own and len(stack) > 2:
        if not same(access.named_children[-1], stack[-1]):
            return []
        place = len(stack) - 2
    elif not any(has_receiver(node) for node in stack):
        return []
    above = stack[place - 1]
    if above.type != "assignment" or not same(above.child_by_field_name("left"), stack[place]):
        return []
    return [Binding(stack[-1], 0, "unknown", scope_of(source, stack), None, _CHANGED)]
