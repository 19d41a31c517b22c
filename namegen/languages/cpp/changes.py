"""Where a C++ variable gets another value than the one that it is declared with."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import takewhile
from typing import Literal

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.cpp.altering import alteration
from namegen.languages.cpp.classes import classes_of
from namegen.languages.cpp.names import dotted
from namegen.languages.cpp.openings import tries
from namegen.languages.cpp.owners import members_of, own_types
from namegen.languages.cpp.scopes import Scope, scope_of
from namegen.languages.cpp.variable_uses import Alteration
from namegen.languages.sources import Source, Stack, assigned_to, is_field, same
from namegen.model.facts import Path

_VARIABLES = frozenset({"field_identifier", "identifier"})


class Change(Struct, frozen=True):
    """One place that changes a variable.

    ``words`` say which: ``("name",)``, ``("this", "name")``, ``("space", "name")``; empty
    where it is a member of another object, of whatever class. ``value`` is what it gets.
    """

    name: Node
    words: Path
    way: Literal["assigned", "built"] | Alteration
    """``built``: a constructor gives it a value, as it may to what is constant then."""
    within: Scope
    value: Node | None = None
    anywhere: bool = False
    """Whether it may be any variable of this name, and not only a member."""
    whose: Node | None = None
    """The object whose member it is, where it is that of another one."""

    def types(self, source: Source) -> Sequence[Path]:
        """Return the paths that the class of that object may have; none where it is not told."""
        return own_types(source, self.within, self.whose) if self.whose is not None else ()


def change_at(source: Source, stack: Stack, file: Source | None = None) -> Change | None:
    """Return the change that the last node of the stack names the variable of.

    ``file`` is given where the source is the text of one of its macros.
    """
    leaf, above = stack[-1], stack[-2]
    if leaf.type not in _VARIABLES and above.type != "parameter_declaration":
        return None
    scope = scope_of(source, stack)
    if above.type == "field_designator":
        return Change(leaf, (), "built", scope)
    if above.type == "field_initializer" and same(above.named_children[0], leaf):
        own = ("this", source.text(leaf))  # what a constructor's list gives to a member
        return Change(leaf, own, "built", scope, above.named_children[-1])
    place, words = _whole(source, stack)
    whose = None
    if not words and stack[-2].type == "field_expression":
        whose = stack[-2].child_by_field_name("argument")
    value = assigned_to(stack[place], stack[place - 1])
    if value is not None:
        return Change(leaf, words, "assigned", scope, value, whose=whose)
    way = alteration(source, stack, file)
    return Change(leaf, words, way, scope, whose=whose) if way is not None else None


def _whole(source: Source, stack: Stack) -> tuple[int, Path]:
    """Return where ``this->name`` or ``space::name`` stands as a whole, with its words."""
    place = len(stack) - 1
    above = stack[place - 1]
    if above.type == "field_expression" and is_field(above, "field", stack[-1]):
        whose = above.child_by_field_name("argument")
        is_own = whose is not None and whose.type == "this"
        return place - 1, ("this", source.text(stack[-1])) if is_own else ()
    while place > 1 and stack[place - 1].type == "qualified_identifier":
        if not is_field(stack[place - 1], "name", stack[place]):
            break
        place -= 1
    return place, dotted(source, stack[place]) or ()


def changed(
    source: Source, change: Change, variables: Mapping[Path, int]
) -> tuple[Sequence[Path], bool]:
    """Return the paths of the variables that a change is of, and whether it is these for sure.

    ``variables`` tell where each is declared. It is the one of the innermost scope that declares
    the name, in a function or block further up than it is changed. It may be another one, where
    classes in between may inherit such a name from some that the file does not tell of.
    """
    if change.whose is not None:
        member = source.text(change.name)
        mine = members_of(source, change.types(source), member, variables)
        return mine or (), mine is not None
    tried = tries(source, change.within, change.words) if change.words else ()
    known = (one for one in tried if one in variables)
    start = change.name.start_byte
    path = next((one for one in known if one[0][:1] != "@" or variables[one] < start), None)
    if path is None:
        return (), False
    if len(change.words) > 1:
        return (path,), True
    inner = takewhile(lambda one: one.path != path[:-1], change.within.enclosing)
    return (path,), not any(one.sort == "type" and _may_inherit(source, one) for one in inner)


def _may_inherit(source: Source, scope: Scope) -> bool:
    """Whether a class may have members that the file does not say it has itself."""
    known = [one for one in classes_of(source, scope.name) if one.path == scope.path]
    return not known or any(one.bases or one.dependent for one in known)
