"""Scopes of C++: which namespace, class, function or block a node lies in."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import chain, pairwise
from typing import Literal

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.cpp.names import dotted
from namegen.languages.sources import Source, is_field
from namegen.model.facts import Path

CLASSES = frozenset({"class_specifier", "struct_specifier", "union_specifier"})
REGIONS = frozenset(
    {
        "catch_clause",
        "compound_statement",
        "for_range_loop",
        "for_statement",
        "function_definition",
        "if_statement",
        "lambda_expression",
        "switch_statement",
        "while_statement",
    }
)
"""What holds local variables."""
_BETWEEN = frozenset(
    {"attributed_declarator", "parenthesized_declarator", "pointer_declarator"}
    | {"reference_declarator"}
)
"""What may stand between a function and its name with the parameters."""


class Scope(Struct, frozen=True):
    """One scope with the scopes around it; ``words`` are what it adds to the names in it."""

    sort: Literal["file", "namespace", "type", "region"]
    node: Node
    outer: Scope | None = None
    words: Path = ()

    @property
    def path(self) -> Path:
        """What names in this scope are prefixed with."""
        found: list[Path] = []
        for one in self.enclosing:
            if one.sort == "region":
                found.append((f"@{one.node.start_byte}",))
                break
            found.append(one.words)
        return tuple(chain.from_iterable(reversed(found)))

    @property
    def readable(self) -> Path:
        """The names of the namespaces, classes and functions, outermost first."""
        found = [one.words for one in self.enclosing]
        return tuple(chain.from_iterable(reversed(found)))

    @property
    def name(self) -> str:
        """The last word of its name; empty where it has none."""
        return self.words[-1] if self.words else ""

    @property
    def enclosing(self) -> Iterator[Scope]:
        """This scope and those around it, innermost first."""
        scope: Scope | None = self
        while scope is not None:
            yield scope
            scope = scope.outer

    @property
    def type(self) -> Scope | None:
        """The innermost class, this scope included."""
        return next((one for one in self.enclosing if one.sort == "type"), None)


def scope_of(source: Source, stack: Sequence[Node]) -> Scope:
    """Return the scope that the last node of the stack lies in.

    What stands before a body (return types, names, base classes) lies outside it.
    """
    scope = Scope("file", stack[0])
    for node, child in pairwise(stack):
        scope = _inside(source, scope, node, child) or scope
    return scope


def _inside(source: Source, scope: Scope, node: Node, child: Node) -> Scope | None:
    """Return the scope that ``node`` opens around its ``child``, if it opens one."""
    kind = node.type
    if kind == "function_definition":
        return _function(source, scope, node)
    if kind in REGIONS:
        return Scope("region", node, scope)
    if kind not in CLASSES and kind != "namespace_definition":
        return None
    if not is_field(node, "body", child):
        return None
    words = dotted(source, node.child_by_field_name("name")) or ()
    if kind == "namespace_definition":  # names in one without a name are seen around it
        return Scope("namespace", node, scope, words)
    return Scope("type", node, scope, words) if words else Scope("region", node, scope)


def _function(source: Source, scope: Scope, node: Node) -> Scope:
    """Return the scope of a function; around it the class that ``Boat::start`` names."""
    declarator = function_declarator(node)
    words = declarator and dotted(source, declarator.child_by_field_name("declarator"))
    if not words:
        return Scope("region", node, scope)
    if words[:-1]:
        scope = Scope("type", node, scope, words[:-1])
    return Scope("region", node, scope, words[-1:])


def function_declarator(node: Node) -> Node | None:
    """Return the name with the parameters of a function, a lambda or a declaration."""
    found = node.child_by_field_name("declarator")
    while found is not None and found.type in _BETWEEN:
        inner = found.child_by_field_name("declarator")
        found = inner or (found.named_children[-1] if found.named_child_count else None)
    known = found is not None and found.type in {
        "function_declarator",
        "abstract_function_declarator",
    }
    return found if known else None
