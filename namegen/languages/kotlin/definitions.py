"""What a dotted path of a Kotlin file stands for."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.definitions import DefinitionFinder
from namegen.languages.expressions import RUN_TIME
from namegen.languages.kotlin.bindings import Binding, bindings_of, may_be_overridden, returned
from namegen.languages.kotlin.expressions import dotted, expression, opened
from namegen.languages.kotlin.instances import Made, made_of
from namegen.languages.kotlin.scopes import tries
from namegen.languages.kotlin.trees import body_of, called_of, child_of
from namegen.languages.kotlin.types import base_types, type_words
from namegen.languages.scopes import Scope
from namegen.languages.sources import elements, span_of
from namegen.model.facts import Definition, Each, Expression, Path, Ref, Unknown


class Definitions(DefinitionFinder[Binding]):
    """Finds the definitions of a file on demand, and remembers what was asked."""

    def _bindings_of(self, word: str) -> list[Binding]:
        return bindings_of(self.source, word)

    def find(self, path: Path) -> list[Definition]:
        """Return every binding of a path."""
        if not path:
            return []
        if path[0].startswith("@"):
            return self._valued(self.bound_at(path), path[1:], path)
        root = self.source.root.id
        bound = [one for one in self._named(path[:1]) if one.owner == root]
        return self._valued(bound, path, path)

    def bound_at(self, path: Path) -> list[Binding]:
        """Return the bindings of a word in a function, a block or types: ("@120", "name")."""
        if path[0].startswith("@"):
            start = int(path[0][1:])
            return [one for one in self._named(path[1:2]) if _owned_at(one, start)]
        owner = self.source.root.id
        for word in path[:-1]:
            types = [one for one in self.bindings(word) if one.way == "type" and one.owner == owner]
            if len(types) != 1 or types[0].value is None:
                return []
            owner = types[0].value.id
        return [one for one in self._named(path[-1:]) if one.owner == owner]

    def _named(self, words: Path) -> list[Binding]:
        return self.bindings(words[0].removesuffix("()")) if words else []

    def _valued(self, bound: list[Binding], words: Path, path: Path) -> list[Definition]:
        """Return the definitions of ``words`` from the bindings of the first of them."""
        called = words[0].endswith("()") if words else False
        found: list[Definition] = []
        for one in bound:
            if (one.way == "method") != called:
                continue
            if one.way == "type" and one.value is not None:
                found += self._members(one, one.value, words[1:], path)
            elif len(words) > 1:
                found += self._below(one, words[1:], path)
            elif one.way != "declared":
                found.append(Definition(path, self._value(one), span_of(one.name)))
        return found

    def _members(self, binding: Binding, node: Node, words: Path, path: Path) -> list[Definition]:
        """Return the definitions of a type's member, or where it is inherited from."""
        span = span_of(binding.name)
        if not words:
            what = "an object" if node.type == "object_declaration" else "a type"
            return [Definition(path, Unknown(f"it is {what}, not text", span), span)]
        companion = child_of(body_of(node), "companion_object")
        owners = {node.id} | ({companion.id} if companion is not None else set())
        if companion is not None and words[0] == "Companion" and len(words) > 1:
            words = words[1:]
        bound = [one for one in self._named(words[:1]) if one.owner in owners]
        found = self._valued(bound, words, path)
        if found or bound:
            return found
        inherited = [
            attempt
            for base in base_types(self.source, node)
            for attempt in tries(binding.within, (*base, *words))
        ]
        if not inherited:
            return []
        return [Definition(path, Ref(tuple(inherited), span), span, inherited=True)]

    def _value(self, binding: Binding) -> Expression:
        span = span_of(binding.name)
        value = binding.value
        if binding.way == "each" and value is not None:
            return Each(expression(self.source, binding.within, value), span)
        if binding.way == "constant":
            return Unknown("an enum entry is not text itself", span)
        if binding.way == "alias":
            return Unknown("it is a type, not text", span)
        if binding.way == "method" and value is not None:
            return self._returned(binding, value)
        if binding.way in {"parameter", "unknown"} or value is None:
            return Unknown(binding.why or RUN_TIME, span)
        return expression(self.source, binding.within, value)

    def _below(self, binding: Binding, rest: Path, path: Path) -> list[Definition]:
        """Return a member of an enum entry or of an object that is made here or declared."""
        span = span_of(binding.name)
        made = self._made(binding)
        if made is not None:
            return [Definition(path, made.member(rest), span)]
        words = type_words(self.source, binding.declared)
        if words is None and binding.way == "alias":
            words = type_words(self.source, binding.value)
        if words is None and binding.value is not None:
            value = opened(binding.value)
            named = called_of(value) if value.type == "call_expression" else value
            words = dotted(self.source, named)
        if words is None:
            return [Definition(path, Unknown(RUN_TIME, span), span)]
        return [Definition(path, Ref(tries(binding.within, (*words, *rest)), span), span)]

    def _made(self, binding: Binding) -> Made | None:
        """Return the object that a name holds, where its class stands in this file."""
        if binding.way == "constant":
            entry = binding.value
            if entry is None or binding.within.node.type != "class_declaration":
                return None
            return made_of(self, entry, binding.within.node, binding.within)
        if binding.way != "value" or binding.value is None:
            return None
        value = opened(binding.value)
        words = dotted(self.source, called_of(value)) if value.type == "call_expression" else None
        for attempt in tries(binding.within, words) if words is not None else ():
            bound = self.bound_at(attempt)
            if bound:
                one = bound[0]
                is_class = one.way == "type" and one.value is not None and len(bound) == 1
                known = one.value if is_class else None
                return made_of(self, value, known, binding.within) if known is not None else None
        return None

    def _returned(self, binding: Binding, function: Node) -> Expression:
        """Return what a function always gives, if nothing can override it."""
        value = returned(function)
        parameters = child_of(function, "function_value_parameters")
        given = elements(parameters) if parameters is not None else []
        scope = binding.within
        owner = scope.outer
        overridden = (
            owner is not None
            and owner.sort == "type"
            and may_be_overridden(self.source, function, owner)
        )
        if value is None or given or overridden:
            called = self.source.text(binding.name)
            return Unknown(f"it is made at run time by `{called}()`", span_of(binding.name))
        return expression(self.source, scope, value)


def _owned_at(binding: Binding, start: int) -> bool:
    """Whether the binding belongs to the region that starts at this byte."""
    scope: Scope | None = binding.within
    while scope is not None:
        if scope.node.id == binding.owner:
            return scope.node.start_byte == start and scope.sort != "type"
        scope = scope.outer
    return False
