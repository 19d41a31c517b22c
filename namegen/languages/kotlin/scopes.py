"""Scopes of Kotlin: which class, object, function or block a node lies in."""

from __future__ import annotations

from itertools import pairwise
from typing import Literal

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.sources import Source
from namegen.model.facts import Path

TYPES = frozenset({"class_declaration", "object_declaration", "companion_object"})
BODIES = frozenset({"class_body", "enum_class_body"})
REGIONS = frozenset(
    {
        "anonymous_function",
        "anonymous_initializer",
        "block",
        "catch_block",
        "for_statement",
        "function_declaration",
        "getter",
        "lambda_literal",
        "secondary_constructor",
        "setter",
        "when_expression",
    }
)
"""What holds local variables."""
_OBJECTS = frozenset({"object_literal", "enum_entry"})
"""What has a body without a name of its own."""
_COMPANION = "Companion"
"""What a companion object is called that has no name (Kotlin documentation, Companion objects)."""


class Scope(Struct, frozen=True):
    """One scope with the scopes around it."""

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
    def type(self) -> Scope | None:
        """The innermost type, this scope included."""
        scope: Scope | None = self
        while scope is not None and scope.sort not in {"type", "anonymous"}:
            scope = scope.outer
        return scope


def scope_of(source: Source, stack: list[Node]) -> Scope:
    """Return the scope that the last node of the stack lies in.

    The modifiers of a declaration lie outside it; the parameters of a class, what its base
    gets and its body lie inside.
    """
    scope = Scope("file", stack[0])
    for node, child in pairwise(stack):
        scope = _inside(source, scope, node, child) or scope
    return scope


def _inside(source: Source, scope: Scope, node: Node, child: Node) -> Scope | None:
    """Return the scope that ``node`` opens around its ``child``, if it opens one."""
    kind = node.type
    if child.type == "modifiers":
        return None
    if kind in REGIONS:
        return Scope("region", node, scope, name_of(source, node))
    if kind in TYPES:
        return Scope("type", node, scope, name_of(source, node))
    if kind in _OBJECTS and child.type == "class_body":
        return Scope("anonymous", node, scope)
    return None


def name_of(source: Source, node: Node) -> str:
    """Return the name of a type or function; empty for anything else."""
    if node.type == "secondary_constructor":
        return "constructor"
    name = node.child_by_field_name("name")
    if name is not None:
        return source.text(name)
    return _COMPANION if node.type == "companion_object" else ""


def tries(scope: Scope, words: Path) -> tuple[Path, ...]:
    """Return the paths that a dotted name may mean at this place, innermost scope first."""
    around: Scope | None = scope
    first = words[0]
    if first.startswith("this") and len(words) > 1:
        own = _this(scope, first.partition("@")[2])
        return ((*own.path, *words[1:]),) if own is not None else (words[1:],)
    found: list[Path] = []
    while around is not None:
        found.append((*around.path, *words))
        around = around.outer
    return tuple(found)


def _this(scope: Scope, label: str) -> Scope | None:
    """Return the type that ``this`` or ``this@Label`` means."""
    own = scope.type
    while own is not None and label and own.name != label:
        own = own.outer.type if own.outer is not None else None
    return own
