"""Objects that Kotlin code makes where one can read with what: enum entries, calls of a class."""

from __future__ import annotations

from typing import Protocol

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.expressions import RUN_TIME
from namegen.languages.kotlin.bindings import Binding, returned
from namegen.languages.kotlin.expressions import dotted, expression
from namegen.languages.kotlin.trees import (
    argument_value,
    arguments_of,
    child_of,
    key_of,
)
from namegen.languages.scopes import Scope
from namegen.languages.sources import Source, elements, span_of
from namegen.model.facts import Expression, Path, Unknown


class Finder(Protocol):
    """What finds the bindings of a file."""

    source: Source

    def bindings(self, word: str) -> list[Binding]:
        """Return every binding of a word in the file."""


class Made(Struct, frozen=True):
    """An object: what it is given, worked out in ``within``, and its class."""

    finder: Finder
    made: Node
    owner: Node
    within: Scope

    def member(self, rest: Path) -> Expression:
        """Return what ``BOW.id`` or ``BOW.title()`` gives."""
        unknown = Unknown(RUN_TIME, span_of(self.made))
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
        source = self.finder.source
        if binding.way == "value" and binding.value is not None:
            words = dotted(source, binding.value)
            filled = self._members(words[-1]) if words and len(words) == 1 else []
            if len(filled) != 1 or filled[0].way != "parameter":
                return expression(source, binding.within, binding.value)
            binding = filled[0]
        given = self._given(source.text(binding.name))
        if given is not None:
            return expression(source, self.within, given)
        if binding.value is None:
            return None
        return expression(source, binding.within, binding.value)

    def _members(self, word: str) -> list[Binding]:
        wants = word.endswith("()")
        return [
            one
            for one in self.finder.bindings(word.removesuffix("()"))
            if one.owner == self.owner.id and (one.way == "method") == wants
        ]

    def _given(self, parameter: str) -> Node | None:
        """Return the argument that fills a parameter of the constructor."""
        source = self.finder.source
        listed = child_of(child_of(self.owner, "primary_constructor"), "class_parameters")
        names = [
            source.text(name)
            for one in (elements(listed) if listed is not None else ())
            if (name := child_of(one, "identifier")) is not None
        ]
        given = arguments_of(self.made)
        for place, one in enumerate(elements(given) if given is not None else ()):
            key = key_of(one)
            by_key = key is not None and source.text(key) == parameter
            by_place = key is None and names[place : place + 1] == [parameter]
            if by_key or by_place:
                return argument_value(one)
        return None

    def _returned_name(self, word: str) -> str | None:
        methods = self._members(word)
        value = returned(methods[0].value) if len(methods) == 1 and methods[0].value else None
        words = dotted(self.finder.source, value)
        return words[-1] if words and (len(words) == 1 or words[0] == "this") else None


def made_of(finder: Finder, made: Node, owner: Node, within: Scope) -> Made | None:
    """Return the object that a call or an enum entry makes, unless it has a body of its own."""
    if child_of(made, "class_body") is not None or owner.type != "class_declaration":
        return None
    return Made(finder, made, owner, within)
