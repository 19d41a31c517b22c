"""Scopes of Kotlin: which class, object, function or block a node lies in."""

from __future__ import annotations

from itertools import pairwise

from tree_sitter import Node

from namegen.languages.scopes import Scope
from namegen.languages.sources import Source
from namegen.model.facts import Path

TYPES = frozenset({"class_declaration", "object_declaration", "companion_object"})
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
OF_RECEIVER = ""
"""Follows a region's word in the path of a name that may be its receiver's."""
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


def has_receiver(node: Node) -> bool:
    """Whether names in it may be those of an object: a lambda, a function ``Boat.name()``."""
    if node.type == "lambda_literal":
        return True
    if node.type == "getter" and node.parent is not None:
        node = node.parent
    extended = {"anonymous_function", "function_declaration", "property_declaration"}
    return node.type in extended and any(one.type == "." for one in node.children)


def tries(scope: Scope, words: Path) -> tuple[Path, ...]:
    """Return the paths that a dotted name may mean at this place, in the order of the language.

    Local names come before those of the object that a function or a lambda is called on.
    """
    if words[0].startswith("this") and len(words) > 1:
        return _own(scope, words)
    found: list[Path] = []
    pending: list[Path] = []
    for one in scope.enclosing:
        if one.sort == "region":
            found.append((*one.path, *words))
            pending += [(*one.path, OF_RECEIVER, *words)] if has_receiver(one.node) else []
        else:
            found += [*pending, (*one.path, *words)]
            pending = []
    return tuple(found)


def _own(scope: Scope, words: Path) -> tuple[Path, ...]:
    """Return the paths that ``this.name`` or ``this@Label.name`` may mean."""
    label = words[0].partition("@")[2]
    if not label:
        receivers = [one for one in scope.regions if has_receiver(one.node)]
        found = [(*one.path, "this", *words[1:]) for one in receivers]
        if any(one.node.type != "lambda_literal" for one in receivers):
            return tuple(found)
        own = scope.type
        return (*found, (*own.path, *words[1:]) if own is not None else words[1:])
    named = next((one for one in scope.enclosing if one.sort == "type" and one.name == label), None)
    return ((*named.path, *words[1:]) if named is not None else words,)
