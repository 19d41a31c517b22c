"""A place where a C++ variable is used, and what may be said of it there."""

from __future__ import annotations

from typing import Literal, NamedTuple

from tree_sitter import Node

from namegen.languages.sources import Source, Stack, is_field

Alteration = Literal["altered", "called", "moved", "pointed"]
"""How a use may change a variable: anything can; a method of it that is not known does; what it
holds is taken out; a pointer to it is made if it is an array."""


class Up(NamedTuple):
    """That what stands some nodes further up decides about a use.

    ``inside``: it is given what leads into the variable, an iterator or a pointer.
    """

    steps: int = 1
    inside: bool = False
    outside: bool = False
    """Whether it is what such a pointer leads to."""


class Follow(NamedTuple):
    """That other names for the variable decide about a use, each in a stretch of the code.

    ``inside``: these lead into the variable, as iterators and pointers do.
    """

    names: tuple[tuple[Node, Node], ...]
    inside: bool = False
    pointed: bool = False
    """Whether a pointer to it is made as well if it is an array."""


Answer = Up | Follow | Alteration | None


class Use(NamedTuple):
    """A place where a variable is used, as far as it is looked at: ``stack[place]``."""

    source: Source
    stack: Stack
    place: int
    inside: bool = False
    depth: int = 0
    """How many others it is looked at for: in loops over these, or in macros that get these."""
    file: Source | None = None
    """The file, where the source is the text of one of its macros."""

    @property
    def node(self) -> Node:
        """The variable, or an expression that stands for it or for a part of it."""
        return self.stack[self.place]

    @property
    def above(self) -> Node:
        """What the node stands in."""
        return self.stack[self.place - 1]

    @property
    def beyond(self) -> Node | None:
        """What that stands in."""
        return self.stack[self.place - 2] if self.place > 1 else None

    @property
    def sign(self) -> str:
        """The operator that the node stands beside."""
        operator = self.above.child_by_field_name("operator")
        return operator.type if operator is not None else ""

    def is_in(self, field: str) -> bool:
        """Whether the node is this field of what it stands in."""
        return is_field(self.above, field, self.node)

    def text(self, node: Node | None) -> str:
        """Return the text of a node; empty where there is none."""
        return self.source.text(node)
