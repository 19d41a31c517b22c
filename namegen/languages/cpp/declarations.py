"""Where a C++ name is declared: constants, members, locals, parameters, macros, classes."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.cpp.binding import Binding, Way
from namegen.languages.cpp.declarators import PARAMETERS, Declared, declared
from namegen.languages.cpp.lists import GIVEN
from namegen.languages.cpp.macros import macro_value
from namegen.languages.cpp.names import dotted
from namegen.languages.cpp.scopes import CLASSES, Scope, scope_of
from namegen.languages.cpp.signatures import function, parameter
from namegen.languages.cpp.storage import fixed_as, is_array, is_elsewhere, is_shared
from namegen.languages.sources import Source, Stack, elements, is_field, same


def declaration(source: Source, stack: Stack) -> Binding | None:
    """Return the declaration of which the last node of the stack is the name."""
    above = stack[-2]
    if above.type == "preproc_def":
        if not is_field(above, "name", stack[-1]):
            return None
        value = macro_value(source, above)
        why = "" if value is not None else "it is a macro without a text"
        scope = Scope("file", stack[0])
        way: Way = "value" if value is not None else "unknown"
        return Binding(stack[-1], (source.text(stack[-1]),), way, scope, value, why)
    found = declared(source, stack)
    if found is not None:
        return _variable(source, stack, found)
    if above.type == "preproc_function_def":
        return _function_macro(source, stack)
    return _named(source, stack)


def _function_macro(source: Source, stack: Stack) -> Binding | None:
    """Return the binding of ``#define MOTOR(name)``; what a call of it gives is not followed."""
    if not is_field(stack[-2], "name", stack[-1]):
        return None
    scope, why = Scope("file", stack[0]), "it is a macro with arguments"
    return Binding(stack[-1], (source.text(stack[-1]),), "macro", scope, None, why)


def _named(source: Source, stack: Stack) -> Binding | None:  # noqa: PLR0911 - one per form
    """Return the class, namespace or enumerator that the last node of the stack names."""
    leaf, above = stack[-1], stack[-2]
    if above.type == "nested_namespace_specifier":
        before = [one for one in above.named_children if one.end_byte <= leaf.start_byte]
        scope = scope_of(source, stack[:-2])
        words = [source.text(one) for one in (*before, leaf)]
        if stack[-3].type != "namespace_definition":
            return None
        return Binding(leaf, (*scope.path, *words), "namespace", scope)
    if above.type == "lambda_capture_initializer":
        return _captured(source, stack)
    if not is_field(above, "name", leaf):
        return None
    scope = scope_of(source, stack[:-1])
    path = (*scope.path, source.text(leaf))
    if above.type in CLASSES:
        whole = above.child_by_field_name("body") is not None
        return Binding(leaf, path, "class" if whole else "declared", scope, above)
    if above.type == "namespace_definition":
        return Binding(leaf, path, "namespace", scope)
    if above.type == "enumerator":
        return _enumerator(source, stack, scope)
    return None


def _captured(source: Source, stack: Stack) -> Binding | None:
    """Return the binding of ``[name = "bow"]``, which the lambda's body sees."""
    left, value = stack[-2].child_by_field_name("left"), stack[-2].child_by_field_name("right")
    if not same(left, stack[-1]) or len(stack) < 5:
        return None
    scope = scope_of(source, stack)
    outer = scope.outer or scope
    return Binding(stack[-1], (*scope.path, source.text(stack[-1])), "value", outer, value)


def _enumerator(source: Source, stack: Stack, scope: Scope) -> Binding:
    leaf, enum = stack[-1], stack[-4]
    name = dotted(source, enum.child_by_field_name("name"))
    strict = any(child.type in {"class", "struct"} for child in enum.children)
    path = (*scope.path, *((name or ()) if strict else ()), source.text(leaf))
    value = stack[-2].child_by_field_name("value")
    return Binding(leaf, path, "enumerator", scope, value, "an enumerator is a number, not text")


def _variable(source: Source, stack: Stack, found: Declared) -> Binding | None:
    leaf, statement = stack[-1], found.statement
    if statement.type in PARAMETERS:
        return parameter(source, stack, found)
    scope = scope_of(source, stack[: found.place + 1])
    within = scope
    if found.words[:-1]:  # `Boat::kName` is worked out where Boat is
        within = Scope("type", statement, scope, found.words[:-1])
    path = (*scope.path, *found.words)
    if found.sort == "function":
        return function(stack, found, scope, path)
    if found.sort == "parts":
        return Binding(leaf, path, "unknown", scope, None, "it is a part of something else")
    if statement.type == "for_range_loop":
        inner = Scope("region", statement, scope)
        fixed = fixed_as(source, stack, found, shared=True)
        path = (*inner.path, *found.words)
        kind = found.type
        return Binding(leaf, path, "each", scope, found.value, declared=kind, fixed=fixed)
    many = found.sort == "many"
    value = found.value if many else alone(found.value)
    way: Way = "value" if value is not None else "empty"
    if way == "empty" and is_elsewhere(found, scope):
        way = "declared"
    is_member = scope.sort == "type" and statement.type == "field_declaration"
    array, shared = is_array(source, found), not is_member or is_shared(source, found)
    fixed = fixed_as(source, stack, found, shared=shared)
    kind, points = found.type, found.points
    return Binding(leaf, path, way, within, value, "", kind, points, many, array, fixed, shared)


def alone(value: Node | None) -> Node | None:
    """Return the one value of ``{5}`` and ``(5)``; anything else is returned as it is."""
    listed = elements(value) if value is not None and value.type in GIVEN else []
    return listed[0] if len(listed) == 1 else value
