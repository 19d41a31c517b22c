"""What a dotted path of a Java file stands for."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.definitions import reason
from namegen.languages.java.altering import JavaAlterations
from namegen.languages.java.bindings import bindings_of
from namegen.languages.java.expressions import dotted, expression
from namegen.languages.java.scopes import scope_of, tries
from namegen.languages.java.types import base_types, modifiers_of, type_words
from namegen.languages.members import MemberFinder
from namegen.languages.owned_bindings import Binding
from namegen.languages.scopes import Scope
from namegen.languages.sources import Source, Stack, elements, same, span_of
from namegen.model.facts import Definition, Each, Expression, Path, Ref, Unknown

_CONSTRUCTOR = "constructor_declaration"


class Definitions(MemberFinder):
    """Finds the definitions of a file on demand, and remembers what was asked."""

    ANONYMOUS = "object_creation_expression"

    def __init__(self, source: Source) -> None:
        super().__init__(source)
        self._alterations = JavaAlterations(source)

    def _bindings_of(self, word: str) -> list[Binding]:
        return bindings_of(self._alterations, word)

    def _sought(self, path: Path) -> list[Definition]:
        if path[0].startswith("@"):
            return self._valued(self._in_region(path), path[1:], path) or self._of_anonymous(path)
        root = self.owned(path[0].removesuffix("()"), self.source.root.id)
        bound = [one for one in root if one.way == "type"]
        return self._valued(bound, path, path)

    def bound_at(self, path: Path) -> list[Binding]:
        """Return the bindings of a word inside the method or block at a byte: ("@120", "name")."""
        is_local = len(path) == 2 and path[0].startswith("@")
        return self._in_region(path) if is_local else []

    def _base_types(self, node: Node) -> list[Path]:
        return base_types(self.source, node)

    def _tries(self, scope: Scope, words: Path) -> tuple[Path, ...]:
        return tries(scope, words)

    def _scope(self, stack: Stack) -> Scope:
        return scope_of(self.source, stack)

    def _value(self, binding: Binding) -> Expression:
        span = span_of(binding.name)
        if binding.way == "each" and binding.value is not None:
            return Each(expression(self.source, binding.within, binding.value), span)
        if binding.way == "constant":
            return Unknown("an enum constant is not text itself", span)
        if binding.way == "method" and binding.value is not None:
            return self._returned(binding, binding.value)
        if binding.value is None:
            return reason(binding)
        return expression(self.source, binding.within, binding.value)

    def _below(self, binding: Binding, rest: Path, path: Path) -> list[Definition]:
        """Return a member of an enum constant or of an object of a declared type."""
        span = span_of(binding.name)
        if binding.way == "constant" and binding.value is not None:
            value = self._of_constant(binding, binding.value, rest)
            return [Definition(path, value, span)]
        words = type_words(self.source, binding.declared)
        if words is None and binding.value is not None:
            words = dotted(self.source, binding.value)
        if words is None:
            return [Definition(path, Unknown("it is made at run time", span), span)]
        return [Definition(path, Ref(tries(binding.within, (*words, *rest)), span), span)]

    def _of_constant(self, constant: Binding, node: Node, rest: Path) -> Expression:
        """Return what ``BOW.id`` or ``BOW.getId()`` gives: an argument of the constant."""
        span = span_of(node)
        unknown = Unknown("it is made at run time", span)
        if len(rest) != 1 or node.child_by_field_name("body") is not None:
            return unknown
        word = rest[0]
        if word.endswith("()"):
            methods = self.members_named(constant.owner, word)
            returned = self._returned_name(methods[0]) if len(methods) == 1 else None
            if returned is None:
                return unknown
            word = returned
        given = node.child_by_field_name("arguments")
        arguments = elements(given) if given is not None else []
        bound = [
            one
            for one in self.members_named(constant.owner, word)
            if one.way in {"value", "assigned", "unknown"}
        ]
        if len(bound) != 1 or bound[0].value is None:
            return unknown
        if bound[0].way == "value":
            return expression(self.source, bound[0].within, bound[0].value)
        place = self._parameter_place(bound[0], len(arguments))
        if place is None:
            return unknown
        return expression(self.source, constant.within, arguments[place])

    def _parameter_place(self, assigned: Binding, count: int) -> int | None:
        """Return which parameter of its constructor a field is filled with."""
        constructor = next(
            (one.node for one in assigned.within.enclosing if one.node.type == _CONSTRUCTOR), None
        )
        if constructor is None or assigned.value is None or assigned.value.type != "identifier":
            return None
        parameters = constructor.child_by_field_name("parameters")
        names = [_name(one) for one in elements(parameters)] if parameters is not None else []
        word = self.source.text(assigned.value)
        filled = self.owned(word, constructor.id)
        if len(names) != count or [one.way for one in filled] != ["parameter"]:
            return None
        return next((at for at, one in enumerate(names) if same(one, filled[0].name)), None)

    def _returned(self, binding: Binding, method: Node) -> Expression:
        """Return what a method always gives, if nothing can override it."""
        value = _only_return(method)
        if value is None or not _is_final(self.source, method, binding):
            called = self.source.text(binding.name)
            return Unknown(f"it is made at run time by `{called}()`", span_of(binding.name))
        return expression(self.source, binding.within, value)

    def _returned_name(self, binding: Binding) -> str | None:
        value = _only_return(binding.value) if binding.value is not None else None
        words = dotted(self.source, value)
        return words[-1] if words and (len(words) == 1 or words[0] == "this") else None


def _name(parameter: Node) -> Node | None:
    return parameter.child_by_field_name("name")


def _only_return(method: Node) -> Node | None:
    """Return the value of a method without parameters whose body is one ``return``."""
    body, parameters = method.child_by_field_name("body"), method.child_by_field_name("parameters")
    if body is None or parameters is None or elements(parameters):
        return None
    statements = elements(body)
    if len(statements) != 1 or statements[0].type != "return_statement":
        return None
    return next(iter(elements(statements[0])), None)


def _is_final(source: Source, method: Node, binding: Binding) -> bool:
    """Whether no subclass can give the method another body."""
    owner = binding.within.type
    if modifiers_of(source, method) & {"final", "static", "private"} or owner is None:
        return True
    closed = owner.node.type in {"enum_declaration", "record_declaration"}
    return closed or "final" in modifiers_of(source, owner.node)
