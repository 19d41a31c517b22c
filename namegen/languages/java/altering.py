"""Where Java may change an array or a list without assigning to its name."""

from __future__ import annotations

from typing import Literal

from tree_sitter import Node

from namegen.languages.sources import Source, Stack, named_child, same

_METHODS = frozenset({"replaceAll", "set", "sort"})
"""Methods that change a list of as many as before, as ``Arrays.asList`` gives."""
_CHANGERS = frozenset({"addAll", "arraycopy", "fill", "replaceAll", "setAll", "sort"})
"""Methods of Java's library that change an array or a list which they are given."""
_READERS = frozenset(
    {"clone", "contains", "containsAll", "equals", "forEach", "get", "indexOf", "isEmpty", "size"}
    | {"stream", "toArray", "toString"}
)
"""Methods of Java's lists that leave them as they are and hand no other way to them on."""
_READING = frozenset(
    {"binary_expression", "enhanced_for_statement", "import_declaration", "scoped_identifier"}
)
"""What an array may stand in without being changed."""


def is_changeable_list(source: Source, value: Node) -> bool:
    """Whether a value is a written-out array, or a list that writes through to one."""
    while value.type in {"parenthesized_expression", "cast_expression"}:
        inner = value.child_by_field_name("value") or named_child(value, 0)
        if inner is None:
            return False
        value = inner
    if value.type in {"array_initializer", "array_creation_expression"}:
        return True
    name = value.child_by_field_name("name") if value.type == "method_invocation" else None
    return name is not None and source.text(name) == "asList"


def changed_by(source: Source, stack: Stack) -> Literal["in place", "another name"] | None:
    """Return whether the use of a list, the last of the stack, changes it or gives it a name.

    What a method of the program does with a list that it is given is not looked at.
    """
    node, above = stack[-1], stack[-2]
    match above.type:
        case "array_access":
            left = stack[-3].child_by_field_name("left")
            is_set = stack[-3].type == "assignment_expression" and same(left, above)
            return "in place" if is_set and same(above.child_by_field_name("array"), node) else None
        case "field_access":
            return None if _word(source, above, "field") == "length" else "another name"
        case "method_invocation":
            if not same(above.child_by_field_name("object"), node):
                return None
            word = _word(source, above, "name")
            return "in place" if word in _METHODS else None if word in _READERS else "another name"
        case "argument_list":
            return "in place" if _word(source, stack[-3], "name") in _CHANGERS else None
    return None if above.type in _READING else "another name"


def _word(source: Source, node: Node, field: str) -> str:
    name = node.child_by_field_name(field)
    return source.text(name) if name is not None else ""
