"""What a looked-up device is put into: a variable, a field, a keyword; and its declared type."""

from __future__ import annotations

from collections.abc import Sequence

from tree_sitter import Node

from namegen.languages.python.definitions import Definitions
from namegen.languages.sources import Source, elements, is_field, same

_THROUGH = frozenset({"parenthesized_expression", "await", "as_pattern"})
_MOST_TARGETS = 50
"""Values of one assignment to several names; a longer list is data."""
_LISTS = frozenset({"expression_list", "tuple", "list"})
_PATTERNS = frozenset({"pattern_list", "tuple_pattern", "list_pattern"})
_SIDES = {
    "assignment": ("left", "right"),
    "named_expression": ("name", "value"),
    "keyword_argument": ("name", "value"),
    "default_parameter": ("name", "value"),
    "typed_default_parameter": ("name", "value"),
}


def holders(source: Source, stack: Sequence[Node], names: int) -> list[str | None]:
    """Return for each name of a look-up what its device is put into."""
    target = _target(stack)
    if target is None:
        return [None] * names
    if names == 1:
        return [_word(source, target)]
    parts = elements(target) if target.type in _PATTERNS else []
    if len(parts) != names:
        return [None] * names
    return [_word(source, part) for part in parts]


def declared_type(source: Source, definitions: Definitions, stack: Sequence[Node]) -> Node | None:
    """Return the type that the variable or field filled by the look-up is declared with."""
    target = _target(stack)
    if target is None or target.parent is None:
        return None
    here = target.parent.child_by_field_name("type")
    word = _word(source, target)
    if here is not None or word is None:
        return here
    declared = [one.declared for one in definitions.bindings(word) if one.declared is not None]
    same_type = {source.text(node) for node in declared}
    return declared[0] if len(same_type) == 1 else None


def _target(stack: Sequence[Node]) -> Node | None:
    """Return what the last node of the stack is assigned to."""
    place = len(stack) - 1
    while place > 1 and stack[place - 1].type in _THROUGH:
        place -= 1
    node, above = stack[place], stack[place - 1]
    position: int | None = None
    if above.type in _LISTS and place > 1 and above.named_child_count <= _MOST_TARGETS:
        position = next((i for i, one in enumerate(elements(above)) if same(one, node)), None)
        node, above = above, stack[place - 2]
    if above.type not in _SIDES:
        return None
    name, value = _SIDES[above.type]
    if not is_field(above, value, node):
        return None
    target = above.child_by_field_name(name)
    if position is None or target is None:
        return target
    parts = elements(target) if target.type in _PATTERNS else []
    return parts[position] if len(parts) == len(elements(node)) else None


def _word(source: Source, target: Node) -> str | None:
    if target.type == "attribute":
        attribute = target.child_by_field_name("attribute")
        return source.text(attribute) if attribute is not None else None
    return source.text(target) if target.type == "identifier" else None
