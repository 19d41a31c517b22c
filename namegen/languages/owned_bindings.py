"""Where names get values in languages whose names belong to a type or a region: Java and its like.

A change of a variable is laid at the variable that it changes. Where that is not sure, as in
``boat.name = "bow"`` or in a class with a base, it may be any variable of that name of any object.
"""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Iterable
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace
from tree_sitter import Node

from namegen.languages.alterations import Alterations
from namegen.languages.definitions import CHANGED, HIDES
from namegen.languages.scopes import Scope
from namegen.languages.sources import Stack

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

_NO_VARIABLES = frozenset({"alias", "constant", "method", "type"})
_TEXTS = frozenset({"String", "String?"})
_MEMBERS = frozenset({"type", "anonymous"})


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


class Change(Struct, frozen=True):
    """One place that changes a variable, or names a list anew which is changed by that name.

    ``scopes`` are those that may declare the variable, innermost first; none where it is
    said to be an object's.
    """

    name: Node
    within: Scope
    scopes: tuple[Scope, ...]
    value: Node | None = None
    """What is assigned, if just that is."""
    in_place: bool = False
    """Whether what it holds is changed, as can be done to what gets no other value."""
    why: str = CHANGED

    def at(self, owner: int) -> Binding:
        """Return what the change gives to the variable of an owner."""
        way: Way = "assigned" if self.value is not None else "unknown"
        return Binding(self.name, owner, way, self.within, self.value, self.why)


class WordBindings(ABC):
    """Finds all bindings of one word in a file."""

    def __init__(self, alterations: Alterations, word: str) -> None:
        self.alterations = alterations
        self.source = alterations.source
        self.word = word
        self.found: list[Binding] = []

    @abstractmethod
    def _declared(self, stack: Stack) -> Binding | None:
        """Return the declaration of which the last node of the stack is the name."""

    @abstractmethod
    def _change(self, stack: Stack) -> Change | None:
        """Return the change of the variable that the last node of the stack names."""

    @abstractmethod
    def _is_alone(self, stack: Stack) -> bool:
        """Whether a word is the name of a variable by itself: no method's, no object's."""

    @abstractmethod
    def _is_variable(self, declaration: Binding) -> bool:
        """Whether a member of a type can get another value."""

    @abstractmethod
    def _scope(self, stack: Stack) -> Scope:
        """Return the scope that the last node of the stack lies in."""

    @abstractmethod
    def _opens_more(self, scope: Scope) -> bool:
        """Whether names in a scope may be members that it does not declare: inherited ones."""

    def all(self) -> list[Binding]:
        """Return every binding of the word, in every scope, in order."""
        changes: list[Change] = []
        uses: list[tuple[int, int]] = []
        for stack in self.source.stacks([self.word]):
            if stack[-1].type != "identifier" or len(stack) < 2:
                continue
            binding = self._declared(stack)
            if binding is not None:
                if _is_used_above(binding, uses):
                    hidden = replace(binding, way="unknown", value=None, why=HIDES)
                    self.found.append(hidden)
                self.found.append(binding)
            else:
                uses += [self._use(stack[-1])] if self._is_alone(stack) else []
                change = self._change(stack)
                changes += [change] if change is not None else []
        laid = [one for change in changes for one in self._laid(change)]
        return sorted((*self.found, *laid), key=lambda one: one.name.start_byte)

    def _use(self, name: Node) -> tuple[int, int]:
        """Return where a word is used, and where the innermost region starts that declares it."""
        at = name.start_byte
        regions = (one.within.node for one in self.found if one.owner == one.within.node.id)
        around = (one.start_byte for one in regions if one.start_byte <= at < one.end_byte)
        return at, max(around, default=-1)

    def _alteration(self, stack: Stack, place: int, scopes: tuple[Scope, ...]) -> Change | None:
        """Return the change in place of what stands at a place, by this name or another one."""
        why = self.alterations.why(stack[: place + 1])
        return Change(stack[-1], self._scope(stack), scopes, None, True, why) if why else None

    def _laid(self, change: Change) -> list[Binding]:
        """Return what a change binds: the innermost variable around it, others that it may be."""
        owners = {one.owner for one in self.found if one.way not in _NO_VARIABLES}
        nearest: Scope | None = None
        passed: list[Scope] = []
        for scope in change.scopes:
            if scope.node.id in owners:
                nearest = scope
                break
            passed += [scope] if self._opens_more(scope) else []
        if nearest is not None and nearest.sort == "region":  # a local one comes before a member
            passed = [one for one in passed if one.sort != "region"]
        meant = [] if nearest is None else [nearest.node.id]
        if nearest is None or passed:
            meant += [one for one in self._members(change) if one not in meant]
        fixed = self._texts() if change.in_place else set()
        return [change.at(owner) for owner in meant if owner not in fixed]

    def _texts(self) -> set[int]:
        """Return the owners of what is declared to be a text, which nothing changes in place."""
        declared = (one for one in self.found if one.declared is not None)
        return {
            one.owner
            for one in declared
            if one.declared is not None and self.source.text(one.declared) in _TEXTS
        }

    def _members(self, change: Change) -> list[int]:
        """Return the owners of all members that a change through an object may be of."""
        return sorted(
            {
                one.owner
                for one in self.found
                if one.way not in _NO_VARIABLES
                and one.within.sort in _MEMBERS
                and (change.in_place or self._is_variable(one))
            }
        )


def _is_used_above(binding: Binding, uses: Iterable[tuple[int, int]]) -> bool:
    """Whether a local name stands further up in its block, where it is one further out."""
    scope = binding.within
    if scope.sort != "region" or binding.owner != scope.node.id:
        return False
    start = scope.node.start_byte
    return any(at >= start >= declared for at, declared in uses)
