"""Objects of Python classes: which attributes get their values from how an object is made."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import cached_property
from typing import Literal

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.python.binding import Binding
from namegen.languages.python.scopes import Scope
from namegen.languages.python.signatures import SPLATS, Taken, constructor, places_of, signature
from namegen.languages.sources import Source, elements

GIVEN = "it is given when the object is made"
_TUPLES = frozenset({"NamedTuple"})
_WITH_FIELDS = _TUPLES | {"BaseModel", "Struct", "TypedDict"}
"""Bases that make fields of annotated attributes: of Python's library and of usual others."""
_MEDDLERS = ("setattr", "__dict__", "__new__", "__post_init__", "vars(")
_BY_KEYWORD = "kw_only=True"

Bindings = Callable[[str], list[Binding]]
"""Gives the bindings of a word in the file. It is handed in and not kept: what keeps it keeps
the trees of a file when that is done."""


class Given(Struct, frozen=True):
    """What an attribute of an object is given: a value, and the scope it is worked out in."""

    value: Node
    within: Scope


class Maker(Struct, frozen=True, dict=True):
    """A class of a file, as far as it makes objects.

    An attribute may be set by its ``__init__``, or be a field of a dataclass or a named tuple.
    Where something else may have a hand in it, it is unsure.
    """

    source: Source
    owner: Scope

    def given(
        self, call: Node, within: Scope, word: str, bindings: Bindings
    ) -> Given | Literal["own", "unsure"]:
        """Return what gives an attribute its value where a call makes an object.

        ``own``: it has the value that the class itself gives to all its objects.
        """
        taken = self.parameter_of(word, bindings)
        if not isinstance(taken, Taken):
            return taken
        listed = call.child_by_field_name("arguments")
        if listed is None or any(one.type in SPLATS for one in elements(listed)):
            return "unsure"
        value = self._argument(listed, taken)
        if value is not None:
            return Given(value, within)
        # Fields of a base come first, so that an argument without a keyword may be any of them.
        is_base_first = taken.at is None and not self.has_init and places_of(listed)
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

    def parameter_of(self, word: str, bindings: Bindings) -> Taken | Literal["own", "unsure"]:
        """Return the parameter of the class that gives an attribute its value."""
        bound = [one for one in bindings(word) if one.scope.node == self.owner.node]
        if self._init is not None:
            kept = self._kept(self._init, bound, bindings)
            if kept is None:
                return "own"
            return "unsure" if self._is_meddled_with else kept
        fields = self._fields.get(word, ())
        if not fields:
            return "unsure" if not bound and self._marks and self._bases else "own"
        if len(fields) > 1 or self._is_meddled_with:
            return "unsure"
        return fields[0] if len(bound) == 1 else "own"

    @property
    def has_init(self) -> bool:
        """Whether the class itself has an ``__init__``."""
        return self._init is not None

    @cached_property
    def _is_meddled_with(self) -> bool:
        """Whether more than plain assignments in ``__init__`` may set attributes.

        A decorator of the program may do anything, and so may ``setattr`` and its like.
        """
        if self._init is not None and (self._marks or self._init.marks):
            return True
        others = self._marks - {"dataclass", "dataclasses.dataclass"}
        text = self._text(self.owner.node)
        return bool(others) or any(word in text for word in _MEDDLERS)

    def _kept(self, init: Scope, bound: list[Binding], bindings: Bindings) -> Taken | None:
        """Return the parameter that ``__init__`` keeps just as it is: ``self.name = name``."""
        value = bound[0].value if len(bound) == 1 and bound[0].within.node == init.node else None
        if value is None or value.type != "identifier":
            return None
        word = self._text(value)
        taken = (one for one in signature(self.source, init) if self._text(one.name) == word)
        found = next(taken, None)
        again = [one for one in bindings(word) if one.scope.node == init.node]
        return found if found is not None and not found.gathers and len(again) == 1 else None

    def _text(self, node: Node) -> str:
        return self.source.text(node)

    @cached_property
    def _init(self) -> Scope | None:
        return constructor(self.source, self.owner)

    @cached_property
    def _marks(self) -> frozenset[str]:
        """The decorators of the class, without their arguments."""
        above = self.owner.node.parent
        if above is None or above.type != "decorated_definition":
            return frozenset()
        marks = (self._text(one) for one in elements(above) if one.type == "decorator")
        return frozenset(mark.partition("(")[0].strip("@ ") for mark in marks)

    @cached_property
    def _bases(self) -> frozenset[str]:
        listed = self.owner.node.child_by_field_name("superclasses")
        texts = (self._text(one) for one in elements(listed)) if listed is not None else ()
        return frozenset(text.rpartition(".")[2] for text in texts)

    @cached_property
    def _fields(self) -> dict[str, list[Taken]]:
        """The annotated attributes as parameters, by their names."""
        found: dict[str, list[Taken]] = {}
        if not self._marks and not self._bases & _WITH_FIELDS:
            return found
        above = self.owner.node.parent if self._marks else None
        marks = elements(above) if above is not None else []
        mark = "".join(self._text(one) for one in marks if one.type == "decorator")
        by_place = not self._bases - _TUPLES and _BY_KEYWORD not in mark
        place = 0
        for name, declared, value in self._annotated():
            said, text = self._text(declared), self._text(value) if value is not None else ""
            if "KW_ONLY" in said:
                by_place = False
            if "KW_ONLY" in said or "ClassVar" in said or "init=False" in text:
                continue
            placed = by_place and _BY_KEYWORD not in text
            word = self._text(name)
            found.setdefault(word, []).append(Taken(name, place if placed else None, word, value))
            place += placed
        return found

    def _annotated(self) -> Iterator[tuple[Node, Node, Node | None]]:
        """Yield the attributes that are declared with a type, with that and their default."""
        body = self.owner.node.child_by_field_name("body")
        for statement in elements(body) if body is not None else ():
            for one in elements(statement) if statement.type == "expression_statement" else ():
                name, declared = one.child_by_field_name("left"), one.child_by_field_name("type")
                if name is not None and declared is not None and name.type == "identifier":
                    yield name, declared, one.child_by_field_name("right")
