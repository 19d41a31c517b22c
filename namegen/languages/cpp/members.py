"""Members of C++ classes that no object can have otherwise than another one."""

from __future__ import annotations

from collections.abc import Sequence

from namegen.languages.cpp.aggregates import is_aggregate
from namegen.languages.cpp.binding import Binding
from namegen.languages.cpp.classes import class_at
from namegen.languages.cpp.constructors import all_seen, delegates, makers
from namegen.languages.sources import Source


def is_same_for_all(source: Source, bound: Sequence[Binding], *, listed: bool) -> bool:
    """Whether a member is the same in each object of a class, as far as the file tells.

    It has a value where it is declared, or the one constructor gives it. ``listed``:
    another file may have made an object of a list of values.
    """
    own = class_at(source, bound[0].path[:-1])
    if own is None or not all_seen(source, own) or (listed and is_aggregate(own)):
        return False
    made = [one for one in bound if one.way != "empty"]
    if len(made) != 1:
        return False
    return (len(bound) == 1 and made[0].way == "value") or has_one_maker(source, bound[0])


def has_one_maker(source: Source, member: Binding) -> bool:
    """Whether one constructor does the work for all others of the class of a member."""
    own = class_at(source, member.path[:-1])
    if own is None:
        return True
    working = [one for one in makers(source, own) if not delegates(one, own.path[-1])]
    return len(working) <= 1
