"""Objects that are made of a list of values for their members: ``Part part{"bow", 3}``.

A list may say of which class it makes an object, or leave that to what takes it. Where a
class is a base or a member of others, lists for these give values to its members too.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from functools import lru_cache

from msgspec import Struct
from msgspec.structs import replace
from tree_sitter import Node

from namegen.languages.cpp.binding import Binding
from namegen.languages.cpp.classes import Class, class_at, classes_of, every_class
from namegen.languages.cpp.constructions import constructions
from namegen.languages.cpp.constructors import constructors
from namegen.languages.cpp.declarators import declared
from namegen.languages.cpp.library import VALUE_TYPES
from namegen.languages.cpp.lists import GivenList, given_lists, taken_apart
from namegen.languages.cpp.names import last_words
from namegen.languages.cpp.openings import names_of
from namegen.languages.cpp.scopes import function_declarator
from namegen.languages.sources import Source, elements

_NO_TEXTS = frozenset({"char_literal", "false", "null", "number_literal", "true"})
_MADE = {"call_expression": "function", "compound_literal_expression": "type"}
_EMPLACING = ("emplace", "emplace_back", "emplace_front", "emplace_hint", "try_emplace")
_MOST_KIN = 50
"""Classes that have one in them, beyond which no more are looked for."""


class Family(Struct, frozen=True):
    """A class by all its names in the file, and the classes that have such an object in them."""

    names: frozenset[str]
    kin: frozenset[str]
    foreign: bool = False
    """Whether another file has the class: then classes of that may have it in them too."""

    def takes(self, source: Source, one: GivenList) -> bool:
        """Whether a list may make an object of the class, or of one that has it in it."""
        if one.kinds is None or not one.kinds.isdisjoint(self.names | self.kin):
            return True
        others = one.kinds - VALUE_TYPES if self.foreign else ()
        return any(not classes_of(source, word) for word in others)


def is_filled(source: Source, member: Binding) -> bool:
    """Whether a list in the file may give a member of an object another value than its own.

    What constructors give, and lists that name the member, is not looked at: these bind it.
    The members of a union share their place, so none of them has what it is given for sure.
    """
    own = class_at(source, member.path[:-1])
    if own is None or not is_aggregate(own):
        return False
    members = [*_members(own)]
    place = next((at for at, one in enumerate(members) if _holds(one, member.name)), None)
    if own.node.type == "union_specifier" or place is None:
        return own.node.type == "union_specifier"
    family = _family(source, own.path[-1])
    return len(members) in taken_apart(source) or _is_listed(source, family, place, len(members))


def may_be_listed(source: Source, word: str) -> bool:
    """Whether a list in the file may make an object of a class that another file has."""
    return _is_listed(source, replace(_family(source, word), foreign=True), 0, None)


def is_aggregate(own: Class) -> bool:
    """Whether lists can make objects of a class: all may use what it has, and it has no more."""
    is_open = own.node.type != "class_specifier"
    for one in own.body:
        if one.type == "access_specifier":
            is_open = one.text == b"public"
        elif not is_open and one.type == "field_declaration" and function_declarator(one) is None:
            return False
    return not constructors(own)


def _is_listed(source: Source, family: Family, place: int, most: int | None) -> bool:
    """Whether a list may give something to the member at a place of the class of a family.

    ``most``: how many members the class has, if that is known.
    """
    for one in given_lists(source):
        if family.takes(source, one) and _fills(source, one.values, family, place, most):
            return True
    for stack in source.stacks([*family.names]):
        for made in constructions(source, [*stack]) if len(stack) > 1 else ():
            if _fills(source, elements(made.given), family, place, most):
                return True
    emplaced = _emplaced(source) if _is_held(source, family) else ()
    return any(_fills(source, elements(given), family, place, most) for given in emplaced)


def _is_held(source: Source, family: Family) -> bool:
    """Whether a list of several or another template holds objects of a family."""
    stacks = (stack for stack in source.stacks([*family.names, *family.kin]) if len(stack) > 1)
    return any(stack[-2].type == "type_descriptor" for stack in stacks)


@lru_cache(maxsize=64)
def _emplaced(source: Source) -> Sequence[Node]:
    """Return the arguments of which objects are made where they are kept: ``emplace_back("x")``."""
    calls = (stack[-3] for stack in source.stacks(_EMPLACING) if len(stack) > 2)
    given = (call.child_by_field_name("arguments") for call in calls)
    return [one for one in given if one is not None]


def _fills(source: Source, given: list[Node], family: Family, place: int, most: int | None) -> bool:
    """Whether values may fill the member at a place, if they make an object with such a member."""
    if family.kin or most is None:  # values of those around it may stand before and behind
        return any(_may_be_text(source, one, family) for one in given)
    fits = place < len(given) <= most and given[0].type != "initializer_pair"
    return fits and _may_be_text(source, given[place], family)


def _may_be_text(source: Source, value: Node, family: Family) -> bool:
    """Whether a value may be another than an object of the family, or a number."""
    if value.type in _MADE:
        kinds = last_words(source, value.child_by_field_name(_MADE[value.type]))
        return kinds.isdisjoint(family.names | family.kin)
    if value.type == "initializer_list":
        return bool(elements(value))
    if value.type == "initializer_pair":  # the member that it names is bound by it
        given = value.child_by_field_name("value")
        return given is not None and given.type == "initializer_list"
    name: Node | None = value
    if value.type == "parameter_declaration":  # `Part other(part)` reads like a parameter
        name = value.child_by_field_name("type")
    if name is None or name.type not in {"identifier", "type_identifier"}:
        return value.type not in _NO_TEXTS
    kinds = set[str]()
    for stack in source.stacks([source.text(name)]):
        known = declared(source, stack) if len(stack) > 1 else None
        kinds |= last_words(source, known.type) or {""} if known is not None else set()
    return not kinds or not kinds <= family.names | family.kin


@lru_cache(maxsize=64)  # one file is asked about again and again
def _family(source: Source, word: str) -> Family:
    names = names_of(source, word)
    kin, pending = set[str](), {*names}
    while pending and len(kin) < _MOST_KIN:
        around = {one for part in pending for one in _wholes(source).get(part, ())}
        pending = {name for one in around for name in names_of(source, one)} - names - kin
        kin |= pending
    return Family(names, frozenset(kin))


@lru_cache(maxsize=64)
def _wholes(source: Source) -> Mapping[str, Sequence[str]]:
    """Return the classes of a file by the last words of what their objects have in them."""
    found: dict[str, list[str]] = {}
    for own in every_class(source):
        for part in _parts(source, own):
            found.setdefault(part, []).append(own.path[-1])
    return found


def _parts(source: Source, own: Class) -> set[str]:
    """Return the last words of the types that an object of a class has in it."""
    held = (one for one in own.body if one.type == "field_declaration")
    kinds = (one.child_by_field_name("type") for one in held)
    return {base[-1] for base in own.bases}.union(*(last_words(source, kind) for kind in kinds))


def _members(own: Class) -> Iterator[Node]:
    """Yield the declarators of what each object of a class has, in order."""
    for statement in own.body:
        is_static = any(one.text == b"static" for one in statement.children)
        if statement.type == "field_declaration" and not is_static:
            yield from statement.children_by_field_name("declarator")


def _holds(declarator: Node, name: Node) -> bool:
    return declarator.start_byte <= name.start_byte < declarator.end_byte
