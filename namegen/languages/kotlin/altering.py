"""Where Kotlin may change what a name holds without naming it in full, or without assigning."""

from __future__ import annotations

import re
from collections.abc import Iterator

from tree_sitter import Node

from namegen.languages.alterations import COPY, Alterations, Handed
from namegen.languages.kotlin.callables import Callables
from namegen.languages.kotlin.expressions import LISTS
from namegen.languages.kotlin.handing import Handing
from namegen.languages.kotlin.trees import (
    called_of,
    infix_word,
    key_of,
    word_of,
)
from namegen.languages.sources import (
    Source,
    Stack,
    assigned_to,
    elements,
    is_field,
    named_child,
    place_in,
    same,
)

_METHODS = frozenset(
    {"add", "addAll", "addFirst", "addLast", "clear", "fill", "minusAssign", "plusAssign", "put"}
    | {"putAll", "remove", "removeAll", "removeAt", "removeFirst", "removeIf", "removeLast"}
    | {"replaceAll", "retainAll", "reverse", "set", "shuffle", "sort", "sortBy", "sortWith"}
)
"""Methods of Kotlin's library that change a list, a set, a table or an array."""
_CHANGERS = dict.fromkeys(("addAll", "fill", "replaceAll", "reverse", "setAll", "swap"), 0)
_CHANGERS |= {"arraycopy": 2}
"""Functions of Java's library that change a list, and which argument that is."""
_ON_ITSELF = frozenset({"also", "apply", "let", "run"})
"""Functions of Kotlin's library that hand what they are called on to a lambda."""
_GIVES = dict.fromkeys(("elementAt", "first", "get", "last", "next", "random", "single"), -1)
_GIVES |= dict.fromkeys(("firstOrNull", "getOrNull", "lastOrNull", "previous", "removeAt"), -1)
_GIVES |= dict.fromkeys(("also", "apply", "asList", "asReversed", "iterator", "listIterator"), 0)
_GIVES |= dict.fromkeys(("onEach", "subList", "takeIf", "takeUnless", "withIndex"), 0)
_GIVES |= dict.fromkeys(("copyOf", "clone", "filter", "reversed", "sorted", "toList"), COPY)
_GIVES |= dict.fromkeys(("toMutableList", "toTypedArray", "drop", "take", "plus"), COPY)
"""Methods that give an element of a list, something by which it can be changed, or a copy."""
_MEMBERS = frozenset({"first", "second", "third", "value", "values"})
"""What a pair or an entry of a table has."""
_HOLDERS = dict.fromkeys(("hashMapOf", "mapOf", "mutableMapOf"), 0) | {"Pair": 1, "Triple": 1}
_HOLDERS |= dict.fromkeys(LISTS, 1)
"""Functions of Kotlin's library that put what they are given into something."""
_CHANGING = re.compile(r"\w+|\]\s*[-+]?=(?!=)")


class KotlinAlterations(Alterations):
    """Follows what is done to arrays, lists and the like in a Kotlin file."""

    def __init__(self, source: Source) -> None:
        super().__init__(source)
        self._callables = Callables(source)
        self._handing = Handing(source, self._callables)

    def _whole(self, stack: Stack, called: bool) -> Stack | None:
        above = stack[-2]
        behind = above.type == "navigation_expression" and not same(
            named_child(above, 0), stack[-1]
        )
        whole = stack[:-1] if behind else stack[:]
        call = whole[-2] if len(whole) > 1 else None
        is_call = call is not None and call.type == "call_expression"
        is_called = is_call and call is not None and same(called_of(call), whole[-1])
        if is_called != called:
            return None
        return whole[:-1] if called else whole

    def _is_changed(self, stack: Stack) -> bool:
        node, above = stack[-1], stack[-2]
        further = stack[-3] if len(stack) > 2 else above
        match above.type:
            case "navigation_expression" if same(named_child(above, 0), node):
                return self._is_changing_call(word_of(self.source, above), further)
            case "index_expression" if same(named_child(above, 0), node):
                return further.type == "assignment" and is_field(further, "left", above)
            case "assignment" if is_field(above, "left", node):
                return assigned_to(node, above) is None
            case "infix_expression" if same(named_child(above, 0), node):
                return self._is_changing_call(infix_word(self.source, above), above)
            case "value_argument" if not same(key_of(above), node) and len(stack) > 4:
                return self._is_given_to_change(stack)
        return False

    def _is_given_to_change(self, stack: Stack) -> bool:
        """Whether an argument is that which a function of the library changes."""
        callee = called_of(stack[-4])
        word = word_of(self.source, callee)
        if word == "with":
            return self._changes(stack[-5])
        bare = callee is not None and callee.type == "identifier"
        if bare and self._callables.is_handed_in(word):
            return True
        own = bare and self._callables.declares(word)
        return not own and place_in(stack[-3], stack[-2]) == _CHANGERS.get(word)

    def _is_changing_call(self, word: str, call: Node) -> bool:
        """Whether a method that is called on a list, or the lambda that it gets, changes it."""
        if word in _METHODS:
            return True
        if word in _ON_ITSELF:
            return self._changes(call)
        return any(map(self._changes, self._callables.extended(word)))

    def _changes(self, code: Node) -> bool:
        """Whether some code says one of the methods that change, or assigns an element."""
        found = _CHANGING.findall(self.source.text(code))
        return any(one[0] == "]" or one in _METHODS for one in found)

    def _around(self, stack: Stack) -> tuple[Stack, int] | None:
        node, above = stack[-1], stack[-2]
        further = stack[-3] if len(stack) > 2 else above
        match above.type:
            case "value_argument" if len(stack) > 4:
                held = _HOLDERS.get(word_of(self.source, called_of(stack[-4])))
                return (stack[:-3], held) if held is not None else None
            case "infix_expression" if infix_word(self.source, above) == "to":
                return stack[:-1], 1
            case "navigation_expression" if same(named_child(above, 0), node):
                step = _GIVES.get(word_of(self.source, above))
                if further.type != "call_expression":
                    return (stack[:-1], -1) if word_of(self.source, above) in _MEMBERS else None
                return (stack[:-2], step) if step is not None else None
            case "index_expression" if same(named_child(above, 0), node):
                return stack[:-1], -1
        return (stack[:-1], 0) if _is_same(above, node) else None

    def _handed(self, stack: Stack) -> Iterator[Handed]:
        return self._handing.handed(stack)


def _is_same(above: Node, node: Node) -> bool:  # noqa: PLR0911 - one per form
    """Whether an expression around is just what one of its parts is."""
    match above.type:
        case "parenthesized_expression" | "annotated_expression":
            return True
        case "as_expression":
            return same(named_child(above, 0), node)
        case "unary_expression" | "binary_expression":
            operator = above.child_by_field_name("operator")
            return operator is not None and operator.type in {"!!", "?:"}
        case "if_expression":
            return not is_field(above, "condition", node)
        case "block" | "when_entry":
            return same(elements(above)[-1], node)
        case "when_expression" | "try_expression":
            return node.type in {"block", "when_entry"}
    return False
