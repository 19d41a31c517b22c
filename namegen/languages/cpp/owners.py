"""Whose member it is that C++ code changes: the class of the object, where the file tells it."""

from __future__ import annotations

from collections.abc import Container, Mapping, Sequence
from functools import lru_cache

from tree_sitter import Node

from namegen.languages.cpp.binding import Binding
from namegen.languages.cpp.classes import class_at, classes_of
from namegen.languages.cpp.declarations import declaration
from namegen.languages.cpp.names import dotted
from namegen.languages.cpp.object_types import below
from namegen.languages.cpp.openings import tries
from namegen.languages.cpp.scopes import Scope
from namegen.languages.sources import Source
from namegen.model.facts import Path

_MOST_BASES = 50
_MEMBER = "()"
"""Stands for a member, whichever."""


def own_types(source: Source, scope: Scope, whose: Node) -> Sequence[Path]:
    """Return the paths that the class of an object may have; none where it is not told.

    The object must be declared in the file by its name alone, or as a member of this one.
    """
    words = dotted(source, whose)
    if not words or len(words) > 1 + (words[0] == "this") or words == ("this",):
        return ()
    known, start = _declared(source, words[-1]), whose.start_byte
    for path in tries(source, scope, words):
        found = [one for one in known.get(path, ()) if one.way != "declared"]
        if found and (path[0][:1] != "@" or found[0].name.start_byte < start):
            return _types(source, found)
    return ()


def _types(source: Source, found: Sequence[Binding]) -> Sequence[Path]:
    """Return the paths of the class with which an object is declared."""
    told = {below(source, one, (_MEMBER,)) for one in found}
    words = told.pop() if len(told) == 1 else None
    paths = tries(source, found[0].within, words[:-1]) if words and words[:-1] else ()
    return () if not paths or paths[-1][0][:1] == "@" else paths  # a template's arguments tell it


def members_of(
    source: Source, types: Sequence[Path], name: str, known: Container[Path]
) -> Sequence[Path] | None:
    """Return the paths of the members that an object may have under a name; None if not sure.

    ``types`` are the paths that its class may have, ``known`` those of the file's variables.
    """
    own = next((one for one in (class_at(source, path) for path in types) if one), None)
    if own is None:
        return None
    level, seen, found = [own], {own.path}, list[Path]()
    while level and not found:
        if any(one.dependent for one in level) or len(seen) > _MOST_BASES:
            return None
        found = [(*one.path, name) for one in level if (*one.path, name) in known]
        bases = (base[-1] for one in level for base in one.bases)
        level = [one for base in bases for one in classes_of(source, base) if one.path not in seen]
        seen |= {one.path for one in level}
    return found


@lru_cache(maxsize=256)  # the objects of one file are asked about again and again
def _declared(source: Source, word: str) -> Mapping[Path, Sequence[Binding]]:
    """Return where a word is declared, by its paths."""
    found: dict[Path, list[Binding]] = {}
    for stack in source.stacks([word]):
        one = declaration(source, [*stack]) if len(stack) > 1 else None
        if one is not None:
            found.setdefault(one.path, []).append(one)
    return found
