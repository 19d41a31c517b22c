"""Values that Kotlin code gives to a name which it does not define there.

``drive.counts = 216``, ``Gears(counts = 216)``, ``drive.setCounts(216)``,
``table["counts"] = 216``, ``table.put("counts", 216)`` and ``"counts" to 216`` all name a
number. ``counts(216)`` does not: it may as well work the number out.
"""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.kotlin.trees import (
    argument_value,
    arguments_of,
    called_of,
    key_of,
    last_name,
)
from namegen.languages.named_values import NamedValues
from namegen.languages.sources import Source, Stack, assigned_to, elements, same


def _set(stack: Stack) -> Node | None:
    """Return the one argument of a call of the setter that the last node names."""
    call = stack[-3] if stack[-2].type == "navigation_expression" else stack[-2]
    given = arguments_of(call) if call.type == "call_expression" else None
    if given is None or not same(last_name(called_of(call)), stack[-1]):
        return None
    arguments = elements(given)
    return argument_value(arguments[0]) if len(arguments) == 1 else None


def _under(source: Source, stack: Stack) -> Node | None:
    """Return what is put under the text that the last node is."""
    text, above = stack[-2], stack[-3]
    if text.named_child_count != 1:
        return None
    parts = elements(above)
    match above.type:
        case "infix_expression":
            pair = len(parts) == 3 and source.text(parts[1]) == "to" and same(parts[0], text)
            return parts[2] if pair else None
        case "index_expression":
            is_key = len(parts) == 2 and same(parts[1], text)
            return assigned_to(above, stack[-4]) if is_key else None
        case "value_argument":
            return _put(source, stack)
    return None


def _put(source: Source, stack: Stack) -> Node | None:
    """Return what ``put`` gets beside the text."""
    given, call = stack[-4], stack[-5] if len(stack) > 4 else None
    called = last_name(called_of(call)) if call is not None else None
    arguments = elements(given)
    put = called is not None and source.text(called) == "put" and len(arguments) == 2
    return argument_value(arguments[1]) if put and same(arguments[0], stack[-3]) else None


def _assigned(stack: Stack) -> Node | None:
    """Return what a named argument, or another object's property, is given."""
    above = stack[-2]
    if above.type == "value_argument" and same(key_of(above), stack[-1]):
        return argument_value(above)
    if above.type == "navigation_expression" and same(last_name(above), stack[-1]):
        return assigned_to(above, stack[-3])
    return None


named_values = NamedValues("string_content", _under, _assigned, _set, ("set", "with"))
"""Yields the values of a name, in order."""
