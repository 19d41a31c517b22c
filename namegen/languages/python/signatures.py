"""What the parameters of a Python function are, and which arguments of a call fill them."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.python.scopes import Scope, own_name, scope_at
from namegen.languages.sources import Source, elements

_GATHERING = frozenset({"list_splat_pattern", "dictionary_splat_pattern"})
SPLATS = frozenset({"list_splat", "dictionary_splat"})


class Taken(Struct, frozen=True):
    """A parameter, with the place (from 0) and the keyword by which a call fills it.

    Each is None where a call cannot fill it so. ``gathers``: it takes all that are left.
    """

    name: Node
    at: int | None
    key: str | None
    default: Node | None = None
    gathers: bool = False

    def takes(self, place: int | None, key: str | None) -> bool:
        """Whether an argument may fill it that has a keyword, or a place if that is known."""
        if key is not None:
            return self.gathers or key == self.key
        return self.gathers or (self.at is not None and place in (None, self.at))


def signature(source: Source, function: Scope) -> Iterator[Taken]:
    """Yield the parameters of a function as a call sees them, without its own object."""
    listed = function.node.child_by_field_name("parameters")
    parameters = elements(listed) if listed is not None else []
    if own_name(source, function) is not None:
        parameters = parameters[1:]
    slash = next((i for i, p in enumerate(parameters) if p.type == "positional_separator"), 0)
    place: int | None = 0
    for index, one in enumerate(parameters):
        if one.type == "keyword_separator":
            place = None
        name, gathers = _name(one)
        if name is None or one.type == "positional_separator":
            continue
        if gathers:
            yield Taken(name, None, None, gathers=True)
            place = None
            continue
        key = source.text(name) if index >= slash else None
        yield Taken(name, place, key, one.child_by_field_name("value"))
        place = place + 1 if place is not None else None


def constructor(source: Source, owner: Scope) -> Scope | None:
    """Return the ``__init__`` that a class itself has."""
    for member in elements(owner.node.child_by_field_name("body")):
        function = member.child_by_field_name("definition") or member
        if function.type == "function_definition":
            scope = scope_at(source, owner, function, member)
            if scope.name == "__init__":
                return scope
    return None


def places_of(listed: Node) -> dict[int, int]:
    """Return which argument of a call each is, from 0, by its node.

    Keywords have none, and behind ``*names`` only running the program tells.
    """
    found: dict[int, int] = {}
    for place, one in enumerate(elements(listed)):
        if one.type in SPLATS:
            break
        if one.type != "keyword_argument":
            found[one.id] = place
    return found


def _name(parameter: Node) -> tuple[Node | None, bool]:
    """Return a parameter's name, and whether it gathers; its type and default do not count."""
    node: Node | None = parameter
    gathers = False
    while node is not None and node.type != "identifier":
        gathers |= node.type in _GATHERING
        node = node.child_by_field_name("name") or next(iter(elements(node)), None)
    return node, gathers
