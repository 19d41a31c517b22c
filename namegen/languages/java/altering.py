"""Where Java may change an array or a list without assigning to its name."""

from __future__ import annotations

from collections.abc import Iterator

from tree_sitter import Node

from namegen.languages.alterations import COPY, Alterations, Handed
from namegen.languages.java.declarations import EACH
from namegen.languages.java.types import base_types, type_words
from namegen.languages.sources import Source, Stack, elements, same, span_of
from namegen.model.places import Span

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
_KEEPERS = frozenset({"add", "addFirst", "addLast", "offer", "put", "set"})
"""Methods that put what they are given into a list."""
_CALLABLES = frozenset({"method_declaration", "constructor_declaration"})
_TEXT = "String"


class JavaAlterations(Alterations):
    """Follows what is done to arrays and lists in a Java file."""

    def __init__(self, source: Source) -> None:
        super().__init__(source)
        self._parameters: dict[str, list[tuple[list[Node], Span]]] = {}

    def _whole(self, stack: Stack, called: bool) -> Stack | None:
        above = stack[-2]
        is_method = above.type == "method_invocation" and _is(above, "name", stack[-1])
        if is_method != called:
            return None
        is_field = above.type == "field_access" and _is(above, "field", stack[-1])
        return stack[:-1] if called or is_field else stack[:]

    def _is_changed(self, stack: Stack) -> bool:
        node, above = stack[-1], stack[-2]
        match above.type:
            case "array_access" if _is(above, "array", node):
                return stack[-3].type == "assignment_expression" and _is(stack[-3], "left", above)
            case "method_invocation" if _is(above, "object", node):
                return _word(self.source, above, "name") in _METHODS
            case "argument_list":
                return self._is_given_to_change(stack)
        return False

    def _is_given_to_change(self, stack: Stack) -> bool:
        """Whether an argument is that which a method of the library changes."""
        call = stack[-3]
        word = _word(self.source, call, "name")
        if word in _RUN:
            return True
        own = call.child_by_field_name("object") is None and bool(self._parameters_of(word))
        return not own and _place(stack) == _CHANGERS.get(word)

    def _around(self, stack: Stack) -> tuple[Stack, int] | None:
        node, above = stack[-1], stack[-2]
        if above.type == "argument_list":
            if stack[-3].type == "object_creation_expression":
                own = self._parameters_of(self._called(stack[:-2]))
                return None if own else (stack[:-2], COPY)
            word = _word(self.source, stack[-3], "name")
            if word in _COPIES:
                return stack[:-2], COPY
            alone = word in _SAME and len(elements(above)) == 1
            return (stack[:-2], 0 if alone else 1) if word in _SAME or word == "of" else None
        if above.type == "method_invocation" and _is(above, "object", node):
            step = _GIVES.get(_word(self.source, above, "name"))
        else:
            fields, step = _HAS.get(above.type, ((), None))
            if fields and not any(_is(above, field, node) for field in fields):
                return None
        return (stack[:-1], step) if step is not None else None

    def _handed(self, stack: Stack) -> Iterator[Handed]:
        node, above = stack[-1], stack[-2]
        match above.type:
            case "variable_declarator" if _is(above, "value", node):
                local = stack[-3].type == "local_variable_declaration"
                around = span_of(stack[-4]) if local else self._everywhere
                yield from self._declared(above, stack[-3].child_by_field_name("type"), around)
            case "enhanced_for_statement" if _is(above, "value", node):
                declared = above.child_by_field_name("type")
                yield from self._declared(above, declared, span_of(above), -1)
            case "assignment_expression" if _is(above, "right", node):
                yield from self._assigned(above.child_by_field_name("left"))
            case "argument_list":
                yield from self._given(stack)
            case "method_invocation" if _is(above, "object", node):
                yield from self._in_lambda(above)
            case "return_statement":
                inner = ("lambda_expression", *_CALLABLES)
                around_it = next((one for one in reversed(stack) if one.type in inner), None)
                name = _word(self.source, around_it, "name") if around_it is not None else ""
                if name:
                    yield Handed(name, self._everywhere, called=True)

    @property
    def _everywhere(self) -> Span:
        return Span(0, len(self.source.data))

    def _in_lambda(self, call: Node) -> Iterator[Handed]:
        """Yield the parameter of a lambda that gets each element of a list."""
        given = call.child_by_field_name("arguments")
        function = elements(given)[0] if given is not None and elements(given) else None
        if function is None or _word(self.source, call, "name") not in EACH:
            return
        listed = function.child_by_field_name("parameters")
        names = [listed] if listed is not None and listed.type == "identifier" else []
        names += elements(listed) if listed is not None else []
        for one in names:
            name = one.child_by_field_name("name") or one
            yield Handed(self.source.text(name), span_of(function), -1)

    def _declared(
        self, declarator: Node, declared: Node | None, within: Span, step: int = 0
    ) -> Iterator[Handed]:
        """Yield what is declared by a name, unless it is declared to be a text."""
        of_text = declared is not None and self.source.text(declared) == _TEXT
        name = declarator.child_by_field_name("name")
        if name is not None and not (
            of_text and declarator.child_by_field_name("dimensions") is None
        ):
            yield Handed(self.source.text(name), within, step)

    def _assigned(self, left: Node | None) -> Iterator[Handed]:
        """Yield what is assigned to: a name, a field, or the array whose element it is."""
        step = 0
        while left is not None and left.type in {"array_access", "parenthesized_expression"}:
            step += 1 if left.type == "array_access" else 0
            left = left.child_by_field_name("array") or next(iter(elements(left)), None)
        if left is not None and left.type == "field_access":
            left = left.child_by_field_name("field")
        if left is not None and left.type == "identifier":
            yield Handed(self.source.text(left), self._everywhere, step)

    def _given(self, stack: Stack) -> Iterator[Handed]:
        """Yield the parameters of this file that an argument fills, or what it is put into."""
        place = _place(stack)
        call = stack[-3]
        for listed, within in self._parameters_of(self._called(stack[:-2])):
            one = listed[min(place, len(listed) - 1)] if listed else None
            if one is not None and one.type == "spread_parameter":
                inner = next((n for n in elements(one) if n.type == "variable_declarator"), None)
                alone = len(elements(stack[-2])) == len(listed)
                if inner is not None:
                    yield from self._declared(inner, None, within, 0 if alone else 1)
            elif one is not None and place < len(listed):
                yield from self._declared(one, one.child_by_field_name("type"), within)
        if call.type == "method_invocation" and _word(self.source, call, "name") in _KEEPERS:
            yield from (
                Handed(one.word, one.within, one.step + 1)
                for one in self._assigned(call.child_by_field_name("object"))
            )

    def _called(self, stack: Stack) -> str:
        """Return the name of the method or of the class whose constructor a call calls."""
        call = stack[-1]
        if call.type == "method_invocation":
            return _word(self.source, call, "name")
        if call.type == "object_creation_expression":
            words = type_words(self.source, call.child_by_field_name("type"))
            return words[-1] if words else ""
        of_type = [one for one in stack if one.type in {"class_declaration", "enum_declaration"}]
        if not of_type:
            return ""
        called = call.child_by_field_name("constructor")
        if called is not None and called.type == "super":
            bases = base_types(self.source, of_type[-1])
            return bases[0][-1] if bases else ""
        return _word(self.source, of_type[-1], "name")

    def _parameters_of(self, word: str) -> list[tuple[list[Node], Span]]:
        """Return the parameters of each method or constructor of a name, and where they are it."""
        if word not in self._parameters:
            found: list[tuple[list[Node], Span]] = []
            for stack in self.source.stacks([word]):
                above = stack[-2] if len(stack) > 1 else stack[-1]
                listed = above.child_by_field_name("parameters")
                if (
                    above.type in _CALLABLES
                    and listed is not None
                    and _is(above, "name", stack[-1])
                ):
                    found.append((elements(listed), span_of(above)))
            self._parameters[word] = found
        return self._parameters[word]


def _place(stack: Stack) -> int:
    """Return which of the arguments the last of the stack is."""
    return next(at for at, one in enumerate(elements(stack[-2])) if same(one, stack[-1]))


def _is(node: Node, field: str, child: Node) -> bool:
    return same(node.child_by_field_name(field), child)


def _word(source: Source, node: Node, field: str) -> str:
    name = node.child_by_field_name(field)
    return source.text(name) if name is not None else ""
