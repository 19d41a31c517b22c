"""Values that C++ code gives to a name which it does not define there.

``drive.setCounts(216)``, ``drive->counts = 216``, ``: counts_(216)``, ``{.counts = 216}``,
``table["counts"] = 216``, ``{"counts", 216}`` and ``#define COUNTS 216`` all name a number.
``counts(216)`` does not: it may as well work the number out.
"""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.named_values import NamedValues
from namegen.languages.sources import Source, Stack, assigned_to, elements, is_field, same


def _set(stack: Stack) -> Node | None:
    """Return the one argument of a call of the setter that the last node names."""
    place = len(stack) - 1
    if stack[place - 1].type in {"field_expression", "qualified_identifier"}:
        place -= 1
    call = stack[place - 1]
    if call.type != "call_expression" or not is_field(call, "function", stack[place]):
        return None
    arguments = elements(call.child_by_field_name("arguments"))
    return arguments[0] if len(arguments) == 1 else None


def _keyed(_source: Source, stack: Stack) -> Node | None:
    """Return what a table gets under the text that the last node is."""
    text, given, above = stack[-2], stack[-3], stack[-4]
    if text.named_child_count != 1:
        return None
    if given.type == "initializer_list":
        pair = elements(given)
        return pair[1] if len(pair) == 2 and same(pair[0], text) else None
    if above.type != "subscript_expression" or len(stack) < 5:
        return None
    return assigned_to(above, stack[-5])


def _assigned(stack: Stack) -> Node | None:
    """Return what is given to the member of an object that the last node names."""
    above = stack[-2]
    if above.type == "field_expression" and is_field(above, "field", stack[-1]):
        return assigned_to(above, stack[-3])
    if above.type == "field_designator" and stack[-3].type == "initializer_pair":
        return stack[-3].child_by_field_name("value")
    if above.type == "field_initializer" and same(above.named_children[0], stack[-1]):
        given = elements(above.named_children[-1])
        return given[0] if len(given) == 1 else None
    return None


named_values = NamedValues("string_content", _keyed, _assigned, _set, ("set", "with", "Set"))
"""Yields the values of a name, in order."""
