"""Names that belong to a type or a region, and how a language binds them: Java and its like."""

from __future__ import annotations

from collections.abc import Callable
from typing import Literal

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.definitions import CHANGED
from namegen.languages.scopes import Scope
from namegen.languages.sources import Source, Stack
from namegen.model.facts import Path

Way = Literal[
    "value",
    "each",
    "type",
    "alias",
    "constant",
    "method",
    "parameter",
    "unknown",
    "declared",
    "assigned",
]
NO_VARIABLES = frozenset({"alias", "constant", "method", "type"})
"""How names are bound that are no variables."""
TEXTS = frozenset({"String", "String?"})
"""Types of texts, which nothing changes in place."""


class Binding(Struct, frozen=True):
    """One place that declares a name or gives it a value.

    ``owner`` is the node of the type or region that the name belongs to,
    ``value`` what it gets, worked out in ``within``. A parameter's is its default.
    """

    name: Node
    owner: int
    way: Way
    within: Scope
    value: Node | None = None
    why: str = ""
    declared: Node | None = None
    """The type it is declared with here."""


class Change(Struct, frozen=True):
    """One place that changes a variable, or names a list anew which is changed by that name.

    ``scopes`` are those that may declare the variable, innermost first; none where it is
    said to be an object's.
    """

    name: Node
    within: Scope
    scopes: tuple[Scope, ...]
    value: Node | None = None
    """What is assigned, if just that is."""
    in_place: bool = False
    """Whether what it holds is changed, as can be done to what gets no other value."""
    why: str = CHANGED
    of: str = ""
    """The class of the object that it is said to be of, if that is told."""

    def at(self, owner: int) -> Binding:
        """Return what the change gives to the variable of an owner."""
        way: Way = "assigned" if self.value is not None else "unknown"
        return Binding(self.name, owner, way, self.within, self.value, self.why)


class Naming(Struct, frozen=True, kw_only=True):
    """How one language declares names and looks them up; stacks are about their last node."""

    declared: Callable[[Source, Stack], Binding | None]
    """Returns the declaration of which the node is the name."""
    scope_of: Callable[[Source, Stack], Scope]
    """Returns the scope that the node lies in."""
    tries: Callable[[Scope, Path], tuple[Path, ...]]
    """Returns the paths that a dotted name may mean in a scope, innermost first."""
    base_types: Callable[[Source, Node], list[Path]]
    """Returns the types that a type, or an object with a body of its own, is derived from."""
    type_words: Callable[[Source, Node | None], Path | None]
    """Returns the dotted name of a type as it is written."""
    assignment: str
    """The type of the nodes that assign."""
    top: str
    """The class that all are derived from."""
