"""Where a C++ name gets a value: constants, members, locals, parameters, macros, classes."""

from __future__ import annotations

from itertools import pairwise
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace
from tree_sitter import Node

from namegen.languages.cpp.changes import Change, change_at
from namegen.languages.cpp.declarators import (
    PARAMETERS,
    Declared,
    arguments_as_parameters,
    declared,
)
from namegen.languages.cpp.macros import macro_value
from namegen.languages.cpp.names import dotted
from namegen.languages.cpp.openings import tries
from namegen.languages.cpp.scopes import CLASSES, Scope, function_declarator, scope_of
from namegen.languages.sources import Source, Stack, elements, same
from namegen.model.facts import Path

Way = Literal[
    "value", "each", "class", "namespace", "function", "enumerator", "parameter", "unknown",
    "declared", "empty", "assigned",
]  # fmt: skip
_NAMES = frozenset({"identifier", "field_identifier", "type_identifier", "namespace_identifier"})
_LISTS = frozenset({"initializer_list", "argument_list"})


class Binding(Struct, frozen=True):
    """One place that declares a name or gives it a value.

    ``path`` is the name with the scopes that it belongs to, ``value`` what it gets,
    worked out in ``within``. ``branch`` tells apart what stands in branches of ``#if``.
    """

    name: Node
    path: Path
    way: Way
    within: Scope
    value: Node | None = None
    why: str = ""
    declared: Node | None = None
    """The type it is declared with here."""
    points: bool = False
    """Whether it is a pointer or a reference to something of that type."""
    many: bool = False
    """Whether its value is a list of several."""
    fixed: bool = False
    """Whether nothing can change it: ``constexpr``, or ``const`` but for what is pointed to."""
    branch: tuple[tuple[int, int], ...] = ()


def bindings_of(source: Source, word: str) -> list[Binding]:
    """Return every binding of a word in the file, in every scope, in order."""
    found: list[Binding] = []
    changes: list[tuple[int, Change]] = []
    uses: list[Node] = []
    for stack in source.stacks([word]):
        if stack[-1].type not in _NAMES or len(stack) < 2:
            continue
        binding = _declared(source, stack)
        if binding is not None:
            early = _used_before(uses, binding)
            found += [early] if early is not None else []
            found.append(replace(binding, branch=_branch(stack)))
        else:
            uses += [stack[-1]] if stack[-1].type == "identifier" else []
            change = change_at(source, stack)
            changes += [(len(found), change)] if change is not None else []
    variables = {
        one.path: one for one in found if one.way not in {"function", "class", "namespace"}
    }
    members = [path for path, one in variables.items() if one.within.sort == "type"]
    for place, change in reversed(changes):
        if not change.words:
            found[place:place] = [_changed(change, path) for path in members]
            continue
        # An assignment belongs to the innermost scope around it that declares the name.
        tried = tries(source, change.within, change.words)
        path = next((one for one in tried if one in variables), None)
        if path is not None and not variables[path].fixed:
            found.insert(place, _changed(change, path))
    return found


def _used_before(uses: list[Node], binding: Binding) -> Binding | None:
    """Return that a local name is not known: further up in its block it is one further out."""
    is_local = len(binding.path) == 2 and binding.path[0][:1] == "@"
    if not is_local or not any(one.start_byte >= int(binding.path[0][1:]) for one in uses):
        return None
    return Binding(binding.name, binding.path, "unknown", binding.within)


def _changed(change: Change, path: Path) -> Binding:
    """Return what a change of the variable with this path binds it to."""
    way: Way = change.way if change.words else "unknown"
    value = _alone(change.value) if change.words else None
    return Binding(change.name, path, way, change.within, value, "it is changed at run time")


def _declared(source: Source, stack: Stack) -> Binding | None:
    """Return the declaration of which the last node of the stack is the name."""
    above = stack[-2]
    if above.type == "preproc_def":
        if not same(above.child_by_field_name("name"), stack[-1]):
            return None
        value = macro_value(source, above)
        why = "" if value is not None else "it is a macro without a text"
        scope = Scope("file", stack[0])
        way: Way = "value" if value is not None else "unknown"
        return Binding(stack[-1], (source.text(stack[-1]),), way, scope, value, why)
    found = declared(source, stack)
    if found is not None:
        return _variable(source, stack, found)
    return _named(source, stack)


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
    if not same(above.child_by_field_name("name"), leaf):
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
        return _parameter(source, stack, found)
    scope = scope_of(source, stack[: found.place + 1])
    within = scope
    if found.words[:-1]:  # `Boat::kName` is worked out where Boat is
        within = Scope("type", statement, scope, found.words[:-1])
    path = (*scope.path, *found.words)
    if found.sort == "function":
        return _function(stack, found, scope, path)
    if found.sort == "parts":
        return Binding(leaf, path, "unknown", scope, None, "it is a part of something else")
    if statement.type == "for_range_loop":
        inner = Scope("region", statement, scope)
        return Binding(leaf, (*inner.path, *found.words), "each", scope, found.value)
    many = found.sort == "many"
    value = found.value if many else _alone(found.value)
    way: Way = "value" if value is not None else "empty"
    if way == "empty" and _is_elsewhere(found, scope):
        way = "declared"
    fixed = _is_fixed(source, found)
    return Binding(leaf, path, way, within, value, "", found.type, found.points, many, fixed)


def _is_fixed(source: Source, found: Declared) -> bool:
    qualified = (one for one in found.statement.children if one.type == "type_qualifier")
    words = {source.text(one) for one in qualified}
    return "constexpr" in words or ("const" in words and "pointer_declarator" not in found.parts)


def _is_elsewhere(found: Declared, scope: Scope) -> bool:
    """Whether a variable without a value gets it in another place, perhaps of another file."""
    words = {one.text for one in found.statement.children if one.type == "storage_class_specifier"}
    return b"extern" in words or (b"static" in words and scope.sort == "type")


def _alone(value: Node | None) -> Node | None:
    """Return the one value of ``{5}`` and ``(5)``; anything else is returned as it is."""
    listed = elements(value) if value is not None and value.type in _LISTS else []
    return listed[0] if len(listed) == 1 else value


def _function(stack: Stack, found: Declared, scope: Scope, path: Path) -> Binding:
    """Return the binding of a function; ``std::string name(kBow)`` is a variable."""
    leaf, statement = stack[-1], found.statement
    if statement.type == "function_definition":
        path = (*path[:-1], f"{path[-1]}()")
        return Binding(leaf, path, "function", scope, statement)
    declarator = next(node for node in reversed(stack) if node.type == "function_declarator")
    given = arguments_as_parameters(declarator) if found.parts == ("function_declarator",) else []
    if len(given) == 1 and statement.type == "declaration":
        return Binding(leaf, path, "value", scope, given[0], "", found.type)
    return Binding(leaf, path, "declared", scope, None, "", found.type)


def _parameter(source: Source, stack: Stack, found: Declared) -> Binding | None:
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
    if caught:
        place = next(at for at, node in enumerate(stack) if same(node, own))
    scope = scope_of(source, stack[: place + 2])
    of = f" of `{scope.name}`" if scope.name else ""
    why = f"it is a parameter{of}"
    path = (*scope.path, *found.words)
    return Binding(stack[-1], path, "parameter", scope, None, why, found.type)


def _branch(stack: Stack) -> tuple[tuple[int, int], ...]:
    """Return the conditions of the preprocessor around a place, each with the branch's place."""
    found = []
    for node, child in pairwise(stack):
        if node.type in {"preproc_if", "preproc_ifdef", "preproc_elif", "preproc_else"}:
            other = child.type in {"preproc_elif", "preproc_else", "preproc_elifdef"}
            found.append((node.start_byte, 1 if other else 0))
    return tuple(found)
