"""Where Kotlin may change what a name holds without naming it in full, or without assigning."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from tree_sitter import Node

from namegen.languages.alterations import COPY, Alterations, Handed
from namegen.languages.kotlin.callables import Callables, Filled, place_of
from namegen.languages.kotlin.expressions import LISTS
from namegen.languages.kotlin.lambdas import EACH, WHOLE
from namegen.languages.kotlin.scopes import REGIONS, TYPES
from namegen.languages.kotlin.trees import (
    after_sign,
    called_of,
    child_of,
    key_of,
    lambda_of,
    last_name,
    statements,
)
from namegen.languages.sources import Source, Stack, elements, named_child, same, span_of
from namegen.model.places import Span

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
_KEEPERS = frozenset({"add", "addFirst", "addLast", "put", "set"})
"""Methods that put what they are given into a list."""
_CHANGING = re.compile(r"\w+|\]\s*[-+]?=(?!=)")
_TEXTS = frozenset({"String", "String?"})
_GIVERS = ("function_declaration", "property_declaration", "anonymous_function", "lambda_literal")


class KotlinAlterations(Alterations):
    """Follows what is done to arrays, lists and the like in a Kotlin file."""

    def __init__(self, source: Source) -> None:
        super().__init__(source)
        self._callables = Callables(source)
        self._everywhere = Span(0, len(source.data))

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
                return self._is_changing_call(_word(self.source, above), further)
            case "index_expression" if same(named_child(above, 0), node):
                return further.type == "assignment" and _is(further, "left", above)
            case "assignment" if _is(above, "left", node):
                return not _is_plain(above)
            case "infix_expression" if same(named_child(above, 0), node):
                return self._is_changing_call(_infix(self.source, above), above)
            case "value_argument" if not same(key_of(above), node) and len(stack) > 4:
                return self._is_given_to_change(stack)
        return False

    def _is_given_to_change(self, stack: Stack) -> bool:
        """Whether an argument is that which a function of the library changes."""
        callee = called_of(stack[-4])
        word = _word(self.source, callee)
        if word == "with":
            return self._changes(stack[-5])
        bare = callee is not None and callee.type == "identifier"
        if bare and self._callables.is_handed_in(word):
            return True
        own = bare and self._callables.declares(word)
        return not own and place_of(stack) == _CHANGERS.get(word)

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
                held = _HOLDERS.get(_word(self.source, called_of(stack[-4])))
                return (stack[:-3], held) if held is not None else None
            case "infix_expression" if _infix(self.source, above) == "to":
                return stack[:-1], 1
            case "navigation_expression" if same(named_child(above, 0), node):
                step = _GIVES.get(_word(self.source, above))
                if further.type != "call_expression":
                    return (stack[:-1], -1) if _word(self.source, above) in _MEMBERS else None
                return (stack[:-2], step) if step is not None else None
            case "index_expression" if same(named_child(above, 0), node):
                return stack[:-1], -1
        return (stack[:-1], 0) if _is_same(above, node) else None

    def _handed(self, stack: Stack) -> Iterator[Handed]:
        yield from self._put_into_names(stack)
        yield from self._passed_on(stack)

    def _put_into_names(self, stack: Stack) -> Iterator[Handed]:
        """Yield the names that are declared as, or assigned, the last of the stack."""
        node, above = stack[-1], stack[-2]
        match above.type:
            case "property_declaration":
                yield from self._declared(stack)
            case "assignment" if _is(above, "right", node):
                yield from self._assigned(above.child_by_field_name("left"))
            case "for_statement" if same(after_sign(above, "in"), node):
                yield from self._variables(above, span_of(above), -1)
            case "lambda_literal" if len(stack) > 4 and same(statements(above)[-1], node):
                if stack[-5].type == "property_delegate":
                    yield from self._declared(stack[:-4])
            case "function_value_parameters":  # the default of the parameter before it
                before = child_of(node.prev_named_sibling, "identifier")
                if before is not None:
                    yield Handed(self.source.text(before), span_of(stack[-3]))
            case "explicit_delegation":  # each object of the class works on it
                owner = next(one for one in reversed(stack) if one.type in TYPES)
                name = owner.child_by_field_name("name")
                if name is not None:
                    yield Handed(self.source.text(name), self._everywhere, called=True)

    def _passed_on(self, stack: Stack) -> Iterator[Handed]:
        """Yield the parameters that get the last of the stack, and the functions that give it."""
        node, above = stack[-1], stack[-2]
        match above.type:
            case "value_argument" if not same(key_of(above), node) and len(stack) > 4:
                yield from self._given(stack)
            case "infix_expression" if not same(named_child(above, 0), node):
                yield from self._parameters(self._callables.infix(_infix(self.source, above)))
            case "return_expression":
                yield from self._returned(stack)
            case "function_body" if same(after_sign(above, "="), node):
                yield from self._returned(stack)
            case "navigation_expression" if same(named_child(above, 0), node) and len(stack) > 2:
                yield from self._in_lambda(stack)

    def _declared(self, stack: Stack) -> Iterator[Handed]:
        """Yield what the declaration above the last of the stack declares."""
        around = stack[-3] if len(stack) > 2 else stack[0]
        local = around.type in REGIONS
        yield from self._variables(stack[-2], span_of(around) if local else self._everywhere)

    def _variables(self, above: Node, within: Span, step: int = 0) -> Iterator[Handed]:
        """Yield the names that are declared at once; if there are more, each gets a part."""
        several = child_of(above, "multi_variable_declaration")
        for one in elements(several if several is not None else above):
            name, declared = child_of(one, "identifier"), after_sign(one, ":")
            of_text = declared is not None and self.source.text(declared) in _TEXTS
            if one.type == "variable_declaration" and name is not None and not of_text:
                inner = step - 1 if several is not None else step
                yield Handed(self.source.text(name), within, inner)

    def _assigned(self, left: Node | None) -> Iterator[Handed]:
        """Yield what is assigned to: a name, or the list whose element it is."""
        step = 0
        while left is not None and left.type == "index_expression":
            step, left = step + 1, named_child(left, 0)
        name = last_name(left)
        if name is not None:
            yield Handed(self.source.text(name), self._everywhere, step)

    def _given(self, stack: Stack) -> Iterator[Handed]:
        """Yield the parameters of this file that an argument fills, or what it is put into."""
        yield from self._parameters(self._callables.filled(stack))
        callee = called_of(stack[-4])
        on = named_child(callee, 0) if callee is not None else None
        if on is not None and _word(self.source, callee) in _KEEPERS:
            for kept in self._assigned(on):
                yield Handed(kept.word, kept.within, kept.step + 1)

    def _parameters(self, filled: Iterable[Filled]) -> Iterator[Handed]:
        """Yield the names of parameters, but for those that are declared to be a text."""
        for one in filled:
            if one.declared is None or one.several or self.source.text(one.declared) not in _TEXTS:
                yield Handed(self.source.text(one.name), one.within, 1 if one.several else 0)

    def _returned(self, stack: Stack) -> Iterator[Handed]:
        """Yield the function or the property that gives what is returned here."""
        giver = next((one for one in reversed(stack) if one.type in _GIVERS), None)
        if giver is not None and giver.type == "property_declaration":
            yield from self._variables(giver, self._everywhere)
        name = giver.child_by_field_name("name") if giver is not None else None
        if name is not None:
            yield Handed(self.source.text(name), self._everywhere, called=True)

    def _in_lambda(self, stack: Stack) -> Iterator[Handed]:
        """Yield what the parameter of a lambda is called that gets a list or its elements."""
        word, inner = _word(self.source, stack[-2]), lambda_of(stack[-3])
        if inner is None or word not in WHOLE | EACH:
            return
        step, within = 0 if word in WHOLE else -1, span_of(inner)
        listed = child_of(inner, "lambda_parameters")
        if listed is None:
            yield Handed("it", within, step)
        else:
            yield from self._variables(listed, within, step)


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
            return not _is(above, "condition", node)
        case "block" | "when_entry":
            return same(elements(above)[-1], node)
        case "when_expression" | "try_expression":
            return node.type in {"block", "when_entry"}
    return False


def _is_plain(assignment: Node) -> bool:
    operator = assignment.child_by_field_name("operator")
    return operator is not None and operator.type == "="


def _is(node: Node, field: str, child: Node) -> bool:
    return same(node.child_by_field_name(field), child)


def _word(source: Source, node: Node | None) -> str:
    name = last_name(node)
    return source.text(name) if name is not None else ""


def _infix(source: Source, call: Node) -> str:
    """Return the name of the function in ``n put "bow"``."""
    parts = elements(call)
    return source.text(parts[1]) if len(parts) == 3 else ""
