"""Iterators and pointers of C++ that are declared with what they lead to."""

from __future__ import annotations

from typing import NamedTuple

from namegen.languages.cpp.binding import Binding
from namegen.languages.cpp.chains import begun, chain
from namegen.languages.sources import Source
from namegen.model.facts import Path

_STEPS = frozenset({"+=", "-="})


class Goal(NamedTuple):
    """What is led to: the elements of a list, or one variable."""

    words: Path
    several: bool


def goal(source: Source, one: Binding) -> Goal | None:
    """Return what a variable leads to by its declaration; None where that does not tell."""
    if one.way != "value" or one.value is None or one.many:
        return None
    if one.value.type == "pointer_expression" and one.value.children[0].type == "&":
        words = chain(source, one.value.child_by_field_name("argument"))
        return Goal(words, several=False) if words else None
    listed = begun(source, one.value)
    words = chain(source, listed) if listed is not None else None
    return Goal(words, several=True) if words else None


def is_step(one: Binding) -> bool:
    """Whether a variable only goes on there, to another element: ``++it``, ``it += 2``."""
    above = one.name.parent
    if above is None or above.type == "update_expression":
        return above is not None
    sign = above.child_by_field_name("operator")
    return above.type == "assignment_expression" and sign is not None and sign.type in _STEPS
