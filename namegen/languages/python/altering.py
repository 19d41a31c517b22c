"""What one use of a Python list or table does to it, and to which other names it hands it.

A list is changed at a depth: ``names.append("bow")`` at its own elements,
``rows[0].append("bow")`` one deeper. Another name may be the list itself, an element of it,
a copy that has the same elements, or something that holds it.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.python.signatures import SPLATS
from namegen.languages.sources import Source, Stack, elements, is_field, same

PATTERNS = frozenset({"pattern_list", "tuple_pattern", "list_pattern"})
SETTERS = PATTERNS | {"assignment", "augmented_assignment", "for_statement", "as_pattern_target"}
"""What may stand around an attribute or a subscript that is set."""
_METHODS = frozenset(
    {"append", "clear", "extend", "insert", "pop", "popitem", "remove", "reverse", "setdefault"}
    | {"sort", "update", "add", "discard", "difference_update", "intersection_update"}
    | {"symmetric_difference_update", "appendleft", "extendleft", "popleft", "rotate"}
    | {"__delitem__", "__iadd__", "__setitem__"}
)
_KEEPERS = frozenset(
    {"add", "append", "appendleft", "extend", "extendleft", "insert", "setdefault", "update"}
)
"""Methods of a list or a table that put into it what they are given."""
_CHANGERS = frozenset({"heappop", "heappush", "insort", "insort_left", "insort_right", "shuffle"})
"""Functions of Python's library that change what they are given first."""
_CHOICES = frozenset(
    {"boolean_operator", "conditional_expression", "named_expression", "parenthesized_expression"}
)
"""What gives one of its parts itself."""
_TAKERS = frozenset({"get", "pop", "popitem", "setdefault"})
"""Methods that give an element."""
_TAKING = frozenset({"max", "min", "next"})
"""Functions of Python that give an element of a list or of what goes through it."""
_COPYING_METHODS = frozenset({"copy", "items", "values"})
_COPYING = frozenset(
    {"dict", "enumerate", "filter", "iter", "list", "reversed", "set", "sorted", "tuple", "zip"}
)
"""Functions of Python that give other lists of the same elements."""
_DISPLAYS = frozenset(
    {"list", "tuple", "set", "dictionary", "expression_list"}
    | {"list_comprehension", "set_comprehension", "generator_expression"}
)
_COMBINING = frozenset({"+", "*", "|"})
"""Operators that put lists or tables together."""
_OWNERS = frozenset({"class_definition", "function_definition"})
LOOPS = frozenset({"for_statement", "for_in_clause"})
_DEFAULTS = frozenset({"default_parameter", "typed_default_parameter"})
_DEEPEST, _OUTERMOST, _MOST = 1, -2, 3
"""Bounds of what is told apart: a change counts at the list's own elements, or deeper."""


class Tie(Struct, frozen=True):
    """How what a name stands for hangs together with a list.

    A change of it at some depth is one of the list at that depth plus ``shift``; changes
    less deep than ``least`` leave the list as it is. Where more would have to be told
    apart, a change rather counts.
    """

    shift: int = 0
    least: int = 1

    def depth(self, depth: int) -> int:
        """Return the depth at which the list is changed; 0 where it is not."""
        return max(1, depth + self.shift) if depth >= self.least else 0

    def of_element(self) -> Tie:
        """Return the tie of an element of what has this one."""
        return Tie(min(self.shift + 1, _DEEPEST), max(self.least - 1, 1))

    def of_holder(self) -> Tie:
        """Return the tie of a list or table that holds what has this one."""
        return Tie(max(self.shift - 1, _OUTERMOST), min(self.least + 1, _MOST))

    def of_copy(self) -> Tie:
        """Return the tie of another list of the same elements."""
        return Tie(self.shift, max(self.least, 2))

    def within(self, outer: Tie) -> Tie:
        """Return the tie to a list of what has this tie to something that has ``outer`` to it."""
        least = max(self.least, outer.least - self.shift)
        shift = max(_OUTERMOST, min(self.shift + outer.shift, _DEEPEST))
        return Tie(shift, min(least, _MOST))


Sort = Literal["name", "attribute", "either"]
"""How a name is written where it is used: a member of a class by itself or as ``self.name``."""


class Handed(Struct, frozen=True):
    """A name that stands for a list, or for what has a tie to it.

    ``within`` is the function that the name belongs to, if it is not the same in the whole
    file. With an ``argument`` of the list ``listed`` it names a function that gets it so; the
    name of a function without one gives it back.
    """

    name: Node
    tie: Tie
    sort: Sort = "name"
    within: Node | None = None
    argument: Node | None = None
    listed: Node | None = None


def changed_at(source: Source, stack: Stack) -> Iterator[int]:
    """Yield the depths at which the use of a list, the last of the stack, changes it."""
    for place, tie in _climbed(source, stack):
        if _is_changed(source, stack, place) and tie.depth(1):
            yield tie.depth(1)


def handed_on(source: Source, stack: Stack) -> Iterator[Handed]:
    """Yield to what the use of a list, the last of the stack, hands it on."""
    for place, tie in _climbed(source, stack):
        node, above = stack[place], stack[place - 1]
        value = above.child_by_field_name("value")
        match above.type:
            case "assignment" if is_field(above, "right", node):
                yield from targets(stack, place - 1, tie)
            case "augmented_assignment" if is_field(above, "right", node):
                yield from _target(stack, above.child_by_field_name("left"), tie.of_copy())
            case "named_expression" if same(value, node):
                yield from _target(stack, above.child_by_field_name("name"), tie)
            case kind if kind in LOOPS and is_field(above, "right", node):
                yield from _target(stack, above.child_by_field_name("left"), tie.of_element())
            case kind if kind in _DEFAULTS and same(value, node):
                yield from _target(stack, above.child_by_field_name("name"), tie)
            case "return_statement":
                yield from _caller(stack, tie)
            case "argument_list":
                yield from _argument(source, stack, place, tie)
            case "keyword_argument" if same(value, node):
                yield from _argument(source, stack, place - 1, tie)


def targets(stack: Stack, place: int, tie: Tie) -> Iterator[Handed]:
    """Yield all targets of ``a = b = value``, from the assignment at a place outwards."""
    while stack[place].type == "assignment":
        yield from _target(stack, stack[place].child_by_field_name("left"), tie)
        place -= 1


def _climbed(source: Source, stack: Stack) -> Iterator[tuple[int, Tie]]:
    """Yield the places of the nodes that give the last one, take from it or hold it."""
    place: int | None = len(stack) - 1
    tie: Tie = Tie()
    while place is not None and place > 1:
        yield place, tie
        place, tie = _step(source, stack, place, tie)


def _step(source: Source, stack: Stack, place: int, tie: Tie) -> tuple[int | None, Tie]:  # noqa: PLR0911 - one per form
    """Return the next node upwards that hangs together with the one at a place, and how."""
    node, above, beyond = stack[place], stack[place - 1], stack[place - 2]
    value = above.child_by_field_name("value")
    match above.type:
        case kind if kind in _CHOICES or kind == "await":
            return place - 1, tie
        case "subscript" if same(value, node):
            sliced = any(one.type == "slice" for one in elements(above))
            return place - 1, tie.of_copy() if sliced else tie.of_element()
        case "call" if is_field(above, "function", node):
            return place - 1, tie  # what a function of the program gives back
        case "attribute" if is_field(above, "object", node):
            word = source.text(above.child_by_field_name("attribute"))
            called = beyond.type == "call" and is_field(beyond, "function", above)
            if called and word in _TAKERS:
                return place - 2, tie.of_element()
            return (
                (place - 2, tie.of_copy()) if called and word in _COPYING_METHODS else (None, tie)
            )
        case "pair" if same(value, node):
            return place - 1, tie
        case kind if kind in _DISPLAYS:
            return place - 1, tie.of_holder()
        case kind if kind in SPLATS:
            return place - 1, tie.of_element()
        case "binary_operator" if _field(above, "operator") in _COMBINING:
            return place - 1, tie.of_copy()
        case "argument_list" if beyond.type == "call":
            function = source.text(beyond.child_by_field_name("function"))
            if function in _TAKING:
                return place - 2, tie.of_element()
            copied = function in _COPYING or function == "copy.copy"
            return (place - 2, tie.of_copy()) if copied else (None, tie)
    return None, tie


def _is_changed(source: Source, stack: Stack, place: int) -> bool:
    """Whether what the node at a place stands for gets, loses or swaps elements there."""
    node, above, beyond = stack[place], stack[place - 1], stack[place - 2]
    match above.type:
        case "attribute" if is_field(above, "object", node):
            return source.text(above.child_by_field_name("attribute")) in _METHODS
        case "subscript" if is_field(above, "value", node):
            return _is_set(above, beyond)
        case "augmented_assignment":
            return is_field(above, "left", node)
        case "argument_list":
            called = source.text(beyond.child_by_field_name("function"))
            return called.rpartition(".")[2] in _CHANGERS
    return False


def _is_set(subscript: Node, above: Node) -> bool:
    if above.type == "delete_statement" or above.type in PATTERNS:
        return True
    return above.type in SETTERS and is_field(above, "left", subscript)


def _target(stack: Stack, target: Node | None, tie: Tie) -> Iterator[Handed]:
    """Yield the names in what is assigned to; a list or table that gets an element holds it."""
    pending = [(target, tie)]
    while pending:
        node, tie = pending.pop()
        if node is None:
            continue
        if node.type == "identifier":
            yield _named(stack, node, tie)
        elif node.type == "attribute":
            name = node.child_by_field_name("attribute")
            yield from [Handed(name, tie, "attribute")] if name is not None else []
        elif node.type == "subscript":
            pending.append((node.child_by_field_name("value"), tie.of_holder()))
        elif node.type in PATTERNS:
            pending += [(one, tie.of_element()) for one in elements(node)]
        elif node.type == "list_splat_pattern":
            pending += [(one, tie.of_holder()) for one in elements(node)]


def _named(stack: Stack, name: Node, tie: Tie) -> Handed:
    """Return what gets a value by a plain name: in a function, a class or the module."""
    owners = (one for one in reversed(stack) if one.type in _OWNERS)
    owner = next(owners, None)
    if owner is None:
        return Handed(name, tie)
    if owner.type == "class_definition":
        return Handed(name, tie, "either")
    return Handed(name, tie, "name", owner)


def _argument(source: Source, stack: Stack, place: int, tie: Tie) -> Iterator[Handed]:
    """Yield what the function that is called gets, and the list that a method puts it into."""
    argument, listed, call = stack[place], stack[place - 1], stack[place - 2]
    called = call.child_by_field_name("function")
    if call.type != "call" or called is None:
        return
    if called.type == "identifier":
        yield Handed(called, tie, argument=argument, listed=listed)
    method = called.child_by_field_name("attribute") if called.type == "attribute" else None
    if method is not None:
        yield Handed(method, tie, argument=argument, listed=listed)
        if source.text(method) in _KEEPERS:
            yield from _target(stack, called.child_by_field_name("object"), tie.of_holder())


def _caller(stack: Stack, tie: Tie) -> Iterator[Handed]:
    """Yield the function around a ``return``: who calls it gets what it gives back."""
    owners = [one for one in stack if one.type in _OWNERS]
    name = owners[-1].child_by_field_name("name") if owners else None
    if name is not None:
        is_method = len(owners) > 1 and owners[-2].type == "class_definition"
        yield Handed(name, tie, "attribute" if is_method else "name")


def _field(node: Node, name: str) -> str:
    """Return the type of a part of a node."""
    part = node.child_by_field_name(name)
    return part.type if part is not None else ""
