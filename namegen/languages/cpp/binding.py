"""A place that declares a C++ name or gives it a value."""

from __future__ import annotations

from typing import Literal

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.cpp.scopes import Scope
from namegen.model.facts import Path

Way = Literal[
    "value", "each", "class", "namespace", "function", "enumerator", "parameter", "unknown",
    "declared", "empty", "assigned", "called", "macro", "elsewhere",
]  # fmt: skip


class Binding(Struct, frozen=True):
    """One place that declares a name or gives it a value.

    ``path`` is the name with the scopes that it belongs to, ``value`` what it gets,
    worked out in ``within``. ``branch`` tells apart what stands in branches of ``#if``.
    """

    name: Node
    path: Path
    way: Way
    within: Scope
    value: Node | None = None
    why: str = ""
    declared: Node | None = None
    """The type it is declared with here."""
    points: bool = False
    """Whether it is a pointer or a reference to something of that type."""
    many: bool = False
    """Whether its value is a list of several."""
    array: bool = False
    """Whether it is an array, which other code gets a pointer to where it takes its value."""
    fixed: Literal["", "built", "always"] = ""
    """Whether nothing can change it: ever, or once the object that it belongs to is made."""
    shared: bool = True
    """Whether all objects of a class have it in common; so has what belongs to none."""
    branch: tuple[tuple[int, int], ...] = ()
