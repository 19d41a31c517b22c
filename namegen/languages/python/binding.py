"""One place where a Python name gets a value."""

from __future__ import annotations

from typing import Literal

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.python.scopes import Scope
from namegen.model.facts import Path

Way = Literal["value", "each", "class", "function", "parameter", "import", "unknown", "declared"]
FUNCTION = "it is a function"


class Binding(Struct, frozen=True):
    """One place that gives a name a value.

    ``scope`` is the one the name then belongs to; ``value`` is the node of the
    value, worked out in ``within``; ``way`` tells how the two hang together
    (``each``: one after the other of the value's elements).
    """

    name: Node
    scope: Scope
    way: Way
    within: Scope
    value: Node | None = None
    why: str = ""
    declared: Node | None = None
    """The type that the name is annotated with here."""
    attribute: bool = False
    """Whether it is set as ``self.name``."""
    taking: Path = ()
    """What it gets of the value, or of each element that a loop runs over: words of a chain."""
    loop: Node | None = None
    """The ``for`` statement that gives it, one element after the other."""
