"""Objects that Kotlin code makes where one can read with what: enum entries, calls of a class."""

from __future__ import annotations

from typing import Protocol

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.expressions import RUN_TIME
from namegen.languages.kotlin.bindings import returned
from namegen.languages.kotlin.expressions import dotted, expression
from namegen.languages.kotlin.trees import (
    after_sign,
    argument_value,
    arguments_of,
    body_of,
    child_of,
    key_of,
    modifiers_of,
)
from namegen.languages.owned_bindings import Binding
from namegen.languages.scopes import Scope
from namegen.languages.sources import Source, elements, span_of
from namegen.model.facts import Expression, Path, Unknown


class Bindings(Protocol):
    """What finds the bindings of a file."""

    source: Source

    def bindings(self, word: str) -> list[Binding]:
        """Return every binding of a word in the file."""


class Instance(Struct, frozen=True):
    """An object: the call or enum entry that makes it in ``within``, and its class."""

    of_file: Bindings
    made_by: Node
    owner: Node
    within: Scope

    def member(self, rest: Path) -> Expression:
        """Return what ``BOW.id`` or ``BOW.title()`` gives."""
        unknown = Unknown(RUN_TIME, span_of(self.made_by))
        word = rest[0]
        if len(rest) != 1:
            return unknown
        if word.endswith("()"):
            inner = self._returned_name(word)
            if inner is None:
                return unknown
            word = inner
        bound = self._members(word)
        if len(bound) != 1 or bound[0].way not in {"value", "parameter"}:
            return unknown
        return self._value(bound[0]) or unknown

    def _value(self, binding: Binding) -> Expression | None:
        source = self.of_file.source
        if binding.way == "value" and binding.value is not None:
            words = dotted(source, binding.value)
            filled = self._members(words[-1]) if words and len(words) == 1 else []
            if len(filled) != 1 or filled[0].way != "parameter":
                return expression(source, binding.within, binding.value)
            binding = filled[0]
        given = self._arguments()
        if given is None:
            return None
        value = given.get(source.text(binding.name))
        if value is not None:
            return expression(source, self.within, value)
        default = binding.value
        return expression(source, binding.within, default) if default is not None else None

    def _members(self, word: str) -> list[Binding]:
        wants = word.endswith("()")
        return [
            one
            for one in self.of_file.bindings(word.removesuffix("()"))
            if one.owner == self.owner.id and (one.way == "method") == wants
        ]

    def _arguments(self) -> dict[str, Node] | None:
        """Return what the parameters of the constructor are given; None if it may be another."""
        parameters = _parameters_alone(self.of_file.source, self.owner)
        if parameters is None:
            return None
        source, names = self.of_file.source, list(parameters)
        listed = arguments_of(self.made_by)
        given = elements(listed) if listed is not None else []
        if len(given) > len(names):
            return None
        found: dict[str, Node | None] = {}
        for place, one in enumerate(given):
            key = key_of(one)
            found[source.text(key) if key is not None else names[place]] = argument_value(one)
        needed = {name for name, has_default in parameters.items() if not has_default}
        fits = len(found) == len(given) and needed <= found.keys() <= parameters.keys()
        return {name: value for name, value in found.items() if value} if fits else None

    def _returned_name(self, word: str) -> str | None:
        methods = self._members(word)
        value = returned(methods[0].value) if len(methods) == 1 and methods[0].value else None
        words = dotted(self.of_file.source, value)
        return words[-1] if words and (len(words) == 1 or words[0] == "this") else None


def _parameters_alone(source: Source, owner: Node) -> dict[str, bool] | None:
    """Return the parameters of the one way to make objects of a class, and which have a default.

    None where there are others: a second constructor, ``operator fun invoke`` of the companion,
    or a ``vararg``, which takes any number.
    """
    body = body_of(owner)
    companion = child_of(body, "companion_object")
    invokes = (source.text(name) for one in _members(companion) if (name := _name(one)))
    others = any(one.type == "secondary_constructor" for one in _members(owner))
    if others or "invoke" in invokes:
        return None
    listed = child_of(child_of(owner, "primary_constructor"), "class_parameters")
    found: dict[str, bool] = {}
    for one in elements(listed) if listed is not None else ():
        name = child_of(one, "identifier")
        if name is None or "vararg" in modifiers_of(source, one):
            return None
        found[source.text(name)] = after_sign(one, "=") is not None
    return found


def instance_of(of_file: Bindings, made_by: Node, owner: Node, within: Scope) -> Instance | None:
    """Return the object that a call or an enum entry makes, unless it has a body of its own."""
    if child_of(made_by, "class_body") is not None or owner.type != "class_declaration":
        return None
    return Instance(of_file, made_by, owner, within)


def _members(declaration: Node | None) -> list[Node]:
    body = body_of(declaration) if declaration is not None else None
    return elements(body) if body is not None else []


def _name(declaration: Node) -> Node | None:
    return declaration.child_by_field_name("name")
