"""Values that Java code gives to a name which it does not define there.

``drive.setCounts(216)``, ``drive.counts = 216`` and ``table.put("counts", 216)`` all name a
number. ``counts(216)`` does not: it may as well work the number out.
"""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.named_values import NamedValues
from namegen.languages.sources import Source, Stack, assigned_to, elements, is_field, same

_PUT = "put"


def _set(stack: Stack) -> Node | None:
    """Return the one argument of a call of the setter that the last node names."""
    call = stack[-2]
    if call.type != "method_invocation" or not is_field(call, "name", stack[-1]):
        return None
    arguments = elements(call.child_by_field_name("arguments"))
    return arguments[0] if len(arguments) == 1 else None


def _put(source: Source, stack: Stack) -> Node | None:
    """Return what is put into a table under the text that the last node is."""
    text, given, call = stack[-2], stack[-3], stack[-4]
    name = call.child_by_field_name("name") if call.type == "method_invocation" else None
    if name is None or source.text(name) != _PUT or text.named_child_count != 1:
        return None
    arguments = elements(given)
    return arguments[1] if len(arguments) == 2 and same(arguments[0], text) else None


def _assigned(stack: Stack) -> Node | None:
    """Return what is assigned to the field of an object that the last node names."""
    access = stack[-2]
    if access.type != "field_access" or not is_field(access, "field", stack[-1]):
        return None
    return assigned_to(access, stack[-3])


named_values = NamedValues("string_fragment", _put, _assigned, _set, ("set", "with"))
"""Yields the values of a name, in order."""
