"""What the head of a C++ function declares: the function itself and its parameters."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.cpp.binding import Binding
from namegen.languages.cpp.chains import begun
from namegen.languages.cpp.declarators import (
    INDIRECT,
    PARAMETERS,
    Declared,
    arguments_as_parameters,
)
from namegen.languages.cpp.names import dotted
from namegen.languages.cpp.scopes import Scope, function_declarator, scope_of
from namegen.languages.cpp.storage import fixed_as
from namegen.languages.sources import Source, Stack, elements, same
from namegen.model.facts import Path

_EACH = frozenset({"all_of", "any_of", "count_if", "find_if", "for_each", "none_of"})
"""Functions of ``std::`` that give a function the elements between two iterators."""


def function(stack: Stack, found: Declared, scope: Scope, path: Path) -> Binding:
    """Return the binding of a function; ``std::string name(kBow)`` is a variable."""
    leaf, statement = stack[-1], found.statement
    called = (*path[:-1], f"{path[-1]}()")
    if found.specialised:
        return Binding(leaf, called, "unknown", scope, None, "it is a template with several bodies")
    if statement.type == "function_definition":
        return Binding(leaf, called, "function", scope, statement)
    declarator = next(node for node in reversed(stack) if node.type == "function_declarator")
    before = INDIRECT | {"function_declarator"}
    given = arguments_as_parameters(declarator) if before.issuperset(found.parts) else []
    if len(given) == 1 and statement.type == "declaration":
        return Binding(leaf, path, "value", scope, given[0], "", found.type, found.points)
    return Binding(leaf, path, "declared", scope, None, "", found.type)


def parameter(source: Source, stack: Stack, found: Declared) -> Binding | None:
    """Return the binding of a parameter of a function that has a body here."""
    place = found.place - 1
    own = stack[place - 1] if stack[place].type == "parameter_list" else None
    while place and stack[place].type not in {"function_definition", "lambda_expression"}:
        if stack[place].type in {"declaration", "field_declaration", *PARAMETERS}:
            return None
        place -= 1
    holder = stack[place]
    caught = own is not None and own.type == "catch_clause"
    if own is None or not (caught or same(function_declarator(holder), own)):
        return None
    listed = _given_each(source, stack[: place + 1]) if holder.type == "lambda_expression" else None
    if listed is not None:
        inner, outer = scope_of(source, stack[: place + 2]), scope_of(source, stack[: place + 1])
        path = (*inner.path, *found.words)
        return Binding(stack[-1], path, "each", outer, listed, declared=found.type)
    if caught:
        place = next(at for at, node in enumerate(stack) if same(node, own))
    scope = scope_of(source, stack[: place + 2])
    of = f" of `{scope.name}`" if scope.name else ""
    why = f"it is a parameter{of}"
    path = (*scope.path, *found.words)
    fixed = fixed_as(source, stack, found, shared=True)
    return Binding(stack[-1], path, "parameter", scope, None, why, found.type, fixed=fixed)


def _given_each(source: Source, stack: Stack) -> Node | None:
    """Return the list whose elements the lambda at the end of the stack gets one by one."""
    call = stack[-3] if len(stack) > 3 and stack[-2].type == "argument_list" else None
    words = dotted(source, call.child_by_field_name("function")) if call is not None else None
    given = elements(stack[-2])
    if not words or words[-1] not in _EACH or len(given) != 3:
        return None
    return begun(source, given[0])
