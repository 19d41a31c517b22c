"""What becomes of a Python list under the other names that it is handed on to in a file."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterable, Iterator
from functools import cached_property
from typing import NamedTuple

from tree_sitter import Node

from namegen.languages.python.altering import Handed, Sort, Tie, changed_at, handed_on
from namegen.languages.python.scopes import Scope, scope_at, scope_of
from namegen.languages.python.signatures import Taken, constructor, places_of, signature
from namegen.languages.sources import Source, Stack, occurrences, same, span_of
from namegen.model.places import Span

_BORROWING = frozenset({"global_statement", "nonlocal_statement"})
_DEFINED = re.compile(rb"\b(?:def|class)[ \t]+([\w\x80-\xff]+)")


class _Name(NamedTuple):
    """A name within the stretch where it is the same, with its tie to the list."""

    word: str
    sort: Sort
    reach: Span
    tie: Tie


class Following:
    """Follows lists through the names of one file. Each name is looked at once for each tie."""

    def __init__(self, source: Source) -> None:
        self._source = source
        self._depths: dict[_Name, int] = {}
        """Of names that were followed to the end: at what depth they change the list."""
        self._seen: dict[_Name, tuple[int, list[_Name]]] = {}
        self._functions: dict[str, list[tuple[Node, list[Taken]]]] = {}
        self._filled: dict[tuple[str, int | None, str | None, Tie, Tie], list[_Name]] = {}
        self._places: dict[int, dict[int, int]] = {}
        self._values: dict[int, int] = {}

    def depth(self, handed: Iterable[Handed]) -> int:
        """Return the least depth at which a list is changed by those that get it; else 0."""
        came: dict[_Name, _Name | None] = dict.fromkeys(self._names(handed, Tie()))
        pending, least = list(came), 0
        for name in pending:
            depth, onward = self._depths.get(name), list[_Name]()
            if depth is None:
                depth, onward = self._looked_at(name)
            if depth:
                least = min(least or depth, depth)
                self._note(name, depth, came)
            if least == 1:
                return least
            for one in onward:
                if one not in came:
                    came[one] = name
                    pending.append(one)
        if not least:
            self._depths.update(dict.fromkeys(came, 0))
        return least

    def depth_of(self, value: Node, handed: Iterable[Handed]) -> int:
        """Return the same for what several names get at once, asked for by a node of its own."""
        if value.id not in self._values:
            self._values[value.id] = self.depth(handed)
        return self._values[value.id]

    def defines(self, name: str) -> bool:
        """Whether the file has a function or class of a name, of which the last word counts."""
        return name.rpartition(".")[2].encode() in self._defined

    def _note(self, name: _Name | None, depth: int, came: dict[_Name, _Name | None]) -> None:
        """Remember that all names on the way to a change lead to it."""
        while name is not None:
            self._depths[name] = min(self._depths.get(name, depth) or depth, depth)
            name = came[name]

    def _looked_at(self, name: _Name) -> tuple[int, list[_Name]]:
        """Return at what depth the uses of a name change the list, and who gets it from them."""
        if name not in self._seen:
            least, onward = 0, list[_Name]()
            for stack in self._uses(name):
                if stack[-1].type != "attribute" and stack[-2].type in _BORROWING:
                    onward.append(name._replace(reach=Span(0, len(self._source.data))))
                    continue
                for depth in map(name.tie.depth, changed_at(self._source, stack)):
                    least = min(least or depth, depth) if depth else least
                onward += self._names(handed_on(self._source, stack), name.tie)
            self._seen[name] = least, onward
        return self._seen[name]

    def _uses(self, name: _Name) -> Iterator[Stack]:
        """Yield the nodes down to each use of a name, to the whole of ``self.name``."""
        start = name.reach.start
        within = self._source.data[start : name.reach.end]
        places = (Span(start + at.start, start + at.end) for at in occurrences(within, name.word))
        for stack in self._source.above(places):
            if stack[-1].type != "identifier" or len(stack) < 2:
                continue
            field = stack[-2].child_by_field_name("attribute")
            is_attribute = field is not None and same(field, stack[-1])
            if name.sort in ("either", "attribute" if is_attribute else "name"):
                yield stack[:-1] if is_attribute else stack

    def _names(self, handed: Iterable[Handed], tie: Tie) -> Iterator[_Name]:
        """Yield the names that get what is handed on, with their ties to the list."""
        for one in handed:
            word = self._source.text(one.name)
            if one.argument is None or one.listed is None:
                yield _Name(word, one.sort, self._reach(one.within), one.tie.within(tie))
            elif word.encode() in self._defined:
                place = self._place(one.argument, one.listed)
                key = one.argument.child_by_field_name("name") if place is None else None
                gets = (word, place, self._source.text(key) if key is not None else None)
                yield from self._gotten(*gets, one.tie, tie)

    def _gotten(
        self, function: str, place: int | None, key: str | None, tie: Tie, outer: Tie
    ) -> list[_Name]:
        """Return the parameters of a function of the file that an argument fills."""
        asked = (function, place, key, tie, outer)
        if asked not in self._filled:
            self._filled[asked] = [
                _Name(
                    self._source.text(taken.name),
                    "name",
                    self._reach(node),
                    (tie.of_holder() if taken.gathers else tie).within(outer),
                )
                for node, parameters in self._functions_named(function)
                for taken in parameters
                if taken.takes(place, key)
            ]
        return self._filled[asked]

    def _reach(self, function: Node | None) -> Span:
        return span_of(function) if function is not None else Span(0, len(self._source.data))

    def _place(self, argument: Node, listed: Node) -> int | None:
        """Return which argument of a call one is; None where only running it tells."""
        if listed.id not in self._places:
            self._places[listed.id] = places_of(listed)
        return self._places[listed.id].get(argument.id)

    def _functions_named(self, word: str) -> list[tuple[Node, list[Taken]]]:
        """Return the functions of a name with their parameters, or what makes such objects."""
        if word not in self._functions:
            self._functions[word] = [
                (function.node, list(signature(self._source, function)))
                for stack in self._source.above(self._defined.get(word.encode(), ()))
                for function in _functions_of(self._source, stack)
            ]
        return self._functions[word]

    @cached_property
    def _defined(self) -> dict[bytes, list[Span]]:
        """Where functions and classes may be defined, by their names."""
        found = defaultdict[bytes, list[Span]](list)
        for one in _DEFINED.finditer(self._source.data):
            found[one[1]].append(Span(*one.span(1)))
        return found


def _functions_of(source: Source, stack: Stack) -> Iterator[Scope]:
    """Yield the function that the last node names, or the ``__init__`` of the class."""
    node, outer = stack[-2], scope_of(source, stack)
    if node.type == "function_definition":
        yield scope_at(source, outer, node, stack[-3] if len(stack) > 2 else None)
    if node.type == "class_definition":
        made_by = constructor(source, scope_at(source, outer, node))
        yield from [made_by] if made_by is not None else []
