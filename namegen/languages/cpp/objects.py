"""Objects of C++ whose members are asked for, and how a path says what is known of the object.

Of an object that is made without any value all is known that its class says. Of any other
one only what no object of its class can have otherwise.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace
from tree_sitter import Node

from namegen.languages.cpp.binding import Binding
from namegen.languages.cpp.chains import is_element
from namegen.languages.cpp.classes import classes_of
from namegen.languages.cpp.names import dotted, type_words
from namegen.languages.sources import Source, elements
from namegen.model.facts import Each, Expression, Join, Path, Ref, Several, Wrapped

ANY = "#"
"""Stands before a member of an object of which only the class is known."""
LISTED = "#{}"
"""Stands there where the file that asks may have made the object of a list of values."""


def mark_of(path: Path) -> str:
    """Return the mark in a path; empty where it has none."""
    return LISTED if LISTED in path else ANY if ANY in path else ""


def marked(path: Path, mark: str) -> Path:
    """Return a path with a mark before its last name, if it has none that says less."""
    if not mark or mark_of(path) == LISTED:
        return path
    words = without_mark(path)
    place = max((at for at, word in enumerate(words) if not is_element(word)), default=0)
    return (*words[:place], mark, *words[place:])


def without_mark(path: Path) -> Path:
    """Return the path of the member as its class has it."""
    return tuple(word for word in path if word not in {ANY, LISTED})


def of_marked(value: Expression, mark: str) -> Expression:
    """Return what a member of a marked object is given: other members are that object's too."""
    match value:
        case Ref():
            return replace(value, tries=tuple(marked(one, mark) for one in value.tries))
        case Join():
            return replace(value, parts=tuple(of_marked(one, mark) for one in value.parts))
        case Several():
            return replace(value, options=tuple(of_marked(one, mark) for one in value.options))
        case Each():
            return replace(value, of=of_marked(value.of, mark))
        case Wrapped():
            return replace(value, value=of_marked(value.value, mark))
        case _:
            return value


def is_plain(source: Source, bound: Sequence[Binding]) -> bool:
    """Whether an object is held itself and made without any value: ``A a;``, ``A a = A();``."""
    made = [one for one in bound if one.way not in {"called", "declared"}]
    if len(made) != 1 or made[0].points or made[0].many:
        return False
    if made[0].way == "empty":
        return True
    value = made[0].value
    if made[0].way != "value" or value is None:
        return False
    if value.type == "initializer_list":
        return not elements(value)
    made_of, words = _made(source, value), type_words(source, made[0].declared)
    if made_of is None or words is not None:
        return made_of is not None and made_of == words
    return value.type == "compound_literal_expression" or bool(classes_of(source, made_of[-1]))


def _made(source: Source, value: Node) -> Path | None:
    """Return the class that ``A()`` and ``A{}`` make an object of."""
    if value.type not in {"call_expression", "compound_literal_expression"}:
        return None
    is_call = value.type == "call_expression"
    made, given = ("function", "arguments") if is_call else ("type", "value")
    listed, named = value.child_by_field_name(given), value.child_by_field_name(made)
    if listed is None or elements(listed):
        return None
    return dotted(source, named) if named is not None else None
