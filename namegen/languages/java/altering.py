"""Where Java may change an array or a list without assigning to its name."""

from __future__ import annotations

from collections.abc import Iterator

from tree_sitter import Node

from namegen.languages.alterations import COPY, Alterations, Handed
from namegen.languages.java.handing import Handing
from namegen.languages.sources import Source, Stack, elements, is_field, place_in

_METHODS = frozenset({"replaceAll", "set", "sort"})
"""Methods that change a list of as many as before, as ``Arrays.asList`` gives."""
_CHANGERS = dict.fromkeys(("addAll", "fill", "replaceAll", "reverse", "rotate", "setAll"), 0)
_CHANGERS |= dict.fromkeys(("shuffle", "sort", "swap"), 0) | {"arraycopy": 2}
"""Methods of Java's library that change an array or a list, and which argument that is."""
_GIVES = dict.fromkeys(("elementAt", "get", "getFirst", "getLast", "next", "previous"), -1)
_GIVES |= dict.fromkeys(("iterator", "listIterator", "reversed", "subList"), 0)
_GIVES |= dict.fromkeys(("clone", "filter", "stream", "toArray"), COPY)
"""Methods that give an element of a list, something by which it can be changed, or a copy."""
_HAS: dict[str, tuple[tuple[str, ...], int | None]] = {
    "array_access": (("array",), -1),
    "array_creation_expression": ((), 0),
    "array_initializer": ((), 1),
    "assignment_expression": (("right",), 0),
    "cast_expression": ((), 0),
    "lambda_expression": (("body",), 1),
    "parenthesized_expression": ((), 0),
    "ternary_expression": (("consequence", "alternative"), 0),
}
"""Expressions that are, have or are a part of what stands in these fields of theirs."""
_SAME = frozenset({"asList", "requireNonNull", "synchronizedList"})
"""Methods that give what they are given, or a list by which it can be changed."""
_COPIES = frozenset({"copyOf", "stream"})
"""Methods that give a list with the same elements."""
_RUN = frozenset({"accept", "apply", "test"})
"""Methods that hand what they are given to a lambda."""


class JavaAlterations(Alterations):
    """Follows what is done to arrays and lists in a Java file."""

    def __init__(self, source: Source) -> None:
        super().__init__(source)
        self._handing = Handing(source)

    def _whole(self, stack: Stack, called: bool) -> Stack | None:
        above = stack[-2]
        is_method = above.type == "method_invocation" and is_field(above, "name", stack[-1])
        if is_method != called:
            return None
        behind = above.type == "field_access" and is_field(above, "field", stack[-1])
        return stack[:-1] if called or behind else stack[:]

    def _name(self, call: Node) -> str:
        return self.source.text(call.child_by_field_name("name"))

    def _is_changed(self, stack: Stack) -> bool:
        node, above = stack[-1], stack[-2]
        match above.type:
            case "array_access" if is_field(above, "array", node):
                return stack[-3].type == "assignment_expression" and is_field(
                    stack[-3], "left", above
                )
            case "method_invocation" if is_field(above, "object", node):
                return self._name(above) in _METHODS
            case "argument_list":
                return self._is_given_to_change(stack)
        return False

    def _is_given_to_change(self, stack: Stack) -> bool:
        """Whether an argument is that which a method of the library changes."""
        call = stack[-3]
        word = self._name(call)
        if word in _RUN:
            return True
        own = call.child_by_field_name("object") is None and bool(self._handing.parameters_of(word))
        return not own and place_in(stack[-2], stack[-1]) == _CHANGERS.get(word)

    def _around(self, stack: Stack) -> tuple[Stack, int] | None:
        node, above = stack[-1], stack[-2]
        if above.type == "argument_list":
            if stack[-3].type == "object_creation_expression":
                own = self._handing.parameters_of(self._handing.called(stack[:-2]))
                return None if own else (stack[:-2], COPY)
            word = self._name(stack[-3])
            if word in _COPIES:
                return stack[:-2], COPY
            alone = word in _SAME and len(elements(above)) == 1
            return (stack[:-2], 0 if alone else 1) if word in _SAME or word == "of" else None
        if above.type == "method_invocation" and is_field(above, "object", node):
            step = _GIVES.get(self._name(above))
        else:
            fields, step = _HAS.get(above.type, ((), None))
            if fields and not any(is_field(above, field, node) for field in fields):
                return None
        return (stack[:-1], step) if step is not None else None

    def _handed(self, stack: Stack) -> Iterator[Handed]:
        return self._handing.handed(stack)
