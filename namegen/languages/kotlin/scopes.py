"""Scopes of Kotlin: which class, object, function or block a node lies in."""

from __future__ import annotations

from itertools import pairwise

from tree_sitter import Node

from namegen.languages.scopes import Scope
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
    first = words[0]
    if first.startswith("this") and len(words) > 1:
        own = _this(scope, first.partition("@")[2])
        return ((*own.path, *words[1:]),) if own is not None else (words[1:],)
    return scope.around(words)


def _this(scope: Scope, label: str) -> Scope | None:
    """Return the type that ``this`` or ``this@Label`` means."""
    own = scope.type
    while own is not None and label and own.name != label:
        own = own.outer.type if own.outer is not None else None
    return own
