"""Which names of a Java file are given a list that stands somewhere in it."""

from __future__ import annotations

from collections.abc import Iterator

from tree_sitter import Node

from namegen.languages.alterations import Handed
from namegen.languages.java.declarations import EACH
from namegen.languages.java.types import base_types, type_words
from namegen.languages.sources import Source, Stack, elements, is_field, place_in, span_of
from namegen.model.places import Span

_KEEPERS = frozenset({"add", "addFirst", "addLast", "offer", "put", "set"})
"""Methods that put what they are given into a list."""
_CALLABLES = frozenset({"method_declaration", "constructor_declaration"})
_TEXT = "String"


class Handing:
    """Finds the names of one file that get what an expression stands for."""

    def __init__(self, source: Source) -> None:
        self.source = source
        self._everywhere = Span(0, len(source.data))
        self._parameters: dict[str, list[tuple[list[Node], Span]]] = {}

    def handed(self, stack: Stack) -> Iterator[Handed]:
        """Yield the names that are given what the last of the stack stands for."""
        node, above = stack[-1], stack[-2]
        match above.type:
            case "variable_declarator" if is_field(above, "value", node):
                local = stack[-3].type == "local_variable_declaration"
                around = span_of(stack[-4]) if local else self._everywhere
                yield from self._declared(above, stack[-3].child_by_field_name("type"), around)
            case "enhanced_for_statement" if is_field(above, "value", node):
                declared = above.child_by_field_name("type")
                yield from self._declared(above, declared, span_of(above), -1)
            case "assignment_expression" if is_field(above, "right", node):
                yield from self._assigned(above.child_by_field_name("left"))
            case "argument_list":
                yield from self._given(stack)
            case "method_invocation" if is_field(above, "object", node):
                yield from self._in_lambda(above)
            case "return_statement":
                inner = ("lambda_expression", *_CALLABLES)
                around_it = next((one for one in reversed(stack) if one.type in inner), None)
                name = self._name(around_it) if around_it is not None else ""
                if name:
                    yield Handed(name, self._everywhere, called=True)

    def _in_lambda(self, call: Node) -> Iterator[Handed]:
        """Yield the parameter of a lambda that gets each element of a list."""
        given = call.child_by_field_name("arguments")
        function = elements(given)[0] if given is not None and elements(given) else None
        if function is None or self._name(call) not in EACH:
            return
        listed = function.child_by_field_name("parameters")
        names = [listed] if listed is not None and listed.type == "identifier" else []
        names += elements(listed)
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
        place = place_in(stack[-2], stack[-1])
        call = stack[-3]
        for listed, within in self.parameters_of(self.called(stack[:-2])):
            one = listed[min(place, len(listed) - 1)] if listed else None
            if one is not None and one.type == "spread_parameter":
                inner = next((n for n in elements(one) if n.type == "variable_declarator"), None)
                alone = len(elements(stack[-2])) == len(listed)
                if inner is not None:
                    yield from self._declared(inner, None, within, 0 if alone else 1)
            elif one is not None and place < len(listed):
                yield from self._declared(one, one.child_by_field_name("type"), within)
        if call.type == "method_invocation" and self._name(call) in _KEEPERS:
            yield from (
                Handed(one.word, one.within, one.step + 1)
                for one in self._assigned(call.child_by_field_name("object"))
            )

    def _name(self, node: Node) -> str:
        return self.source.text(node.child_by_field_name("name"))

    def called(self, stack: Stack) -> str:
        """Return the name of the method or of the class whose constructor a call calls."""
        call = stack[-1]
        if call.type == "method_invocation":
            return self._name(call)
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
        return self._name(of_type[-1])

    def parameters_of(self, word: str) -> list[tuple[list[Node], Span]]:
        """Return the parameters of each method or constructor of a name, and where they are it."""
        if word not in self._parameters:
            found: list[tuple[list[Node], Span]] = []
            for stack in self.source.stacks([word]):
                above = stack[-2] if len(stack) > 1 else stack[-1]
                listed = above.child_by_field_name("parameters")
                if (
                    above.type in _CALLABLES
                    and listed is not None
                    and is_field(above, "name", stack[-1])
                ):
                    found.append((elements(listed), span_of(above)))
            self._parameters[word] = found
        return self._parameters[word]
