"""Other paths that what a path of a C++ file stands for may have.

``using`` opens namespaces, classes inherit members, and a variable has those of its class.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Protocol

from namegen.languages.cpp.aggregates import may_be_listed
from namegen.languages.cpp.binding import Binding
from namegen.languages.cpp.classes import classes_of
from namegen.languages.cpp.object_types import below
from namegen.languages.cpp.objects import ANY, LISTED, is_plain, marked
from namegen.languages.cpp.openings import openings, tries
from namegen.languages.cpp.scopes import Scope
from namegen.languages.cpp.types import EXACT
from namegen.languages.expressions import RUN_TIME
from namegen.languages.sources import Source, same, span_of
from namegen.model.facts import Definition, Path, Ref, Unknown
from namegen.model.places import Span

_NO_OBJECTS = frozenset({"class", "macro", "namespace"})


class Known(Protocol):
    """What finds the bindings of a file."""

    source: Source

    def bindings(self, word: str) -> list[Binding]:
        """Return every binding of a word in the file."""

    def bound_at(self, path: Path) -> list[Binding]:
        """Return the bindings of a path as it is written out."""


def opened(source: Source, path: Path, mark: str) -> list[Definition]:
    """Return what a path stands for through ``using``, for a file that includes this one."""
    by_scope = openings(source) if path[0][:1] != "@" else {}
    found: list[Path] = []
    for place in range(len(path)):
        here = by_scope.get(path[:place], ())
        if here and all(one.target[0] != path[place] for one in here):
            root = source.root
            scope = Scope("namespace", root, Scope("file", root), path[:place])
            mine = tries(source, scope, path[place:])
            found += [(EXACT, *one) for one in mine if one != path]
    span = Span(0, 0)
    found += [(EXACT, *path)] if found and len(path) > 1 else []  # a base may have it
    tried = tuple(marked(one, mark) for one in found)
    return [Definition(path, Ref(tried, span), span, inherited=True)] if found else []


def inherited(known: Known, path: Path, mark: str) -> list[Definition]:
    """Return the definitions of a member that a base class or a variable's type may have."""
    for place in range(len(path) - 1, 0, -1):
        bound = known.bound_at(path[:place])
        found = _of_bases(known, bound, path, place, mark)
        found = found or _of_object(known, bound, path, path[place:], mark)
        found = found or _of_made(known, path, place)
        if found is not None:
            return [found]
    return []


def _of_bases(
    known: Known, bound: Sequence[Binding], path: Path, place: int, mark: str
) -> Definition | None:
    """Return the definition of a path below a class, if one of its bases may have it."""
    for one in bound if any(one.way == "class" for one in bound) else ():
        classes = classes_of(known.source, path[place - 1])
        own = next((each for each in classes if same(each.node, one.value)), None)
        names = [(*base, *path[place:]) for base in own.bases] if own is not None else []
        found = [each for words in names for each in tries(known.source, one.within, words)]
        if found:
            if mark and own is not None and any(_may_list(known, base) for base in own.bases):
                mark = LISTED
            span, tried = span_of(one.name), tuple(marked(each, mark) for each in found)
            return Definition(path, Ref(tried, span), span, inherited=True)
    return None


def _of_made(known: Known, path: Path, place: int) -> Definition | None:
    """Return the definition of a path below ``Boat()``, an object that is made there."""
    name = (*path[: place - 1], path[place - 1].removesuffix("()"))
    bound = known.bound_at(name) if name != path[:place] else []
    if not any(one.way == "class" for one in bound):
        return None
    span = span_of(bound[0].name)
    return Definition(path, Ref((marked((*name, *path[place:]), ANY),), span), span)


def _of_object(
    known: Known, bound: Sequence[Binding], path: Path, after: Path, mark: str
) -> Definition | None:
    """Return the definition of a path below a variable, from the class that it is of."""
    made = [one for one in bound if one.way not in {"declared", *_NO_OBJECTS}]
    if not made:
        return None
    one = next((one for one in made if one.declared is not None), made[0])
    words, span = below(known.source, one, after), span_of(one.name)
    if (
        words is None
        or len({below(known.source, each, after) for each in made if each.way == "function"}) > 1
    ):
        return Definition(path, Unknown(RUN_TIME, span), span)
    found = tries(known.source, one.within, words)
    if not mark and not is_plain(known.source, made):
        mark = ANY
    if mark == ANY and _may_list(known, words[:-1] or words):
        mark = LISTED
    return Definition(path, Ref(tuple(marked(each, mark) for each in found), span), span)


def _may_list(known: Known, words: Path) -> bool:
    """Whether a list here may make an object of a class that another file has."""
    if classes_of(known.source, words[-1]) or known.bindings(words[-1]):
        return False
    return may_be_listed(known.source, words[-1])
