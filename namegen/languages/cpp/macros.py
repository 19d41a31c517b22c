"""Macros of C++: what stands behind ``#define`` is plain text to the parser, so it is parsed anew.

A tree of its own with the offsets of the file: what lies before is blanked out, and a
function is put around the text in place of the ``#define`` itself.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import lru_cache
from typing import NamedTuple

from tree_sitter import Node

from namegen.languages.cpp.grammar import parser
from namegen.languages.sources import Source, Stack, elements, field_of, occurrences
from namegen.model.places import Span

_DEFINE = re.compile(rb"^[ \t]*#[ \t]*define\b", re.MULTILINE)
_DEFINES = frozenset({"preproc_def", "preproc_function_def"})
_TO_BLOCK = 3
"""Nodes from the root to the block that was put around the text of a macro."""
_FUNCTION = "f"
_BEFORE, _AFTER = b"v f(){", b"\n;}"


def body_of(source: Source, define: Node) -> Source | None:
    """Return what a macro stands for, as the body of a function at the offsets of the file."""
    value = define.child_by_field_name("value")
    if value is None or value.start_byte < len(_BEFORE):
        return None
    start, end = value.start_byte - len(_BEFORE), value.end_byte + len(_AFTER)
    text = source.data[value.start_byte : value.end_byte]
    whole = b" " * start + _BEFORE + text + _AFTER
    return Source(whole, parser(), (start, end))  # only what lies between these is parsed


def _root_of(body: Source) -> Node | None:
    return next((stack[0] for stack in body.stacks([_FUNCTION])), None)


def root_around(source: Source, span: Span) -> Node:
    """Return the root of the tree in which a stretch lies: the text of a macro has its own."""
    define = source.root.descendant_for_byte_range(span.start, span.end)
    while define is not None and define.type not in _DEFINES:
        define = define.parent
    body = body_of(source, define) if define is not None else None
    root = _root_of(body) if body is not None else None
    return root if root is not None else source.root


def macro_value(source: Source, define: Node) -> Node | None:
    """Return the one expression that a macro stands for, or None where it is anything else."""
    body = body_of(source, define)
    root = _root_of(body) if body is not None else None
    if root is None or root.has_error:
        return None
    function = next(iter(elements(root)), None)
    statements = elements(field_of(function, "body"))
    if len(statements) != 1 or statements[0].type != "expression_statement":
        return None
    return next(iter(elements(statements[0])), None)


class Macro(NamedTuple):
    """A macro with its name, its parameters, and what it stands for as the body of a function."""

    define: Node
    name: str
    parameters: tuple[str, ...]
    body: Source

    def block(self, stack: Stack) -> list[Node]:
        """Return a stack in the body without the function that was put around it."""
        return [stack[0], *stack[_TO_BLOCK:]]


def macros_with(source: Source, words: Iterable[str]) -> Iterator[Macro]:
    """Yield the macros in whose text one of the words may stand, in order."""
    for define in _defines(source):
        value = define.child_by_field_name("value")
        if value is None:
            continue
        text = source.data[value.start_byte : value.end_byte]
        holds = any(next(occurrences(text, word), None) for word in words)
        macro = _macro(source, define) if holds else None
        if macro is not None:
            yield macro


@lru_cache(maxsize=64)  # one file is asked about again and again
def _defines(source: Source) -> Sequence[Node]:
    """Return the definitions of macros, in order."""
    found: list[Node] = []
    for place in _DEFINE.finditer(source.data):
        define = source.root.descendant_for_byte_range(place.end() - 1, place.end())
        while define is not None and define.type not in _DEFINES:
            define = define.parent
        found += [define] if define is not None else []
    return found


@lru_cache(maxsize=64)
def called_macros(source: Source) -> Mapping[str, Node]:
    """Return the macros with parameters that a file defines, by name."""
    found: dict[str, Node] = {}
    for define in _defines(source):
        name = define.child_by_field_name("name")
        if define.type == "preproc_function_def" and name is not None:
            found[source.text(name)] = define
    return found


def macro_of(source: Source, called: str) -> Macro | None:
    """Return the macro with parameters that a call is of, if the file defines it."""
    define = called_macros(source).get(called)
    return _macro(source, define) if define is not None else None


def _macro(source: Source, define: Node) -> Macro | None:
    name, body = define.child_by_field_name("name"), body_of(source, define)
    if name is None or body is None:
        return None
    listed = define.child_by_field_name("parameters")
    given = tuple(source.text(one) for one in elements(listed)) if listed else ()
    return Macro(define, source.text(name), given, body)
