"""Other ways to say a name in C++: ``using``, another name of a namespace or of a type.

With them the paths are worked out that a name may mean, here and in what is included.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import lru_cache

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.cpp.names import dotted, type_words
from namegen.languages.cpp.scopes import Scope, scope_of
from namegen.languages.sources import Source, elements
from namegen.model.facts import Path

_DEEPEST = 5
"""Other names of other names that are followed."""
_WORDS = ("using", "namespace", "typedef")


class Opening(Struct, frozen=True):
    """A name that stands for another one, or (``local`` empty) all names of a namespace."""

    local: str
    target: Path


@lru_cache(maxsize=64)  # one file is asked about again and again
def openings(source: Source) -> Mapping[Path, Sequence[Opening]]:
    """Return what is opened in a file, by the path of the scope."""
    found: dict[Path, list[Opening]] = {}
    for stack in source.stacks(_WORDS):
        for one in _of_statement(source, stack[-2]) if len(stack) > 1 else ():
            found.setdefault(scope_of(source, stack[:-1]).path, []).append(one)
    return found


def _of_statement(source: Source, node: Node) -> Iterator[Opening]:
    if node.type == "using_declaration":
        words = dotted(source, next(iter(elements(node)), None))
        every = any(child.type == "namespace" for child in node.children)
        if words and (every or len(words) > 1):
            yield Opening("" if every else words[-1], words)
    elif node.type == "namespace_alias_definition":
        local, *target = [dotted(source, one) for one in elements(node)] or [None]
        if local and target and target[0]:
            yield Opening(local[0], target[0])
    elif node.type in {"alias_declaration", "type_definition"}:
        name = node.child_by_field_name("name") or node.child_by_field_name("declarator")
        local, words = dotted(source, name), type_words(source, node.child_by_field_name("type"))
        if local and words:
            yield Opening(local[0], words)
    elif node.type == "namespace_definition" and any(c.type == "inline" for c in node.children):
        words = dotted(source, node.child_by_field_name("name"))
        if words:
            yield Opening("", words)


def tries(source: Source, scope: Scope, words: Path) -> tuple[Path, ...]:
    """Return the paths that a dotted name may mean at this place, innermost scope first."""
    around = [one.path for one in scope.around]
    if words[0] == "this" and len(words) > 1:
        own = scope.type
        around, words = [own.path] if own is not None else [()], words[1:]
    elif words[0] == "":
        around, words = [()], words[1:]
    return tuple(dict.fromkeys(_meant(openings(source), around, words, 0)))


def _meant(
    known: Mapping[Path, Sequence[Opening]], around: Sequence[Path], words: Path, depth: int
) -> Iterator[Path]:
    for place, path in enumerate(around):
        if len(words) > 1 and path[-1:] == words[:1]:  # a class knows itself by its name
            yield (*path, *words[1:])
        yield (*path, *words)
        for one in known.get(path, ()) if depth < _DEEPEST else ():
            outer = around[place:]
            target = one.target[1:] if one.target[0] == "" else one.target
            if not one.local:
                yield from ((*prefix, *target, *words) for prefix in _named(outer))
            elif one.local == words[0] and target != words[:1]:
                yield from _meant(known, outer, (*target, *words[1:]), depth + 1)


def _named(paths: Iterable[Path]) -> Iterator[Path]:
    """Yield the paths that are no function or block."""
    return (path for path in paths if not path or path[0][:1] != "@")
