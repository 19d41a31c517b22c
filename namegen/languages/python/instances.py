"""Objects of Python classes: which attributes get their values from how an object is made."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Literal

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.python.binding import Binding
from namegen.languages.python.scopes import Scope, scope_at
from namegen.languages.python.signatures import Taken, places_of, signature
from namegen.languages.sources import Source, elements

GIVEN = "it is given when the object is made"
_TUPLES = frozenset({"NamedTuple"})
_SPLATS = frozenset({"list_splat", "dictionary_splat"})
_BY_KEYWORD = "kw_only=True"


class Given(Struct, frozen=True):
    """What an attribute of an object is given: a value, and the scope it is worked out in."""

    value: Node
    within: Scope


class Maker(Struct, frozen=True):
    """A class of a file, as far as it makes objects.

    An attribute may be set by its ``__init__``, or be a field of a class whose decorator or
    base makes one, as dataclasses and named tuples have it.
    """

    source: Source
    owner: Scope
    bindings: Callable[[str], list[Binding]]

    def given(self, call: Node, within: Scope, word: str) -> Given | Literal["own", "unsure"]:
        """Return what gives an attribute its value where a call makes an object.

        ``own``: it has the value that the class itself gives to all its objects.
        """
        taken = self.taken(word)
        if not isinstance(taken, Taken):
            return taken
        listed = call.child_by_field_name("arguments")
        if listed is None or any(one.type in _SPLATS for one in elements(listed)):
            return "unsure"
        value = self._argument(listed, taken)
        if value is not None:
            return Given(value, within)
        init = self.init()
        # Fields of a base come first, so that an argument without a keyword may be any of them.
        is_base_first = taken.at is None and init is None and places_of(listed)
        if taken.default is None or is_base_first:
            return "unsure"
        return Given(taken.default, self.owner)

    def _argument(self, listed: Node, taken: Taken) -> Node | None:
        """Return the argument of a call that fills a parameter."""
        places = places_of(listed)
        for one in elements(listed):
            if one.type == "keyword_argument":
                key = one.child_by_field_name("name")
                if key is not None and self._text(key) == taken.key:
                    return one.child_by_field_name("value")
            elif taken.at is not None and places[one.id] == taken.at:
                return one
        return None

    def taken(self, word: str) -> Taken | Literal["own", "unsure"]:
        """Return the parameter of the class that gives an attribute its value."""
        bound = [one for one in self.bindings(word) if one.scope.node == self.owner.node]
        init = self.init()
        if init is not None:
            return self._kept(init, bound) or "own"
        fields = [one for one in self._fields() if self._text(one.name) == word]
        if not fields:
            return "unsure" if not bound and self._is_marked() and self._bases() else "own"
        if len(fields) > 1:
            return "unsure"
        return fields[0] if len(bound) == 1 else "own"

    def _kept(self, init: Scope, bound: list[Binding]) -> Taken | None:
        """Return the parameter that ``__init__`` keeps just as it is: ``self.name = name``."""
        value = bound[0].value if len(bound) == 1 and bound[0].within.node == init.node else None
        if value is None or value.type != "identifier":
            return None
        word = self._text(value)
        taken = (one for one in signature(self.source, init) if self._text(one.name) == word)
        found = next(taken, None)
        again = [one for one in self.bindings(word) if one.scope.node == init.node]
        return found if found is not None and not found.gathers and len(again) == 1 else None

    def _text(self, node: Node) -> str:
        return self.source.text(node)

    def init(self) -> Scope | None:
        """Return the ``__init__`` that the class itself has."""
        body = self.owner.node.child_by_field_name("body")
        for member in elements(body) if body is not None else ():
            function = member.child_by_field_name("definition") or member
            if function.type == "function_definition":
                scope = scope_at(self.source, self.owner, function, member)
                if scope.name == "__init__":
                    return scope
        return None

    def _is_marked(self) -> bool:
        above = self.owner.node.parent
        return above is not None and above.type == "decorated_definition"

    def _bases(self) -> set[str]:
        listed = self.owner.node.child_by_field_name("superclasses")
        texts = (self._text(one) for one in elements(listed)) if listed is not None else ()
        return {text.rpartition(".")[2] for text in texts}

    def _fields(self) -> Iterator[Taken]:
        """Yield the annotated attributes as parameters, in order."""
        bases, above = self._bases(), self.owner.node.parent
        if not bases and not self._is_marked():
            return
        marks = elements(above) if above is not None and self._is_marked() else []
        mark = "".join(self._text(one) for one in marks if one.type == "decorator")
        by_place = not bases - _TUPLES and _BY_KEYWORD not in mark
        place = 0
        for name, declared, value in self._annotated():
            said, text = self._text(declared), self._text(value) if value is not None else ""
            if "KW_ONLY" in said:
                by_place = False
            if "KW_ONLY" in said or "ClassVar" in said or "init=False" in text:
                continue
            placed = by_place and _BY_KEYWORD not in text
            yield Taken(name, place if placed else None, self._text(name), value)
            place += placed

    def _annotated(self) -> Iterator[tuple[Node, Node, Node | None]]:
        """Yield the attributes that are declared with a type, with that and their default."""
        body = self.owner.node.child_by_field_name("body")
        for statement in elements(body) if body is not None else ():
            for one in elements(statement) if statement.type == "expression_statement" else ():
                name, declared = one.child_by_field_name("left"), one.child_by_field_name("type")
                if name is not None and declared is not None and name.type == "identifier":
                    yield name, declared, one.child_by_field_name("right")
