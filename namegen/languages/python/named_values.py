"""Values that Python code gives to a name which it does not define there.

``Drive(counts=216)``, ``def drive(counts=216)``, ``{"counts": 216}``, ``drive["counts"] = 216``
and ``drive.counts = 216`` all name a number.
"""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.named_values import NamedValues
from namegen.languages.sources import Source, Stack, is_field

_PLAIN = ["string_start", "string_content", "string_end"]
_KEYED = frozenset({"keyword_argument", "default_parameter", "typed_default_parameter"})


def _of_word(stack: Stack) -> Node | None:
    """Return what a keyword, a parameter's default or an attribute is given."""
    leaf, parent = stack[-1], stack[-2]
    if parent.type in _KEYED:
        return parent.child_by_field_name("value") if _is(parent, "name", leaf) else None
    if parent.type == "attribute" and _is(parent, "attribute", leaf):
        return _assigned(stack[-3], parent)
    return None


def _of_key(_source: Source, stack: Stack) -> Node | None:
    """Return what a key is given, in a table that is written out or by an assignment."""
    text = stack[-2]
    if [child.type for child in text.children] != _PLAIN:
        return None
    above = stack[-3]
    if above.type == "pair":
        return above.child_by_field_name("value") if _is(above, "key", text) else None
    if above.type == "subscript" and _is(above, "subscript", text):
        return _assigned(stack[-4], above)
    return None


def _assigned(statement: Node, target: Node) -> Node | None:
    if statement.type != "assignment" or not _is(statement, "left", target):
        return None
    return statement.child_by_field_name("right")


def _is(node: Node, field: str, child: Node) -> bool:
    return is_field(node, field, child)


named_values = NamedValues("string_content", _of_key, _of_word)
"""Yields the values of a name, in order."""
