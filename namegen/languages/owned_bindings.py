"""Where names get values in languages whose names belong to a type or a region: Java and its like.

A change of a variable is laid at the variable that it changes. Where that is not sure, as in
``boat.name = "bow"`` or in a class with a base, it may be any variable of that name of any object.
"""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections import Counter
from collections.abc import Iterable, Iterator, Set

from msgspec.structs import replace
from tree_sitter import Node

from namegen.languages.alterations import Alterations
from namegen.languages.definitions import HIDES
from namegen.languages.earlier_uses import EarlierUses
from namegen.languages.families import Families
from namegen.languages.owned_names import NO_VARIABLES, TEXTS, Binding, Change
from namegen.languages.scopes import Scope
from namegen.languages.sources import Stack, assigned_to, is_field

_ANY_OWNER = 0
_ENOUGH = 2
"""Changes of a variable that may be another one, after which more of them tell nothing."""
_MEMBERS = frozenset({"type", "anonymous"})


class WordBindings(ABC):
    """Finds all bindings of one word in a file."""

    def __init__(self, alterations: Alterations, families: Families, word: str) -> None:
        self.alterations, self.families = alterations, families
        self.source, self.naming = alterations.source, families.NAMING
        self.word = word
        self.found: list[Binding] = []

    def _declared(self, stack: Stack) -> Binding | None:
        """Return the declaration of which the last node of the stack is the name."""
        return self.naming.declared(self.source, stack)

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
    def _opens_more(self, scope: Scope) -> bool:
        """Whether names in a scope may be members that it does not declare: inherited ones."""

    def all(self) -> list[Binding]:
        """Return every binding of the word, in every scope, in order."""
        changes: list[Change] = []
        uses = EarlierUses()
        for stack in self.source.stacks([self.word]):
            if stack[-1].type != "identifier" or len(stack) < 2:
                continue
            binding = self._declared(stack)
            if binding is not None:
                if uses.are_above(binding.owner, binding.within):
                    hidden = replace(binding, way="unknown", value=None, why=HIDES)
                    self.found.append(hidden)
                self.found.append(binding)
                uses.declare(binding.owner, binding.within)
            else:
                if self._is_alone(stack):
                    uses.add(stack[-1].start_byte)
                change = self._change(stack)
                changes += [change] if change is not None else []
        return sorted((*self.found, *self._all_laid(changes)), key=lambda one: one.name.start_byte)

    def _changed(
        self, stack: Stack, place: int, scopes: tuple[Scope, ...], on: Node | None
    ) -> Change | None:
        """Return the change of a variable that stands at a place, by this name or another one.

        ``scopes`` are those that may declare it, ``on`` is the object that it is said to be of.
        """
        whole, above = stack[place], stack[place - 1]
        scope = self.naming.scope_of(self.source, stack)
        if above.type == self.naming.assignment and is_field(above, "left", whole):
            value = assigned_to(whole, above) if on is None else None
            change = Change(stack[-1], scope, scopes, value)
        else:
            why = self.alterations.why(stack[: place + 1])
            if not why:
                return None
            change = Change(stack[-1], scope, scopes, None, True, why)
        of = self.families.class_of([*stack[: place + 1], on], scope) if on is not None else ""
        return replace(change, of=of)

    def _all_laid(self, changes: Iterable[Change]) -> Iterator[Binding]:
        """Yield what the changes bind; of those that may be of many variables, enough for each."""
        owners = {one.owner for one in self.found if one.way not in NO_VARIABLES}
        texts, members = self._texts(), {True: self._members(True), False: self._members(False)}
        laid: Counter[tuple[int, bool, str]] = Counter()
        for change in changes:
            nearest, passed = self._nearest(change, owners)
            meant = [] if nearest is None else [nearest.node.id]
            if nearest is None or passed:
                known = self._known_owners(change, passed, owners)
                others = members[change.in_place]
                some = others if known is None else [one for one in others if one in known]
                few = _enough(change, some, laid, _ANY_OWNER if known is None else None)
                few = few if few or meant else some[:1]  # for the numbers that are assigned
                meant += [one for one in few if one not in meant]
            fixed = texts if change.in_place else ()
            yield from (change.at(owner) for owner in meant if owner not in fixed)

    def _nearest(self, change: Change, owners: Set[int]) -> tuple[Scope | None, list[Scope]]:
        """Return the scope that surely declares what is changed, and those within that may too."""
        passed: list[Scope] = []
        for scope in change.scopes:
            if scope.node.id in owners:
                if scope.sort == "region":  # a local one comes before a member
                    passed = [one for one in passed if one.sort != "region"]
                return scope, passed
            passed += [scope] if self._opens_more(scope) else []
        return None, passed

    def _known_owners(
        self, change: Change, passed: Iterable[Scope], owners: Set[int]
    ) -> Set[int] | None:
        """Return the types whose variable a change may be of; None if it may be any's."""
        if not change.scopes:
            return self.families.relatives(change.of) if change.of else None
        for scope in passed:  # what is inherited further in comes before names further out
            bases = None if scope.sort == "region" else self.families.inherited_from(scope.node)
            if bases is None or not bases.isdisjoint(owners):
                return bases
        return frozenset()

    def _members(self, in_place: bool) -> list[int]:
        """Return the owners of all members that a change through an object may be of."""
        return sorted(
            {
                one.owner
                for one in self.found
                if one.way not in NO_VARIABLES
                and one.within.sort in _MEMBERS
                and (in_place or self._is_variable(one))
            }
        )

    def _texts(self) -> set[int]:
        """Return the owners of what is declared to be a text, which nothing changes in place."""
        declared = [(one.owner, one.declared) for one in self.found if one.declared is not None]
        return {owner for owner, kind in declared if self.source.text(kind) in TEXTS}


def _enough(
    change: Change, owners: list[int], laid: Counter[tuple[int, bool, str]], of_all: int | None
) -> list[int]:
    """Return the owners at which not enough was laid yet, and take note of what will be.

    ``of_all`` stands for all owners together, where a change may be of any.
    """
    if of_all is not None:
        key = of_all, change.in_place, change.why
        laid[key] += 1
        return owners if laid[key] <= _ENOUGH else []
    few = [one for one in owners if laid[one, change.in_place, change.why] < _ENOUGH]
    laid.update((one, change.in_place, change.why) for one in few)
    return few
