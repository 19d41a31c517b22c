"""What a path of a C++ file stands for."""

from __future__ import annotations

from itertools import combinations

from tree_sitter import Node

from namegen.languages.cpp.bindings import Binding, bindings_of
from namegen.languages.cpp.expressions import expression
from namegen.languages.cpp.names import base_types, type_words
from namegen.languages.cpp.openings import openings, tries
from namegen.languages.cpp.scopes import Scope
from namegen.languages.definitions import DefinitionFinder, reason
from namegen.languages.sources import Source, elements, span_of
from namegen.model.facts import Definition, Each, Expression, Path, Ref, Several, Unknown
from namegen.model.places import Span

_EXACT = "="
"""Begins a path of which nothing more is to be opened: two namespaces may open each other."""
_LISTS = frozenset({"initializer_list", "argument_list"})


class Definitions(DefinitionFinder[Binding]):
    """Finds the definitions of a file on demand, and remembers what was asked."""

    def _bindings_of(self, word: str) -> list[Binding]:
        return bindings_of(self.source, word)

    def find(self, path: Path) -> list[Definition]:
        """Return every binding of a path."""
        if not path:
            return []
        if path[0] == _EXACT:
            return self._found(path[1:]) or self._inherited(path[1:])
        return self._found(path) or self._opened(path) or self._inherited(path)

    def _found(self, path: Path) -> list[Definition]:
        """Return what is bound under just this path; nothing where it is only declared."""
        bound = [one for one in self.bound_at(path) if one.way != "declared"]
        bound = [one for one in bound if one.way != "empty"] or bound
        found = [Definition(path, self._value(one), span_of(one.name)) for one in bound]
        return _of_branches(found, bound)

    def bound_at(self, path: Path) -> list[Binding]:
        """Return the bindings of a path as it is written out: ("@120", "name")."""
        word = path[-1].removesuffix("()")
        return [one for one in self.bindings(word) if one.path == path]

    def _opened(self, path: Path) -> list[Definition]:
        """Return what a path stands for through ``using``, for a file that includes this one."""
        known = openings(self.source) if path[0][:1] != "@" else {}
        found: list[Path] = []
        for place in range(len(path)):
            opened = known.get(path[:place], ())
            if opened and all(one.target[0] != path[place] for one in opened):
                root = self.source.root
                scope = Scope("namespace", root, Scope("file", root), path[:place])
                mine = tries(self.source, scope, path[place:])
                found += [(_EXACT, *one) for one in mine if one != path]
        span = Span(0, 0)
        return [Definition(path, Ref(tuple(found), span), span, inherited=True)] if found else []

    def _inherited(self, path: Path) -> list[Definition]:
        """Return the definitions of a member that a base class or a variable's type may have."""
        for place in range(len(path) - 1, 0, -1):
            for one in self.bound_at(path[:place]):
                found = self._member_of(one, path, path[place:])
                if found is not None:
                    return [found]
        return []

    def _member_of(self, one: Binding, path: Path, after: Path) -> Definition | None:
        """Return the definition of a path below a class or a variable, if that may have it."""
        span, words = span_of(one.name), type_words(self.source, one.declared)
        types = [words] if words else []
        if one.way == "class" and one.value is not None:
            types = base_types(self.source, one.value)
        found = [
            attempt
            for words in types
            for attempt in tries(self.source, one.within, (*words, *after))
        ]
        if found:
            return Definition(path, Ref(tuple(found), span), span, inherited=one.way == "class")
        if one.way in {"class", "namespace", "function"}:
            return None
        return Definition(path, Unknown("it is made at run time", span), span)

    def _value(self, binding: Binding) -> Expression:  # noqa: PLR0911 - one per form
        span = span_of(binding.name)
        if binding.way == "each" and binding.value is not None:
            return Each(expression(self.source, binding.within, binding.value), span)
        if binding.way == "class":
            return Unknown("it is a type, not text", span)
        if binding.way == "namespace":
            return Unknown("it is a namespace, not text", span)
        if binding.way == "function" and binding.value is not None:
            return self._returned(binding, binding.value)
        if binding.value is None or binding.way == "enumerator":
            return reason(binding)
        value = binding.value
        if value.type in _LISTS and not binding.many:
            return Unknown("it is put together from several values", span)
        return expression(self.source, binding.within, value)

    def _returned(self, binding: Binding, function: Node) -> Expression:
        """Return what a function always gives, if nothing can override it."""
        value = _only_return(function)
        if value is None or _is_virtual(self.source, function):
            called = self.source.text(binding.name)
            return Unknown(f"it is made at run time by `{called}()`", span_of(binding.name))
        within = Scope("region", function, binding.within)
        if binding.path[: len(binding.within.path)] == binding.within.path:
            classes = binding.path[len(binding.within.path) : -1]
            within = Scope("type", function, binding.within, classes) if classes else within
        return expression(self.source, within, value)


def _of_branches(found: list[Definition], bound: list[Binding]) -> list[Definition]:
    """Return what branches of ``#if`` define as one that may be any of them."""
    apart = all(_exclude(one, other) for one, other in combinations(bound, 2))
    if len(found) < 2 or not apart:
        return found
    first = found[0]
    values = tuple(one.value for one in found)
    return [Definition(first.path, Several(values, first.span), first.span)]


def _exclude(one: Binding, other: Binding) -> bool:
    """Whether two places stand in different branches of one condition of the preprocessor."""
    mine, others = dict(one.branch), dict(other.branch)
    return any(mine[at] != others[at] for at in mine.keys() & others.keys())


def _only_return(function: Node) -> Node | None:
    """Return the value of a function whose body is one ``return``."""
    body = function.child_by_field_name("body")
    statements = elements(body) if body is not None else []
    if len(statements) != 1 or statements[0].type != "return_statement":
        return None
    return next(iter(elements(statements[0])), None)


def _is_virtual(source: Source, function: Node) -> bool:
    """Whether a derived class can give the function another body."""
    body = function.child_by_field_name("body")
    end = body.start_byte if body is not None else function.end_byte
    words = source.data[function.start_byte : end].replace(b")", b" ").split()
    return bool({b"virtual", b"override"} & {*words})
