"""Where names get their values in one file, whatever the language: what all finders share."""

from __future__ import annotations

from abc import ABC, abstractmethod
from typing import Generic, Protocol, TypeVar

from tree_sitter import Node

from namegen.languages.expressions import RUN_TIME
from namegen.languages.sources import Source, same, span_of
from namegen.model.facts import Definition, Path, Unknown

CHANGED = "it is changed at run time"
ALTERED = "an element of it may be changed"
HANDED_ON = "it may be changed through another name"
HIDES = "the word is another name further up in the block"
OVERRIDDEN = "a class that is derived may give another one"
_WEIGHING = frozenset({ALTERED, HANDED_ON, HIDES, OVERRIDDEN})
"""Reasons that say more than that a name gets several values."""


class Binding(Protocol):
    """A place where a name gets its meaning, as far as all languages have it."""

    @property
    def name(self) -> Node:
        """The name itself."""

    @property
    def declared(self) -> Node | None:
        """The type it is declared with here."""

    @property
    def way(self) -> str:
        """How the name is bound: ``class``, ``type``, ``parameter`` and so on."""

    @property
    def value(self) -> Node | None:
        """What the name stands for."""

    @property
    def why(self) -> str:
        """Why that is not known, if it is not."""


BindingT = TypeVar("BindingT", bound=Binding)


def reason(binding: Binding) -> Unknown:
    """Return why it is not known what a name stands for by a binding."""
    weighs = binding.way == "parameter" or binding.why in _WEIGHING
    return Unknown(binding.why or RUN_TIME, span_of(binding.name), weighs)


class DefinitionFinder(ABC, Generic[BindingT]):
    """Finds the definitions of a file on demand, and remembers what was asked."""

    def __init__(self, source: Source) -> None:
        self.source = source
        self._known: dict[str, list[BindingT]] = {}

    @abstractmethod
    def find(self, path: Path) -> list[Definition]:
        """Return every binding of a dotted path, in order."""

    @abstractmethod
    def _bindings_of(self, word: str) -> list[BindingT]:
        """Return every binding of a word in the file, in every scope, in order."""

    def bindings(self, word: str) -> list[BindingT]:
        """Return every binding of a word in the file."""
        if word not in self._known:
            self._known[word] = self._bindings_of(word)
        return self._known[word]

    def declared_type(self, name: Node | None) -> Node | None:
        """Return the type that a variable is declared with, unless several of that name differ."""
        if name is None:
            return None
        typed = [
            (one.name, one.declared)
            for one in self.bindings(self.source.text(name))
            if one.declared is not None
        ]
        for where, declared in typed:
            if same(where, name):
                return declared
        texts = {self.source.text(declared) for _, declared in typed}
        return typed[0][1] if len(texts) == 1 else None
