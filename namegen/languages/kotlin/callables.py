"""Which parameters of a Kotlin file's functions and classes an argument of a call fills."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.kotlin.trees import (
    after_sign,
    body_of,
    called_of,
    child_of,
    key_of,
    last_name,
)
from namegen.languages.kotlin.types import base_types, type_words
from namegen.languages.sources import Source, Stack, elements, is_field, place_in, span_of
from namegen.model.places import Span

_LISTS = ("function_value_parameters", "class_parameters", "lambda_parameters")
_PARAMETERS = frozenset({"class_parameter", "parameter", "variable_declaration"})
_FUNCTIONS = frozenset({"anonymous_function", "lambda_literal"})


class Filled(Struct, frozen=True):
    """A parameter, where its name stands for it, and whether it takes several arguments."""

    name: Node
    declared: Node | None
    within: Span
    several: bool


class Callables:
    """Finds the functions and classes of a file by their names, and remembers them."""

    def __init__(self, source: Source) -> None:
        self.source = source
        self._known: dict[str, list[list[Filled]]] = {}
        self._handed_in: dict[str, bool] = {}
        self._extended: dict[str, list[Node]] = {}

    def filled(self, stack: Stack) -> Iterator[Filled]:
        """Yield the parameters that an argument, or the lambda behind a call, fills."""
        if stack[-2].type == "annotated_lambda":
            ways = self._parameters_of(self._called(stack[:-2]))
            yield from (listed[-1] for listed in ways if listed)
            return
        place = place_in(stack[-3], stack[-2])
        key = key_of(stack[-2])
        for listed in self._parameters_of(self._called(stack[:-3])):
            if key is not None:
                word = self.source.text(key)
                yield from (one for one in listed if self.source.text(one.name) == word)
            elif place < len(listed) or (listed and listed[-1].several):
                yield listed[min(place, len(listed) - 1)]

    def declares(self, word: str) -> bool:
        """Whether the file has a function or a class of this name."""
        return bool(self._parameters_of(word))

    def infix(self, word: str) -> Iterator[Filled]:
        """Yield the parameters that the right side of ``n put "bow"`` fills."""
        yield from (listed[0] for listed in self._parameters_of(word) if listed)

    def is_handed_in(self, word: str) -> bool:
        """Whether a function by this name is a parameter or a property: it may be any function."""
        if word not in self._handed_in:
            typed = (stack[-2] for stack in self.source.stacks([word]) if len(stack) > 2)
            kinds = (after_sign(one, ":") for one in typed if one.type in _PARAMETERS)
            self._handed_in[word] = any(
                one is not None and one.type == "function_type" for one in kinds
            )
        return self._handed_in[word]

    def extended(self, word: str) -> list[Node]:
        """Return the functions of a name that are called on what is no object of their class."""
        if word not in self._extended:
            above = (stack[-2:] for stack in self.source.stacks([word]) if len(stack) > 1)
            self._extended[word] = [
                function
                for function, name in above
                if function.type == "function_declaration"
                and is_field(function, "name", name)
                and any(child.type == "." for child in function.children)
            ]
        return self._extended[word]

    def _called(self, stack: Stack) -> str:
        """Return the name of the function or the class that the last of the stack calls."""
        call = stack[-1]
        if call.type == "call_expression":
            callee = called_of(call)
            if callee is not None and callee.type == "call_expression":  # on(boat) { ... }
                callee = called_of(callee)
            name = last_name(callee)
            return self.source.text(name)
        if call.type == "constructor_invocation":
            words = type_words(self.source, child_of(call, "user_type"))
            return words[-1] if words else ""
        owner = next((one for one in reversed(stack) if one.type == "class_declaration"), None)
        if owner is None:
            return ""
        if call.type == "constructor_delegation_call" and call.children[0].type == "super":
            bases = base_types(self.source, owner)
            return bases[0][-1] if bases else ""
        name = owner.child_by_field_name("name")
        return self.source.text(name)

    def _parameters_of(self, word: str) -> list[list[Filled]]:
        """Return the parameters of each function, or way to make an object, of a name."""
        if word not in self._known:
            self._known[word] = [
                list(self._listed(one))
                for stack in self.source.stacks([word])
                for one in _ways(stack)
            ]
        return self._known[word]

    def _listed(self, callable_: Node) -> Iterator[Filled]:
        listed = child_of(callable_, *_LISTS)
        several = False
        for one in elements(listed):
            name = child_of(one, "identifier")
            if one.type == "parameter_modifiers":
                several = "vararg" in self.source.text(one)
            elif one.type in _PARAMETERS and name is not None:
                kept = any(child.type in {"val", "var"} for child in one.children)
                whole = Span(0, len(self.source.data))
                around = callable_.parent if one.type == "class_parameter" else callable_
                within = whole if kept or around is None else span_of(around)
                marked = "vararg" in self.source.text(one).split()
                yield Filled(name, after_sign(one, ":"), within, several or marked)
                several = False


def _ways(stack: Stack) -> list[Node]:
    """Return what has the parameters of the name that is the last of a stack, if it declares one.

    That is a function itself, the constructors of a class, a lambda that a variable holds.
    """
    declaration = stack[-2] if len(stack) > 2 else stack[-1]
    if declaration.type == "variable_declaration":
        value = after_sign(stack[-3], "=") if stack[-3].type == "property_declaration" else None
        return [value] if value is not None and value.type in _FUNCTIONS else []
    if not is_field(declaration, "name", stack[-1]):
        return []
    if declaration.type == "function_declaration":
        return [declaration]
    if declaration.type != "class_declaration":
        return []
    body, first = body_of(declaration), child_of(declaration, "primary_constructor")
    members = elements(body)
    others = [one for one in members if one.type == "secondary_constructor"]
    return [*([first] if first is not None else []), *others]
