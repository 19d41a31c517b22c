"""Whose members have names of their own in a Kotlin lambda or function: those of its receiver."""

from __future__ import annotations

from collections.abc import Callable

from tree_sitter import Node

from namegen.languages.kotlin.callables import Callables
from namegen.languages.kotlin.classes import UNTOLD, Classes
from namegen.languages.kotlin.lambdas import receiver_within
from namegen.languages.kotlin.trees import after_sign, child_of, last_name
from namegen.languages.kotlin.types import type_words
from namegen.languages.owned_names import Binding
from namegen.languages.sources import Source, Stack, elements, is_field, named_child
from namegen.model.facts import Path

_MOST_ALIASES = 5
_AROUND = frozenset({"annotated_lambda", "labeled_expression", "parenthesized_expression"})
_WRAPPED = frozenset({"nullable_type", "parenthesized_type"})
_GIVERS = frozenset({"anonymous_function", "function_declaration", "getter"})


class ImplicitReceivers:
    """Finds the receivers of one file's lambdas and functions."""

    def __init__(
        self,
        source: Source,
        classes: Classes,
        bindings: Callable[[str], list[Binding]],
    ) -> None:
        self.source = source
        self._classes = classes
        self._bindings = bindings
        self._callables = Callables(source)

    def words(self, stack: Stack) -> Path | None:
        """Return the class of the receiver of a region, or a name for it; None if it has none.

        The region, a lambda or a function, is the last of the stack.
        """
        region = stack[-1]
        if region.type != "lambda_literal":
            return self._extended(stack[-2] if region.type == "getter" else region)
        within = receiver_within(self.source, stack)
        if within is not None:
            return self._classes.words_of_value(within)
        found = {self._of_type(one, stack) for one in self._types(stack)} or {None}
        return found.pop() if len(found) == 1 else UNTOLD

    def _extended(self, declaration: Node) -> Path | None:
        """Return the type before the name in ``fun Boat.name()``."""
        for at, child in enumerate(declaration.children):
            if child.type == ".":
                return type_words(self.source, declaration.children[at - 1]) or UNTOLD
        return None

    def _types(self, stack: Stack) -> list[Node]:
        """Return the types that a lambda may have by what it is given to; none if not said."""
        place = len(stack) - 1
        while place > 1 and stack[place - 1].type in _AROUND - {"annotated_lambda"}:
            place -= 1
        node, above = stack[place], stack[place - 1]
        declared: list[Node | None] = []
        match above.type:
            case "property_declaration":
                declared = [after_sign(child_of(above, "variable_declaration") or above, ":")]
            case "annotated_lambda" | "value_argument":
                filled = self._callables.filled(stack[: place + 1])
                declared = [one.declared for one in filled if self._is_function(one.declared)]
            case "function_value_parameters":  # the default of the parameter before it
                before = node.prev_named_sibling
                declared = [after_sign(before, ":") if before is not None else None]
            case "class_parameter":
                declared = [after_sign(above, ":")]
            case "function_body" | "return_expression":
                declared = [self._given_type(stack[:place])]
            case "assignment" if is_field(above, "right", node):
                name = last_name(above.child_by_field_name("left"))
                bound = self._bindings(self.source.text(name)) if name is not None else []
                declared = [one.declared for one in bound]
        return [one for one in declared if one is not None]

    def _is_function(self, kind: Node | None) -> bool:
        """Whether a type is that of functions, or another name that this file gives to a type."""
        kind = _opened(kind)
        words = type_words(self.source, kind) or ("",)
        is_alias = any(one.way == "alias" for one in self._bindings(words[-1]))
        return is_alias or (kind is not None and kind.type == "function_type")

    def _given_type(self, stack: Stack) -> Node | None:
        """Return the type that the function or the property around is declared to give."""
        place = next((at for at in range(len(stack) - 1, 0, -1) if stack[at].type in _GIVERS), 0)
        giver = stack[place - 1] if stack[place].type == "getter" else stack[place]
        variable = child_of(giver, "variable_declaration") if giver.type[:4] == "prop" else None
        return after_sign(variable if variable is not None else giver, ":")

    def _of_type(self, kind: Node | None, stack: Stack) -> Path | None:
        """Return the class before the dot in ``Boat.() -> Unit``, through other names of it."""
        for _ in range(_MOST_ALIASES):
            kind = _opened(kind)
            if kind is None or kind.type == "function_type":
                break
            words = type_words(self.source, kind)
            bound = self._bindings(words[-1]) if words else []
            kind = next((one.value for one in bound if one.way == "alias"), None)
            if kind is None:
                return UNTOLD
        if kind is None:
            return UNTOLD
        before = next((at for at, one in enumerate(kind.children) if one.type == "."), None)
        if before is None:
            return None
        words = type_words(self.source, kind.children[before - 1])
        return UNTOLD if words is None or self._is_parameter(words, stack) else words

    def _is_parameter(self, words: Path, stack: Stack) -> bool:
        """Whether a type is a parameter of a function or class: told so, or one capital alone."""
        if len(words) > 1 or self._bindings(words[0]):
            return False
        lists = (child_of(one, "type_parameters") for one in stack)
        named = (self.source.text(one) for listed in lists if listed for one in elements(listed))
        return len(words[0]) == 1 or any(one.split(":")[0].strip() == words[0] for one in named)


def _opened(kind: Node | None) -> Node | None:
    """Return a type without its brackets and its question mark."""
    while kind is not None and kind.type in _WRAPPED:
        kind = named_child(kind, 0)
    return kind
