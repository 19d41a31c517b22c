"""Which names of a Kotlin file are given a list that stands somewhere in it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from tree_sitter import Node

from namegen.languages.alterations import Handed
from namegen.languages.kotlin.callables import Callables, Filled
from namegen.languages.kotlin.lambdas import EACH, WHOLE
from namegen.languages.kotlin.scopes import REGIONS, TYPES
from namegen.languages.kotlin.trees import (
    after_sign,
    called_of,
    child_of,
    infix_word,
    key_of,
    lambda_of,
    last_name,
    statements,
    word_of,
)
from namegen.languages.owned_names import TEXTS
from namegen.languages.sources import (
    Source,
    Stack,
    elements,
    field_of,
    is_field,
    named_child,
    same,
    span_of,
)
from namegen.model.places import Span

_KEEPERS = frozenset({"add", "addFirst", "addLast", "put", "set"})
"""Methods that put what they are given into a list."""
_GIVERS = ("function_declaration", "property_declaration", "anonymous_function", "lambda_literal")


class Handing:
    """Finds the names of one file that get what an expression stands for."""

    def __init__(self, source: Source, callables: Callables) -> None:
        self.source = source
        self._callables = callables
        self._everywhere = Span(0, len(source.data))

    def handed(self, stack: Stack) -> Iterator[Handed]:
        """Yield the names that are given what the last of the stack stands for."""
        yield from self._put_into_names(stack)
        yield from self._passed_on(stack)

    def _put_into_names(self, stack: Stack) -> Iterator[Handed]:
        """Yield the names that are declared as, or assigned, the last of the stack."""
        node, above = stack[-1], stack[-2]
        match above.type:
            case "property_declaration":
                yield from self._declared(stack)
            case "assignment" if is_field(above, "right", node):
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
                yield from self._parameters(self._callables.infix(infix_word(self.source, above)))
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
            of_text = declared is not None and self.source.text(declared) in TEXTS
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
        if on is not None and word_of(self.source, callee) in _KEEPERS:
            for kept in self._assigned(on):
                yield Handed(kept.word, kept.within, kept.step + 1)

    def _parameters(self, filled: Iterable[Filled]) -> Iterator[Handed]:
        """Yield the names of parameters, but for those that are declared to be a text."""
        for one in filled:
            if one.declared is None or one.several or self.source.text(one.declared) not in TEXTS:
                yield Handed(self.source.text(one.name), one.within, 1 if one.several else 0)

    def _returned(self, stack: Stack) -> Iterator[Handed]:
        """Yield the function or the property that gives what is returned here."""
        giver = next((one for one in reversed(stack) if one.type in _GIVERS), None)
        if giver is not None and giver.type == "property_declaration":
            yield from self._variables(giver, self._everywhere)
        name = field_of(giver, "name")
        if name is not None:
            yield Handed(self.source.text(name), self._everywhere, called=True)

    def _in_lambda(self, stack: Stack) -> Iterator[Handed]:
        """Yield what the parameter of a lambda is called that gets a list or its elements."""
        word, inner = word_of(self.source, stack[-2]), lambda_of(stack[-3])
        if inner is None or word not in WHOLE | EACH:
            return
        step, within = 0 if word in WHOLE else -1, span_of(inner)
        listed = child_of(inner, "lambda_parameters")
        if listed is None:
            yield Handed("it", within, step)
        else:
            yield from self._variables(listed, within, step)
