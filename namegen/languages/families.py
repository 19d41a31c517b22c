"""Which types of a file an object may be of, told by the type of a name: Java and its like."""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Mapping
from functools import cached_property
from typing import ClassVar

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.owned_names import Binding, Naming
from namegen.languages.scopes import Scope
from namegen.languages.sources import Source, Stack


class Kin(Struct, frozen=True):
    """A type of the file, or an object with a body of its own: its name and those of its bases."""

    word: str
    node: Node
    bases: tuple[str, ...]


_ByWord = defaultdict[str, list[Kin]]


class Families(ABC):
    """Knows the types of one file and how they are derived from one another."""

    NAMING: ClassVar[Naming]
    """How the language declares names and looks them up."""

    def __init__(self, source: Source) -> None:
        self.source = source
        self._declared: dict[str, dict[int, Binding]] = {}
        self._relatives: dict[str, frozenset[int]] = {}
        self._nodes: dict[int, Kin] | None = None

    @abstractmethod
    def _types(self) -> Iterator[Kin]:
        """Yield the types of the file."""

    @abstractmethod
    def class_of(self, stack: Stack, scope: Scope) -> str:
        """Return the name of the class of the object at the end of a stack; empty if not told."""

    def _base_of(self, own: Scope | None) -> str:
        """Return the name of what ``super`` is in a type; empty if that is not told."""
        bases = self.NAMING.base_types(self.source, own.node) if own is not None else []
        return bases[0][-1] if bases else ""

    def _of_type(self, node: Node | None) -> str:
        """Return the name of a class; of a parameter of a class, a capital, it is not told."""
        words = self.NAMING.type_words(self.source, node)
        is_told = words and len(words[-1]) > 1 and words[-1] != self.NAMING.top
        return words[-1] if words and is_told else ""

    def is_made(self, word: str) -> bool:
        """Whether a call by this name makes an object of the class: no function is called so."""
        self.variable(word, ())
        return all(one.way != "method" for one in self._declared[word].values())

    def variable(self, word: str, scopes: Iterable[Scope]) -> Binding | None:
        """Return the declaration of a variable in the first of some scopes that has one."""
        if word not in self._declared:
            stacks = (one for one in self.source.stacks([word]) if one[-1].type == "identifier")
            found = [self.NAMING.declared(self.source, one) for one in stacks if len(one) > 1]
            self._declared[word] = {one.owner: one for one in found if one is not None}
        known = self._declared[word]
        return next((known[one.node.id] for one in scopes if one.node.id in known), None)

    def relatives(self, word: str) -> frozenset[int]:
        """Return the types that may be of one class: it, those above it, those derived from it.

        A type whose base is in another file may be derived from any.
        """
        if word not in self._relatives:
            named, derived, far = self._kin
            above = _reached(named.get(word, []), lambda kin: kin.bases, named)
            below = _reached([*named.get(word, []), *far], lambda kin: (kin.word,), derived)
            self._relatives[word] = frozenset(above | below)
        return self._relatives[word]

    def inherited_from(self, node: Node) -> frozenset[int] | None:
        """Return the types that a type is derived from; None if one of them is in another file."""
        named, derived, _ = self._kin
        if self._nodes is None:
            self._nodes = {one.node.id: one for some in derived.values() for one in some}
        found: set[int] = set()
        pending = [self._nodes[node.id]] if node.id in self._nodes else []
        while pending:
            one = pending.pop()
            if any(base not in named for base in one.bases):
                return None
            new = [kin for base in one.bases for kin in named[base] if kin.node.id not in found]
            found |= {kin.node.id for kin in new}
            pending += new
        return frozenset(found)

    @cached_property
    def _kin(self) -> tuple[_ByWord, _ByWord, list[Kin]]:
        """The types by their names, by those of their bases, and those with a base elsewhere."""
        named: _ByWord = defaultdict(list)
        derived: _ByWord = defaultdict(list)
        for one in self._types():
            named[one.word].append(one)
            for base in one.bases:
                derived[base].append(one)
        far = [one for base in derived if base not in named for one in derived[base]]
        return named, derived, far


def _reached(
    kin: Iterable[Kin], further: Callable[[Kin], Iterable[str]], by_word: Mapping[str, list[Kin]]
) -> set[int]:
    """Return the types that are reached from some by words, these too."""
    found: set[int] = set()
    pending = list(kin)
    while pending:
        one = pending.pop()
        if one.node.id not in found:
            found.add(one.node.id)
            pending += [other for word in further(one) for other in by_word.get(word, ())]
    return found
