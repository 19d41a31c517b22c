"""What a path stands for where names belong to a type or a region: Java and languages like it."""

from __future__ import annotations

from abc import abstractmethod
from typing import Protocol, TypeVar

from tree_sitter import Node

from namegen.languages.definitions import Binding, DefinitionFinder
from namegen.languages.scopes import Scope
from namegen.languages.sources import span_of
from namegen.model.facts import Definition, Expression, Path, Ref, Unknown


class OwnedBinding(Binding, Protocol):
    """A place where a name gets its meaning, in the type or region that ``owner`` names."""

    @property
    def owner(self) -> int:
        """The node of the type, region or file that the name belongs to."""

    @property
    def within(self) -> Scope:
        """The scope that what the name stands for is worked out in."""


OwnedT = TypeVar("OwnedT", bound=OwnedBinding)


class MemberFinder(DefinitionFinder[OwnedT]):
    """Finds definitions by walking from a binding to the members of what it stands for."""

    @abstractmethod
    def _value(self, binding: OwnedT) -> Expression:
        """Return what a name by itself stands for."""

    @abstractmethod
    def _below(self, binding: OwnedT, rest: Path, path: Path) -> list[Definition]:
        """Return a member of the object that a name stands for."""

    @abstractmethod
    def _bases(self, binding: OwnedT, node: Node, words: Path) -> list[Path]:
        """Return the paths that a type may inherit a member from."""

    def _owners(self, node: Node, words: Path) -> tuple[set[int], Path]:
        """Return the nodes that a type's member may belong to, and its name in them."""
        return {node.id}, words

    def _sort(self, node: Node) -> str:
        """Return what a type is, in words."""
        return "a type"

    def _named(self, words: Path) -> list[OwnedT]:
        return self.bindings(words[0].removesuffix("()")) if words else []

    def _in_region(self, path: Path) -> list[OwnedT]:
        """Return the bindings of a word in the region at a byte: ("@120", "name")."""
        start = int(path[0][1:])
        return [
            one for one in self._named(path[1:2]) if one.within.owner_starts_at(one.owner, start)
        ]

    def _valued(self, bound: list[OwnedT], words: Path, path: Path) -> list[Definition]:
        """Return the definitions of ``words`` from the bindings of the first of them."""
        called = words[0].endswith("()") if words else False
        found: list[Definition] = []
        for one in bound:
            if (one.way == "method") != called:
                continue
            if one.way == "type" and one.value is not None:
                found += self._members(one, one.value, words[1:], path)
            elif len(words) > 1:
                found += self._below(one, words[1:], path)
            elif one.way != "declared":
                found.append(Definition(path, self._value(one), span_of(one.name)))
        return found

    def _members(self, binding: OwnedT, node: Node, words: Path, path: Path) -> list[Definition]:
        """Return the definitions of a type's member, or where it is inherited from."""
        span = span_of(binding.name)
        if not words:
            return [Definition(path, Unknown(f"it is {self._sort(node)}, not text", span), span)]
        owners, words = self._owners(node, words)
        bound = [one for one in self._named(words[:1]) if one.owner in owners]
        found = self._valued(bound, words, path)
        if found or bound:
            return found
        inherited = tuple(self._bases(binding, node, words))
        return [Definition(path, Ref(inherited, span), span, inherited=True)] if inherited else []
