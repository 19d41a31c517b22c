"""Objects of C++ whose members are asked for: whether these have what their class gives them."""

from __future__ import annotations

from collections.abc import Sequence

from tree_sitter import Node

from namegen.languages.cpp.classes import classes_of
from namegen.languages.cpp.declarations import Binding
from namegen.languages.cpp.names import dotted, type_words
from namegen.languages.sources import Source, elements
from namegen.model.facts import Path

_ANY = "#"
"""Stands before the last word of a path for a member of an object that nothing is known of."""


def of_any(path: Path) -> Path:
    """Return the path of a member as that of an object of which only the class is known."""
    return path if path[-2:-1] == (_ANY,) else (*path[:-1], _ANY, path[-1])


def is_of_any(path: Path) -> bool:
    """Whether a path is one of an object of which only the class is known."""
    return path[-2:-1] == (_ANY,)


def without_mark(path: Path) -> Path:
    """Return the path of the member as its class has it."""
    return (*path[:-2], path[-1]) if is_of_any(path) else path


def type_of(source: Source, one: Binding) -> Path | None:
    """Return the class that an object is declared as, or ``auto a = A{}`` is made of."""
    words = type_words(source, one.declared)
    if words is None and one.declared is not None and not one.points:
        made = _made(source, one.value)
        is_type = one.value is not None and one.value.type == "compound_literal_expression"
        return made if made and (is_type or classes_of(source, made[-1])) else None
    return words


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
    return _made(source, value) == type_of(source, made[0])


def _made(source: Source, value: Node | None) -> Path | None:
    """Return the class that ``A()`` and ``A{}`` make an object of."""
    if value is None or value.type not in {"call_expression", "compound_literal_expression"}:
        return None
    is_call = value.type == "call_expression"
    made, given = ("function", "arguments") if is_call else ("type", "value")
    listed, named = value.child_by_field_name(given), value.child_by_field_name(made)
    if listed is None or elements(listed):
        return None
    return dotted(source, named) if named is not None else None
