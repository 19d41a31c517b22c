"""Where names get values in languages whose names belong to a type or a region: Java and its like.

A change of a variable is laid at the variable that it changes. Where that is not sure, as in
``boat.name = "bow"`` or in a class with a base, it may be any variable of that name of any object.
"""

from __future__ import annotations

from abc import ABC, abstractmethod
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace
from tree_sitter import Node

from namegen.languages.definitions import CHANGED, HANDED_ON, HIDES
from namegen.languages.scopes import Scope
from namegen.languages.sources import Source, Stack

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
    """One place that changes a variable, or hands a list on that others may change then.

    ``scopes`` are those that may declare the variable, innermost first; none where it is
    said to be an object's.
    """

    name: Node
    within: Scope
    scopes: tuple[Scope, ...]
    sort: Literal["assigned", "in place", "another name"] = "assigned"
    """What is done: the last is done only to what holds several; a text it leaves as it is."""
    value: Node | None = None
    """What is assigned, if just that is."""

    def at(self, owner: int) -> Binding:
        """Return what the change gives to the variable of an owner."""
        way: Way = "assigned" if self.value is not None else "unknown"
        why = HANDED_ON if self.sort == "another name" else CHANGED
        return Binding(self.name, owner, way, self.within, self.value, why)


class WordBindings(ABC):
    """Finds all bindings of one word in a file."""

    def __init__(self, source: Source, word: str) -> None:
        self.source = source
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
    def _holds_several(self, declaration: Binding) -> bool:
        """Whether a name stands for a list that can be changed."""

    @abstractmethod
    def _opens_more(self, scope: Scope) -> bool:
        """Whether names in a scope may be members that it does not declare: inherited ones."""

    def all(self) -> list[Binding]:
        """Return every binding of the word, in every scope, in order."""
        changes: list[Change] = []
        last_use = -1
        for stack in self.source.stacks([self.word]):
            if stack[-1].type != "identifier" or len(stack) < 2:
                continue
            binding = self._declared(stack)
            if binding is not None:
                if binding.within.hides(binding.owner, last_use):
                    hidden = replace(binding, way="unknown", value=None, why=HIDES)
                    self.found.append(hidden)
                self.found.append(binding)
            else:
                last_use = stack[-1].start_byte if self._is_alone(stack) else last_use
                change = self._change(stack)
                changes += [change] if change is not None else []
        laid = [one for change in changes for one in self._laid(change)]
        return sorted((*self.found, *laid), key=lambda one: one.name.start_byte)

    def _laid(self, change: Change) -> list[Binding]:
        """Return what a change binds: the innermost variable around it, others that it may be."""
        owners = {one.owner for one in self.found if one.way not in _NO_VARIABLES}
        nearest: int | None = None
        is_sure = bool(change.scopes)
        for scope in change.scopes:
            nearest = scope.node.id if scope.node.id in owners else None
            if nearest is not None:
                break
            is_sure = is_sure and not self._opens_more(scope)
        meant = [] if nearest is None else [nearest]
        if nearest is None or not is_sure:
            meant += [one for one in self._members(change) if one != nearest]
        if change.sort == "another name":
            lists = {one.owner for one in self.found if self._holds_several(one)}
            meant = [one for one in meant if one in lists]
        return [change.at(owner) for owner in meant]

    def _members(self, change: Change) -> list[int]:
        """Return the owners of all members that a change through an object may be of."""
        return sorted(
            {
                one.owner
                for one in self.found
                if one.way not in _NO_VARIABLES
                and one.within.sort in _MEMBERS
                and (change.sort != "assigned" or self._is_variable(one))
            }
        )
