"""Scopes of the languages in which all that is named stands in a file, a type or a function."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import takewhile
from typing import Literal

from msgspec import Struct
from tree_sitter import Node

from namegen.model.facts import Path


class Scope(Struct, frozen=True):
    """One scope with the scopes around it: a file, types in it, and what holds local variables."""

    sort: Literal["file", "type", "anonymous", "region"]
    node: Node
    outer: Scope | None = None
    name: str = ""

    @property
    def path(self) -> Path:
        """What names in this scope are prefixed with."""
        if self.sort == "file":
            return ()
        if self.sort == "type" and self.outer is not None:
            return (*self.outer.path, self.name)
        return (f"@{self.node.start_byte}",)

    @property
    def readable(self) -> Path:
        """The names of the types and functions, outermost first."""
        around = self.outer.readable if self.outer is not None else ()
        return (*around, self.name) if self.name else around

    @property
    def enclosing(self) -> Iterator[Scope]:
        """This scope and those around it, innermost first."""
        scope: Scope | None = self
        while scope is not None:
            yield scope
            scope = scope.outer

    @property
    def type(self) -> Scope | None:
        """The innermost type, this scope included."""
        return next((one for one in self.enclosing if one.sort in {"type", "anonymous"}), None)

    @property
    def regions(self) -> Iterator[Scope]:
        """The functions and blocks within the innermost type, innermost first."""
        return takewhile(lambda one: one.sort == "region", self.enclosing)

    def around(self, words: Path) -> tuple[Path, ...]:
        """Return the paths that a dotted name may mean in this scope, innermost scope first."""
        return tuple((*one.path, *words) for one in self.enclosing)

    def start_of(self, owner: int) -> int | None:
        """Return where the region that is ``owner``, here or further out, starts."""
        for scope in self.enclosing:
            if scope.node.id == owner:
                return scope.node.start_byte if scope.sort != "type" else None
        return None
