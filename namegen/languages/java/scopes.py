"""Scopes of Java: which type, method or block a node lies in."""

from __future__ import annotations

from itertools import pairwise

from tree_sitter import Node

from namegen.languages.scopes import Scope
from namegen.languages.sources import Source
from namegen.model.facts import Path

TYPES = frozenset(
    {
        "class_declaration",
        "enum_declaration",
        "interface_declaration",
        "record_declaration",
        "annotation_type_declaration",
    }
)
REGIONS = frozenset(
    {
        "method_declaration",
        "constructor_declaration",
        "compact_constructor_declaration",
        "lambda_expression",
        "block",
        "constructor_body",
        "switch_block",
        "for_statement",
        "enhanced_for_statement",
        "try_with_resources_statement",
        "catch_clause",
    }
)
"""What holds local variables."""
_NAMED = frozenset({"method_declaration", "constructor_declaration", *TYPES})


def scope_of(source: Source, stack: list[Node]) -> Scope:
    """Return the scope that the last node of the stack lies in.

    What stands before a type's body (annotations, base types) lies outside it.
    """
    scope = Scope("file", stack[0])
    for node, child in pairwise(stack[1:]):
        scope = inside(source, scope, node, child) or scope
    return scope


def inside(source: Source, scope: Scope, node: Node, child: Node) -> Scope | None:
    """Return the scope that ``node`` opens around its ``child``, if it opens one."""
    kind = node.type
    if kind in REGIONS:
        return Scope("region", node, scope, name_of(source, node))
    if kind in TYPES:
        body = node.child_by_field_name("body")
        if body is not None and body.id == child.id:
            return Scope("type", node, scope, name_of(source, node))
    if kind == "object_creation_expression" and child.type == "class_body":
        return Scope("anonymous", node, scope)
    return None


def name_of(source: Source, node: Node) -> str:
    """Return the name of a type or method; empty for anything else."""
    return source.text(node.child_by_field_name("name")) if node.type in _NAMED else ""


def tries(scope: Scope, words: Path) -> tuple[Path, ...]:
    """Return the paths that a dotted name may mean at this place, innermost scope first."""
    if words[0] == "this" and len(words) > 1:
        own = scope.type
        return ((*own.path, *words[1:]),) if own is not None else (words[1:],)
    return scope.around(words)
