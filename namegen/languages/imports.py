"""The imports of one file, whatever the language: read once, when first asked for."""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Iterable, Sequence
from functools import cached_property
from typing import Generic, TypeVar

from tree_sitter import Node

from namegen.languages.sources import Source
from namegen.model.facts import Import

ImportedT = TypeVar("ImportedT")


class ImportFinder(ABC, Generic[ImportedT]):
    """Finds where names of one file come from."""

    def __init__(self, source: Source) -> None:
        self.source = source

    @cached_property
    def all(self) -> list[ImportedT]:
        """The imports at any depth of the file, in order."""
        return [
            imported
            for stack in self.source.stacks(["import"])
            for imported in self._of_statement(stack[-2])
        ]

    @abstractmethod
    def named(self, word: str) -> Sequence[Import]:
        """Return where a name may come from, best first."""

    @abstractmethod
    def _of_statement(self, statement: Node) -> Iterable[ImportedT]:
        """Return what a statement with the word ``import`` imports; it may be any other node."""
