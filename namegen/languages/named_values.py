"""Values that code gives to a name which it does not define there, whatever the language."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.sources import Source, Stack

_NEAREST = 4
"""Nodes down to a name with a value: the file, what gives it, what is given, the name."""


class NamedValues(Struct, frozen=True):
    """How one language gives a value to a name: under a text, by a setter, by assignment.

    Each way takes the nodes down to the name and returns the value, or None.
    """

    text: str
    """The type of node that is what stands between quotes."""
    under: Callable[[Source, Stack], Node | None]
    """Of a text: ``{"counts": 216}``."""
    assigned: Callable[[Stack], Node | None]
    """Of a word: ``drive.counts = 216``."""
    by_setter: Callable[[Stack], Node | None] | None = None
    """Of a setter: ``drive.setCounts(216)``."""
    setters: tuple[str, ...] = ()
    """What begins the names of setters."""

    def __call__(self, source: Source, name: str) -> Iterator[Node]:
        """Yield the values of a name, in order."""
        setters = {f"{one}{name}" for one in self.setters} if name[:1].isupper() else set()
        for stack in source.stacks([name, *sorted(setters)]):
            if len(stack) < _NEAREST:
                continue
            if stack[-1].type == self.text:
                value = self.under(source, stack)
            elif self.by_setter is not None and source.text(stack[-1]) in setters:
                value = self.by_setter(stack)
            else:
                value = self.assigned(stack)
            if value is not None:
                yield value
