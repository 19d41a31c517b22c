"""Where names get their values in one file, whatever the language: what all finders share."""

from __future__ import annotations

from abc import ABC, abstractmethod
from typing import ClassVar, Generic, Protocol, TypeVar

from tree_sitter import Node

from namegen.languages.sources import Source, span_of
from namegen.model.facts import Definition, Expression, Path, Ref, Several, Unknown

MOST_NAMES = 5
"""Names followed one after another to what a loop runs over."""


class Binding(Protocol):
    """A place where a name gets its meaning, as far as all languages have it."""

    @property
    def way(self) -> str:
        """How the name is bound: ``class``, ``type``, ``parameter`` and so on."""

    @property
    def value(self) -> Node | None:
        """What the name stands for."""


BindingT = TypeVar("BindingT", bound=Binding)


class DefinitionFinder(ABC, Generic[BindingT]):
    """Finds the definitions of a file on demand, and remembers what was asked."""

    CONDITION: ClassVar[str] = ""
    """Type of a choice between two values that a loop may run over and that are no lists."""

    def __init__(self, source: Source) -> None:
        self.source = source
        self._known: dict[str, list[BindingT]] = {}

    @abstractmethod
    def find(self, path: Path) -> list[Definition]:
        """Return every binding of a dotted path, in order."""

    @abstractmethod
    def _bindings_of(self, word: str) -> list[BindingT]:
        """Return every binding of a word in the file, in every scope, in order."""

    @abstractmethod
    def _worked_out(self, binding: BindingT, value: Node) -> Expression:
        """Return a value as text, in the scope in which the binding works it out."""

    def bindings(self, word: str) -> list[BindingT]:
        """Return every binding of a word in the file."""
        if word not in self._known:
            self._known[word] = self._bindings_of(word)
        return self._known[word]

    def _each(self, binding: BindingT, value: Node) -> Expression:
        """Return what a loop runs over, if it is written out here or in one name of this file."""
        found = self._worked_out(binding, value)
        for _ in range(MOST_NAMES):
            if not isinstance(found, Ref):
                break
            defined = next(filter(None, map(self.find, found.tries)), [])
            if len(defined) != 1:
                break
            found = defined[0].value
        if isinstance(found, Several) and value.type != self.CONDITION:
            return found
        return Unknown("it runs over values that are not written out", span_of(value))
