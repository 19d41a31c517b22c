"""What a dotted path of a Python file stands for."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace
from tree_sitter import Node

from namegen.languages.definitions import DefinitionFinder, reason
from namegen.languages.expressions import RUN_TIME
from namegen.languages.python.binding import Binding
from namegen.languages.python.bindings import bindings_of
from namegen.languages.python.chains import chain
from namegen.languages.python.expressions import TAKEN, dotted, expression, is_wrapper
from namegen.languages.python.following import Following
from namegen.languages.python.instances import GIVEN, Given, Maker
from namegen.languages.python.scopes import Scope, scope_at, tries
from namegen.languages.python.tables import TABLES, taken
from namegen.languages.sources import Source, elements, span_of
from namegen.model.facts import MADE, Definition, Each, Expression, Path, Ref, Unknown, Wrapper
from namegen.model.places import Span


class Definitions(DefinitionFinder[Binding]):
    """Finds the definitions of a file on demand, and remembers what was asked."""

    def __init__(self, source: Source) -> None:
        super().__init__(source)
        self._following = Following(source)

    def _bindings_of(self, word: str) -> list[Binding]:
        return bindings_of(self.source, word, self._following)

    def find(self, path: Path) -> list[Definition]:
        """Return every binding of a path."""
        where = -1
        if path and path[0].startswith("@"):
            where, path = int(path[0][1:]), path[1:]
        if not path:
            return []
        bound = [
            binding
            for binding in self.bindings(path[0])
            if not binding.attribute and _start(binding.scope) == where
        ]
        found = self._valued(bound, path)
        if not found and path == ("str",) and where < 0 and not bound:
            return [Definition(path, Wrapper(Span(0, 0)), Span(0, 0))]
        return found

    def bound_at(self, path: Path) -> list[Binding]:
        """Return the bindings of a word in a function, a class or the module."""
        return [one for one in self.bindings(path[-1]) if one.scope.path == path[:-1]]

    def _valued(self, bound: list[Binding], path: Path) -> list[Definition]:
        """Return definitions of ``path`` from the bindings of its first word."""
        assigned = [binding for binding in bound if binding.way not in {"import", "declared"}]
        if not assigned:
            return []
        found: list[Definition] = []
        for binding in bound:
            if binding.way == "declared":
                continue
            if binding.way == "class" and len(path) > 1:
                found += self._members(self._class_scope(binding), path[1:], path)
            else:
                found.append(
                    Definition(path, self._value(binding, path[1:]), span_of(binding.name))
                )
        return found

    def _class_scope(self, binding: Binding) -> Scope:
        assert binding.value is not None
        return scope_at(self.source, binding.scope, binding.value)

    def _members(self, owner: Scope, words: Path, path: Path) -> list[Definition]:
        """Return the definitions of a class's member, or where it is inherited from."""
        made = words[:1] if words[0] == MADE else ()
        words = words[len(made) :]
        if made and (not words or self._maker(owner).taken(words[0]) != "own"):
            return [Definition(path, Unknown(GIVEN, span_of(owner.node)), span_of(owner.node))]
        bases = self._bases(owner)
        enum = any(base[-1].endswith(("Enum", "Flag")) for base in bases)
        if words[0].startswith("["):
            if not enum:
                return [Definition(path, Unknown(TAKEN, span_of(owner.node)), span_of(owner.node))]
            words = (words[0][2:-2], *words[1:])  # a member by its name
        bound = [
            binding for binding in self.bindings(words[0]) if binding.scope.node.id == owner.node.id
        ]
        if enum and bound:
            return self._enum_member(bound, words, path, bases)
        if bound:
            found = self._valued(bound, words)
            return [Definition(path, one.value, one.span) for one in found]
        inherited = [
            attempt
            for base in bases
            for attempt in tries(self.source, owner.outer or owner, (*base, *made, *words))
        ]
        if not inherited:
            return []
        span = span_of(owner.node)
        return [Definition(path, Ref(tuple(inherited), span), span, inherited=True)]

    def _enum_member(
        self, bound: list[Binding], words: Path, path: Path, bases: list[Path]
    ) -> list[Definition]:
        """Return the text of ``Names.BOW.value``, or of the member itself in a text enum."""
        textual = any(base[-1] in {"str", "StrEnum"} for base in bases)
        if words[1:] == ("value",) or (not words[1:] and textual):
            found = self._valued(bound, words[:1])
            return [Definition(path, one.value, one.span) for one in found]
        span = span_of(bound[0].name)
        why = "an enum member is not text itself; its `.value` is"
        return [Definition(path, Unknown(why, span), span)]

    def _bases(self, owner: Scope) -> list[Path]:
        superclasses = owner.node.child_by_field_name("superclasses")
        if superclasses is None:
            return []
        bases = (dotted(self.source, base) for base in elements(superclasses))
        return [base for base in bases if base is not None]

    def _value(self, binding: Binding, rest: Path) -> Expression:
        """Return what a binding gives, or what ``rest`` below that stands for."""
        source, value = self.source, binding.value
        span = span_of(binding.name)
        if binding.way == "class" and value is not None:
            bases = self._bases(scope_at(source, binding.scope, value))
            return Wrapper(span) if ("str",) in bases else Unknown(binding.why, span)
        if value is None:
            return reason(binding)
        if binding.way == "each":
            unknown = Unknown(RUN_TIME, span)
            return unknown if rest else Each(self._run_over(binding, value), span)
        if rest:
            return self._below(binding, value, rest, span)
        if is_wrapper(source, value):
            return Wrapper(span)
        return expression(source, binding.within, value)

    def _run_over(self, binding: Binding, value: Node) -> Expression:
        """Return what a loop runs over, or the part of it that the name gets."""
        if binding.part is None:
            return expression(self.source, binding.within, value)
        return taken(self.source, binding.within, value, (binding.part,))

    def _below(self, binding: Binding, value: Node, rest: Path, span: Span) -> Expression:
        """Return ``rest`` of a table, of another name, or of an object: ``names = Names()``."""
        if value.type in TABLES:
            return taken(self.source, binding.within, value, rest)
        if value.type == "call":
            return self._of_object(binding, value, rest)
        words = chain(self.source, value)
        if words is None:
            return Unknown(RUN_TIME, span)
        return Ref(tries(self.source, binding.within, (*words, *rest)), span)

    def _of_object(self, binding: Binding, call: Node, rest: Path) -> Expression:
        """Return ``rest`` of what a call makes: of an object, if it calls a class."""
        function, span = call.child_by_field_name("function"), span_of(binding.name)
        words = chain(self.source, function)
        if words is None or function is None:
            return Unknown(RUN_TIME, span)
        listed = call.child_by_field_name("arguments")
        made = (MADE,) if listed is not None and elements(listed) else ()
        owner = self._class_meant(tries(self.source, binding.within, words))
        if owner is not None and rest[0] != MADE:
            maker = self._maker(owner)
            given = maker.given(call, binding.within, rest[0])
            if isinstance(given, Given):
                filled = replace(binding, value=given.value, within=given.within)
                return self._value(filled, rest[1:])
            if given == "unsure":
                return Unknown(GIVEN, span)
            made = (MADE,) if maker.init() is not None else made
        return Ref(tries(self.source, binding.within, (*words, *made, *rest)), span)

    def _class_meant(self, attempts: Sequence[Path]) -> Scope | None:
        """Return the class of this file that a name means, if nothing else bears the name."""
        bound = next(filter(None, map(self.bound_at, attempts)), [])
        is_class = len(bound) == 1 and bound[0].way == "class"
        return self._class_scope(bound[0]) if is_class else None

    def _maker(self, owner: Scope) -> Maker:
        return Maker(self.source, owner, self.bindings)


def _start(scope: Scope) -> int:
    """Return what ``@`` words of this scope hold: its byte, or -1 for the module."""
    return -1 if scope.sort == "module" else scope.node.start_byte
