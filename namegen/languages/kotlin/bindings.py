"""Where a Kotlin name gets a value: properties, locals, parameters, enum entries, types."""

from __future__ import annotations

from typing import Literal

from namegen.languages.kotlin.lambdas import given_to
from namegen.languages.kotlin.scopes import has_receiver, scope_of
from namegen.languages.kotlin.trees import child_of, key_of
from namegen.languages.kotlin.types import base_types
from namegen.languages.owned_bindings import WordBindings
from namegen.languages.owned_names import Binding, Change
from namegen.languages.scopes import Scope
from namegen.languages.sources import Source, Stack, named_child, same

_IT = "it"
"""What the one parameter of a lambda is called that names none."""


class KotlinBindings(WordBindings):
    """Finds all bindings of one word in a Kotlin file."""

    def _declared(self, stack: Stack) -> Binding | None:
        if self.word == _IT:
            return _it(self.source, stack, self.found)
        return super()._declared(stack)

    def _is_alone(self, stack: Stack) -> bool:
        leaf, above = stack[-1], stack[-2]
        if above.type == "navigation_expression":
            return same(named_child(above, 0), leaf)
        if self.word == _IT or above.type in {"call_expression", "user_type"}:
            return False
        return not (above.type == "value_argument" and same(key_of(above), leaf))

    def _change(self, stack: Stack) -> Change | None:
        place, whose = _whole(stack)
        scope = scope_of(self.source, stack)
        scopes = tuple(scope.enclosing)
        if whose == "this":
            opened = any(map(has_receiver, (one.node for one in scope.regions)))
            scopes = () if opened else tuple(one for one in scopes if one.sort != "region")
        elif whose == "object":
            scopes = ()
        on = named_child(stack[place], 0) if whose == "object" else None
        return self._changed(stack, place, scopes, on)

    def _is_variable(self, declaration: Binding) -> bool:
        statement = declaration.name.parent
        if statement is not None and statement.type == "variable_declaration":
            statement = statement.parent
        return statement is not None and any(one.type == "var" for one in statement.children)

    def _opens_more(self, scope: Scope) -> bool:
        if scope.sort == "region":
            return has_receiver(scope.node)
        return scope.sort != "file" and bool(base_types(self.source, scope.node))


def _whole(stack: Stack) -> tuple[int, Literal["this", "object"] | None]:
    """Return where ``name``, ``this.name`` or ``boat.name`` stands, and whose it is said to be."""
    above = stack[-2]
    of_object = above.type == "navigation_expression" and same(above.named_children[-1], stack[-1])
    if not of_object or same(above.named_children[0], stack[-1]) or len(stack) < 3:
        return len(stack) - 1, None
    is_own = above.named_children[0].type == "this_expression"
    return len(stack) - 2, "this" if is_own else "object"


def _it(source: Source, stack: Stack, found: list[Binding]) -> Binding | None:
    """Return what ``it`` is in the innermost lambda without parameters, once for each."""
    for place in range(len(stack) - 1, 0, -1):
        inner = stack[place]
        if inner.type != "lambda_literal" or child_of(inner, "lambda_parameters") is not None:
            continue
        if any(one.owner == inner.id for one in found):
            return None
        scope = scope_of(source, stack[: place + 2])
        way, value = given_to(source, stack[: place + 1]) or ("parameter", None)
        return Binding(stack[-1], inner.id, way, scope, value, "it is a parameter")
    return None
