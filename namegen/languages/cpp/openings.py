"""Other ways to say a name in C++: ``using``, another name of a namespace or of a type.

With them the paths are worked out that a name may mean, here and in what is included.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import lru_cache
from itertools import chain, takewhile

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.cpp.classes import classes_of, template_parameters
from namegen.languages.cpp.declarators import nested
from namegen.languages.cpp.library import KNOWN
from namegen.languages.cpp.names import LETTERS, dotted, is_of_letters, type_words
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
            if one.target[-1]:  # the parser supposes a name where none stands
                found.setdefault(scope_of(source, stack[:-1]).path, []).append(one)
    return found


def every_opening(source: Source) -> Iterator[Opening]:
    """Yield what is opened anywhere in a file."""
    return chain.from_iterable(openings(source).values())


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
        local, words = _alias(source, node), _aliased(source, node.child_by_field_name("type"))
        if local and words:
            yield Opening(local[0], words)
    elif node.type == "namespace_definition" and any(c.type == "inline" for c in node.children):
        words = dotted(source, node.child_by_field_name("name"))
        if words:
            yield Opening("", words)


def _alias(source: Source, node: Node) -> Path | None:
    """Return the new name that a ``using`` or a ``typedef`` gives: ``typedef char Name[9];``."""
    inner = [*nested(node.child_by_field_name("declarator"))]
    return dotted(source, node.child_by_field_name("name") or (inner[-1] if inner else None))


def _aliased(source: Source, kind: Node | None) -> Path | None:
    """Return the words of the type that gets another name; one path for all types of letters."""
    return (LETTERS,) if is_of_letters(source, kind) else type_words(source, kind)


def std_words(source: Source, words: Path) -> Path | None:
    """Return a name of the standard library without its ``std``; None where it is another's.

    Without ``std::`` it counts as one if the file has ``using`` for it, or for all of them if
    it is one that matters here.
    """
    plain = words[1:] if words[0] == "" else words
    if plain[:1] == ("std",):
        return plain[1:] or None
    if len(words) > 1:
        return None
    opened = every_opening(source)
    targets = {one.target for one in opened if one.local in {"", words[0]}}
    is_opened = ("std", *words) in targets or (("std",) in targets and words[0] in KNOWN)
    return words if is_opened and not classes_of(source, words[0]) else None


def names_of(source: Source, word: str) -> frozenset[str]:
    """Return the word of a class, and the others that the file has for that."""
    names, pending = set[str](), [word]
    while pending:
        one = pending.pop()
        if one not in names:
            names.add(one)
            pending += _locals(source).get(one, ())
    return frozenset(names)


@lru_cache(maxsize=64)
def _locals(source: Source) -> Mapping[str, Sequence[str]]:
    """Return the names that a file has for others, by the last word of these."""
    found: dict[str, list[str]] = {}
    for one in every_opening(source):
        if one.local:
            found.setdefault(one.target[-1], []).append(one.local)
    return found


def tries(source: Source, scope: Scope, words: Path) -> tuple[Path, ...]:
    """Return the paths that a dotted name may mean at this place, innermost scope first."""
    around = [path for one in scope.enclosing for path in _paths(one)]
    if words[0] == "this" and len(words) > 1:
        own = scope.type
        around, words = [own.path] if own is not None else [()], words[1:]
    elif words[0] == "" and len(words) > 1:
        around, words = [()], words[1:]
    known = tuple(dict.fromkeys(_meant(openings(source), around, words, 0)))
    template = _template(source, scope, words[0])
    if template is None:
        return known
    inner = known[: next((at for at, one in enumerate(known) if one[0][:1] != "@"), len(known))]
    return (*inner, (f"@{template.start_byte}", *words))


def _template(source: Source, scope: Scope, word: str) -> Node | None:
    """Return the template around a place of which a word is a parameter: its arguments tell it."""
    for one in scope.enclosing:
        above = one.node.parent if one.sort != "file" else None
        if word in template_parameters(source, above):
            return above
    return None


def _paths(scope: Scope) -> Iterator[Path]:
    """Yield the path of a scope, and of those that it names too: ``namespace a::b`` lies in a."""
    path = scope.path
    several = max(len(scope.words), 1) if scope.sort != "region" else 1
    yield from (path[: len(path) - less] for less in range(several))


def _meant(
    known: Mapping[Path, Sequence[Opening]], around: Sequence[Path], words: Path, depth: int
) -> Iterator[Path]:
    used: list[tuple[Path, Path]] = []
    """Namespaces that were opened, each with the one as whose its names count."""
    for place, path in enumerate(around):
        outer = around[place:]
        if len(words) > 1 and path[-1:] == words[:1]:  # a class knows itself by its name
            yield (*path, *words[1:])
        yield (*path, *words)
        for one in known.get(path, ()) if depth < _DEEPEST else ():
            target = one.target[1:] if one.target[0] == "" else one.target
            if not one.local:
                used += _used(list(_named(outer)), target)
            elif one.local == words[0] and target != words[:1]:
                yield from _meant(known, outer, (*target, *words[1:]), depth + 1)
        yield from ((*space, *words) for level, space in used if level == path)


def _used(outer: Sequence[Path], target: Path) -> Iterator[tuple[Path, Path]]:
    """Yield what ``using namespace`` may open, with the nearest namespace around both.

    The names count as that one's, so a name of a namespace between goes first.
    """
    home = outer[0] if outer else ()
    for prefix in outer:
        space = (*prefix, *target)
        shared = takewhile(lambda pair: pair[0] == pair[1], zip(space, home, strict=False))
        yield tuple(one for one, _ in shared), space


def _named(paths: Iterable[Path]) -> Iterator[Path]:
    """Yield the paths that are no function or block."""
    return (path for path in paths if not path or path[0][:1] != "@")
