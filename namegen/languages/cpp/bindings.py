"""Where a C++ name gets a value: by a declaration, or where a variable is changed later."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from msgspec.structs import replace
from tree_sitter import Node

from namegen.languages.cpp.aggregates import is_filled
from namegen.languages.cpp.binding import Binding, Way
from namegen.languages.cpp.branches import branch_of
from namegen.languages.cpp.changes import Change, change_at, changed
from namegen.languages.cpp.declarations import alone, declaration
from namegen.languages.cpp.macros import macros_with
from namegen.languages.definitions import CHANGED, HIDES
from namegen.languages.sources import Source
from namegen.model.facts import Path

FILLED = "a list of values may give an object another one"
_NAMES = frozenset({"identifier", "field_identifier", "type_identifier", "namespace_identifier"})
_FIXED = frozenset({"class", "declared", "function", "macro", "namespace"})


def bindings_of(source: Source, word: str) -> list[Binding]:
    """Return every binding of a word in the file, in every scope, in order."""
    found: list[Binding] = []
    changes: list[tuple[int, Change]] = []
    uses: list[Node] = []
    for stack in source.stacks([word]):
        if stack[-1].type not in _NAMES or len(stack) < 2:
            continue
        binding = declaration(source, stack)
        if binding is not None:
            early = _used_before(uses, binding)
            found += [early] if early is not None else []
            found.append(replace(binding, branch=branch_of(stack)))
        else:
            uses += [stack[-1]] if stack[-1].type == "identifier" else []
            change = change_at(source, stack)
            changes += [(len(found), change)] if change is not None else []
    changes += [(len(found), one) for one in _in_macros(source, word)]
    variables = _variables(found)
    places = {path: one.name.start_byte for path, one in variables.items()}
    for place, change in reversed(changes):
        paths, is_sure = changed(source, change, places)
        own = [variables[path] for path in paths]
        found[place:place] = _changed(change, own, () if is_sure else variables.values())
        found += _of_other_files(source, change) if not own else []
    filled = [one for one in variables.values() if not one.shared and is_filled(source, one)]
    more = (Binding(one.name, one.path, "unknown", one.within, None, FILLED) for one in filled)
    return [*found, *more]


def _variables(found: list[Binding]) -> Mapping[Path, Binding]:
    """Return what may be changed, by path; of several places the one that says it is fixed."""
    variables: dict[Path, Binding] = {}
    for one in found:
        if one.way not in _FIXED and (one.path not in variables or one.fixed):
            variables[one.path] = one
    return variables


def _used_before(uses: list[Node], binding: Binding) -> Binding | None:
    """Return that a local name is not known: further up in its block it is one further out."""
    is_local = len(binding.path) == 2 and binding.path[0][:1] == "@"
    if not is_local or not any(one.start_byte >= int(binding.path[0][1:]) for one in uses):
        return None
    return Binding(binding.name, binding.path, "unknown", binding.within, why=HIDES)


def _in_macros(source: Source, word: str) -> Iterator[Change]:
    """Yield the changes that the text of macros makes, wherever these are used.

    A macro may be another name of a variable: ``#define NAME name``, ``NAME = "bow"``.
    """
    for macro in macros_with(source, [word]):
        for stack in macro.body.stacks([word]) if word not in macro.parameters else ():
            inner = macro.block(stack)
            change = change_at(macro.body, inner, source) if len(inner) > 1 else None
            if change is None and not macro.parameters:
                uses = (change_at(source, one) for one in source.stacks([macro.name]) if one[1:])
                change = next((one for one in uses if one is not None), None)
            if change is not None:
                yield replace(change, words=(), value=None, way="altered", anywhere=True)


def _changed(
    change: Change, own: Sequence[Binding], others: Iterable[Binding]
) -> Iterator[Binding]:
    """Yield what a change binds: the variables that it is of, and others that it may be of."""
    for one in own:
        if _changes(change, one):
            value = alone(change.value)
            is_known = change.way in {"assigned", "built"}
            way: Way = "assigned" if is_known else "called" if change.way == "called" else "unknown"
            yield Binding(change.name, one.path, way, change.within, value, CHANGED)
    for one in others:
        may_be = change.anywhere or one.within.sort == "type"
        if one not in own and one.path[0][:1] != "@" and may_be and _changes(change, one):
            way = "called" if change.way == "called" else "unknown"
            yield Binding(change.name, one.path, way, change.within, None, CHANGED)


def _of_other_files(source: Source, change: Change) -> Iterator[Binding]:
    """Yield that what a header declares has another value here: a member, or a name further out."""
    if change.way not in {"assigned", "built"}:
        return
    for path in change.types(source):
        if path[0][:1] != "@":
            whole = (*path, source.text(change.name))
            yield Binding(change.name, whole, "elsewhere", change.within, None, CHANGED)
    if not change.words:
        return
    words = change.words[1:] if change.words[0] == "this" else change.words
    for scope in change.within.enclosing:
        if scope.sort != "region" and (scope.sort == "type" or change.words[0] != "this"):
            yield Binding(
                change.name, (*scope.path, *words), "elsewhere", change.within, None, CHANGED
            )


def _changes(change: Change, variable: Binding) -> bool:
    """Whether a change may be one of this variable."""
    if variable.fixed:
        return variable.fixed == "built" and change.way == "built"
    if change.way == "moved":
        return variable.way != "parameter"
    return change.way != "pointed" or variable.array
