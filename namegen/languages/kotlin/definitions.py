"""What a dotted path of a Kotlin file stands for."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.expressions import RUN_TIME
from namegen.languages.kotlin.bindings import Binding, bindings_of, may_be_overridden, returned
from namegen.languages.kotlin.expressions import dotted, expression, opened
from namegen.languages.kotlin.instances import Made, made_of
from namegen.languages.kotlin.scopes import tries
from namegen.languages.kotlin.trees import body_of, called_of, child_of
from namegen.languages.kotlin.types import base_types, type_words
from namegen.languages.members import MemberFinder
from namegen.languages.sources import elements, span_of
from namegen.model.facts import Definition, Each, Expression, Path, Ref, Unknown


class Definitions(MemberFinder[Binding]):
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
            return self._in_region(path)
        owner = self.source.root.id
        for word in path[:-1]:
            types = [one for one in self.bindings(word) if one.way == "type" and one.owner == owner]
            if len(types) != 1 or types[0].value is None:
                return []
            owner = types[0].value.id
        return [one for one in self._named(path[-1:]) if one.owner == owner]

    def _owners(self, node: Node, words: Path) -> tuple[set[int], Path]:
        companion = child_of(body_of(node), "companion_object")
        if companion is None:
            return {node.id}, words
        called = words[0] == "Companion" and len(words) > 1
        return {node.id, companion.id}, words[1:] if called else words

    def _sort(self, node: Node) -> str:
        return "an object" if node.type == "object_declaration" else "a type"

    def _bases(self, binding: Binding, node: Node, words: Path) -> list[Path]:
        return [
            attempt
            for base in base_types(self.source, node)
            for attempt in tries(binding.within, (*base, *words))
        ]

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
