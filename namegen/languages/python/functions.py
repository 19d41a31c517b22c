"""Functions of Python that always give the same: one ``return`` and nothing else."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.python.scopes import Scope
from namegen.languages.sources import elements, named_child

CALLED = "()"
"""What ends a word of a path that is called."""
_PROPERTIES = frozenset({"property", "cached_property", "functools.cached_property"})
_HARMLESS = _PROPERTIES | {"classmethod", "staticmethod", "override", "cache", "functools.cache"}


def is_property(function: Scope) -> bool:
    """Whether a method is called where its name stands by itself."""
    return not _PROPERTIES.isdisjoint(function.marks)


def returned(function: Scope) -> Node | None:
    """Return what a function gives, where that is all it does; None where it may do more."""
    body = function.node.child_by_field_name("body")
    is_plain = function.marks <= _HARMLESS and function.node.children[0].type == "def"
    statements = elements(body) if body is not None and is_plain else []
    if len(statements) > 1 and _is_docstring(statements[0]):
        statements = statements[1:]
    one = statements[0] if len(statements) == 1 else None
    return named_child(one, 0) if one is not None and one.type == "return_statement" else None


def _is_docstring(statement: Node) -> bool:
    text = named_child(statement, 0) if statement.type == "expression_statement" else None
    return text is not None and text.type == "string"
