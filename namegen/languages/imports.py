"""The imports of one file, whatever the language: read once, when first asked for."""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Iterable, Sequence
from functools import cached_property
from typing import Generic, Protocol, TypeVar

from tree_sitter import Node

from namegen.languages.sources import Source, occurrences
from namegen.model.facts import Import
from namegen.model.places import Span

ImportedT = TypeVar("ImportedT")


class Origins(Protocol):
    """Where names of one file come from, as far as all languages say so."""

    def named(self, word: str) -> Sequence[Import]:
        """Return where a name may come from, best first."""


class ImportFinder(ABC, Generic[ImportedT]):
    """Finds where names of one file come from, by its statements with the word ``import``."""

    def __init__(self, source: Source) -> None:
        self.source = source

    @cached_property
    def all(self) -> list[ImportedT]:
        """The imports at any depth of the file, in order."""
        return self._at(self._keywords)

    @cached_property
    def _keywords(self) -> Sequence[Span]:
        """Where the word ``import`` may belong to a statement."""
        words = occurrences(self.source.data, "import")
        return [place for place in words if self._may_import(place)]

    def _at(self, places: Iterable[Span]) -> list[ImportedT]:
        return [
            imported
            for stack in self.source.above(places)
            for imported in self._of_statement(stack[-2])
        ]

    def _may_import(self, word: Span) -> bool:
        """Whether the word ``import`` can belong to a statement there; False is certain."""
        return True

    @abstractmethod
    def named(self, word: str) -> Sequence[Import]:
        """Return where a name may come from, best first."""

    @abstractmethod
    def _of_statement(self, statement: Node) -> Iterable[ImportedT]:
        """Return what a statement with the word ``import`` imports; it may be any other node."""
