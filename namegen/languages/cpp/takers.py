"""Functions of a C++ file that are given a variable: by which name each of them knows it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache

from tree_sitter import Node

from namegen.languages.cpp.declarators import INDIRECT, PARAMETERS, nested
from namegen.languages.cpp.names import is_constant
from namegen.languages.cpp.scopes import function_declarator
from namegen.languages.cpp.variable_uses import Answer, Follow, Use
from namegen.languages.sources import Source, elements, field_of

_HOLDERS = frozenset({"declaration", "field_declaration", "function_definition"})
_LOOSE = frozenset({"reference_declarator", "abstract_reference_declarator"})
_POINTING = frozenset(
    {"abstract_array_declarator", "abstract_pointer_declarator", "array_declarator"}
    | {"pointer_declarator"}
)
_OUTER = INDIRECT | {"function_declarator"}


def taken(use: Use, word: str, place: int | None) -> Answer:
    """Return what the file's functions of a name do with the argument at a place.

    ``place`` is None where it may be any of theirs. A function that only says that it takes a
    reference or a pointer may change what it gets; of one with a body the body tells.
    """
    source = use.file or use.source
    known = takers(source, word)
    with_body = {len(elements(listed)) for holder, listed in known if _body(holder) is not None}
    names: list[tuple[Node, Node]] = []
    pointed, inside = False, use.inside
    for holder, listed in known:
        body = _body(holder)
        if body is None and len(elements(listed)) in with_body:
            continue  # it is said what it does where it has one
        for one in _parameters(listed, place):
            ways = {each.type for each in _declarators(one)}
            is_loose = bool(ways & (_LOOSE | _POINTING)) or use.inside
            if not is_loose or is_constant(source, one):
                continue
            name = _name(one)
            if body is not None and name is not None:
                names.append((name, body))
                inside = inside or not ways & _LOOSE
            elif ways & _LOOSE or use.inside:
                return "altered"
            else:
                pointed = True
    if names:
        return Follow(tuple(names), inside, pointed)
    return "pointed" if pointed else None


def _body(holder: Node) -> Node | None:
    return holder.child_by_field_name("body")


@lru_cache(maxsize=256)  # the functions of one file are asked about again and again
def takers(source: Source, word: str) -> Sequence[tuple[Node, Node]]:
    """Return the functions and lambdas of a name, each with its parameters."""
    found: list[tuple[Node, Node]] = []
    for stack in source.stacks([word]):
        place = len(stack) - 2
        while place > 0 and stack[place].type in {"qualified_identifier", "template_function"}:
            place -= 1
        above = stack[place] if place > 0 else None
        if above is None:
            continue
        holder: Node | None = None
        if above.type == "function_declarator":
            while place > 0 and stack[place].type in _OUTER:
                place -= 1
            holder = stack[place] if stack[place].type in _HOLDERS else None
        elif above.type == "init_declarator":
            value = above.child_by_field_name("value")
            holder = value if value is not None and value.type == "lambda_expression" else None
        declarator = function_declarator(holder) if holder is not None else None
        listed = field_of(declarator, "parameters")
        if holder is not None and listed is not None:
            found.append((holder, listed))
    return found


def _parameters(listed: Node, place: int | None) -> Iterator[Node]:
    """Yield the parameters that an argument at a place may fill."""
    every = [one for one in elements(listed) if one.type in PARAMETERS]
    for at, one in enumerate(every):
        if place is None or at == place or (at < place and one.type.startswith("variadic")):
            yield one


def _declarators(parameter: Node) -> Iterator[Node]:
    return nested(parameter.child_by_field_name("declarator"), _LOOSE)


def _name(parameter: Node) -> Node | None:
    found = [*_declarators(parameter)]
    last = found[-1] if found else None
    if last is not None and last.type == "variadic_declarator":
        last = next(iter(last.named_children), None)
    return last if last is not None and last.type == "identifier" else None
