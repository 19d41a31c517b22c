"""Where Java may change an array or a list without assigning to its name."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.sources import Source, Stack, named_child, same

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


def hands_on_list(source: Source, stack: Stack) -> bool:
    """Whether the use of a list, the last of the stack, may change it or is another name for it.

    What a method of the program does with a list that it is given is not looked at.
    """
    node, above = stack[-1], stack[-2]
    match above.type:
        case "array_access" if same(above.child_by_field_name("array"), node):
            statement = stack[-3]
            is_set = same(statement.child_by_field_name("left"), above)
            return statement.type == "assignment_expression" and is_set
        case "array_access":
            return False
        case "field_access":
            return source.text(above.named_children[-1]) != "length"
        case "method_invocation":
            name = above.child_by_field_name("name")
            on = same(above.child_by_field_name("object"), node)
            return on and (name is None or source.text(name) not in _READERS)
        case "argument_list":
            name = stack[-3].child_by_field_name("name")
            return name is not None and source.text(name) in _CHANGERS
    return above.type not in _READING
