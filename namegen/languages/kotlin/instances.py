"""Objects that Kotlin code makes where one can read with what: enum entries, calls of a class."""

from __future__ import annotations

import re
from typing import Protocol

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.expressions import RUN_TIME
from namegen.languages.kotlin.constructors import Constructor, Constructors
from namegen.languages.kotlin.declarations import returned
from namegen.languages.kotlin.expressions import dotted, expression
from namegen.languages.kotlin.trees import child_of
from namegen.languages.owned_names import Binding
from namegen.languages.scopes import Scope
from namegen.languages.sources import Source, span_of
from namegen.model.facts import Expression, Path, Unknown

_WORD = re.compile(r"[^\W\d]\w*")


class Members(Protocol):
    """What finds the members of a file's types."""

    source: Source
    constructors: Constructors

    def members_named(self, owner: int, word: str) -> list[Binding]:
        """Return the bindings of a member of a type: with brackets, of a method."""


class Instance(Struct, frozen=True):
    """An object: the call or enum entry that makes it in ``within``, and its class."""

    of_file: Members
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
        return self._given(source.text(binding.name), binding)

    def _given(self, word: str, binding: Binding) -> Expression | None:
        """Return what the constructor in the head of the class gets for a parameter."""
        source = self.of_file.source
        way, given = self._fitting(self.made_by)
        value, within = given.get(word), self.within
        if way is not None and way.delegates is not None:
            first, passed = self._fitting(way.delegates)
            way, value = first, passed.get(word)
            words = set(_WORD.findall(source.text(value))) if value is not None else set()
            if value is not None and source.text(value) in given:
                value = given[source.text(value)]
            elif words & given.keys():
                return None
            else:
                within = binding.within
        if way is None or way.node.id != self.owner.id:
            return None
        if value is None:
            value, within = binding.value, binding.within
        return expression(source, within, value) if value is not None else None

    def _fitting(self, call: Node) -> tuple[Constructor | None, dict[str, Node]]:
        """Return the one constructor that a call fits, and what it gives to its parameters."""
        source = self.of_file.source
        tried = (
            (one, one.filled(source, call)) for one in self.of_file.constructors.of(self.owner)
        )
        found = [(one, given) for one, given in tried if given is not None]
        return found[0] if len(found) == 1 else (None, {})

    def _members(self, word: str) -> list[Binding]:
        return self.of_file.members_named(self.owner.id, word)

    def _returned_name(self, word: str) -> str | None:
        methods = self._members(word)
        value = returned(methods[0].value) if len(methods) == 1 and methods[0].value else None
        words = dotted(self.of_file.source, value)
        return words[-1] if words and (len(words) == 1 or words[0] == "this") else None


def instance_of(of_file: Members, made_by: Node, owner: Node, within: Scope) -> Instance | None:
    """Return the object that a call or an enum entry makes, unless it has a body of its own."""
    if child_of(made_by, "class_body") is not None or owner.type != "class_declaration":
        return None
    return Instance(of_file, made_by, owner, within)
