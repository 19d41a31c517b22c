"""The classes of a C++ file: where they stand, what they are derived from, what they have."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from functools import lru_cache
from itertools import chain

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.cpp.names import dotted, type_words
from namegen.languages.cpp.scopes import CLASSES, scope_of
from namegen.languages.sources import Source, elements
from namegen.model.facts import Path

_WORDS = ("class", "struct", "union")


class Class(Struct, frozen=True):
    """A class with its body. ``dependent`` are the bases that a template's arguments decide."""

    path: Path
    node: Node
    bases: tuple[Path, ...]
    dependent: bool

    @property
    def body(self) -> Sequence[Node]:
        """What is declared in it, in order, of templates without their parameters."""
        listed = elements(self.node.child_by_field_name("body"))
        inner = (
            elements(one)[-1:] if one.type == "template_declaration" else [one] for one in listed
        )
        return [*chain.from_iterable(inner)]


def classes_of(source: Source, word: str) -> Sequence[Class]:
    """Return the classes of this name that have a body in the file."""
    return classes(source).get(word, ())


def class_at(source: Source, path: Path) -> Class | None:
    """Return the class of this path, if it has a body in the file."""
    found = classes_of(source, path[-1]) if path else ()
    return next((one for one in found if one.path == path), None)


@lru_cache(maxsize=64)  # one file is asked about again and again
def classes(source: Source) -> Mapping[str, Sequence[Class]]:
    """Return the classes with a body, by the last word of their names."""
    found: dict[str, list[Class]] = {}
    for stack in source.stacks(_WORDS):
        node = stack[-2] if len(stack) > 1 else stack[-1]
        if node.type not in CLASSES or node.child_by_field_name("body") is None:
            continue
        words = dotted(source, node.child_by_field_name("name"))
        if words:
            bases, dependent = _bases(source, stack[:-1])
            path = (*scope_of(source, stack[:-1]).path, *words)
            found.setdefault(words[-1], []).append(Class(path, node, tuple(bases), dependent))
    return found


def every_class(source: Source) -> Iterator[Class]:
    """Yield the classes with a body anywhere in a file."""
    return chain.from_iterable(classes(source).values())


def _bases(source: Source, stack: Sequence[Node]) -> tuple[list[Path], bool]:
    """Return the bases that are known by name, and whether there are others."""
    clause = next((one for one in stack[-1].children if one.type == "base_class_clause"), None)
    named: list[Path] = []
    others = False
    parameters = {one for node in stack for one in template_parameters(source, node)}
    for one in elements(clause):
        if one.type in {"access_specifier", "virtual"}:
            continue
        words = type_words(source, one)
        if words is None or (parameters and not parameters.isdisjoint(_leaves(source, one))):
            others = True
        else:
            named.append(words)
    return named, others


def template_parameters(source: Source, node: Node | None) -> Iterator[str]:
    """Yield the names of the parameters of a template; none where a node is anything else."""
    if node is None or node.type != "template_declaration":
        return
    for one in elements(node.child_by_field_name("parameters")):
        named = one.child_by_field_name("name") or one.child_by_field_name("declarator")
        yield from _leaves(source, named or one)


def _leaves(source: Source, node: Node) -> Iterator[str]:
    """Yield the words of the names in a node."""
    pending = [node]
    while pending:
        one = pending.pop()
        pending += one.named_children
        if one.type in {"identifier", "type_identifier", "namespace_identifier"}:
            yield source.text(one)
