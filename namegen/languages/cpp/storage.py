"""How what C++ code declares is kept: constant or not, for all objects of a class, elsewhere."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from tree_sitter import Node

from namegen.languages.cpp.declarators import Declared
from namegen.languages.cpp.names import LETTERS, dotted
from namegen.languages.cpp.openings import every_opening
from namegen.languages.cpp.scopes import Scope
from namegen.languages.sources import Source, Stack

_STORAGE = "storage_class_specifier"


def is_array(source: Source, found: Declared) -> bool:
    """Whether a variable is an array, by its brackets or as ``typedef char Name[9];`` says."""
    if "array_declarator" in found.parts:
        return True
    words = dotted(source, found.type)
    letters = (one.local for one in every_opening(source) if one.target == (LETTERS,))
    return bool(words and words[-1] in letters)


def fixed_as(
    source: Source, stack: Stack, found: Declared, *, shared: bool
) -> Literal["", "built", "always"]:
    """Return whether what is declared is constant, for a member once its object is made."""
    if not _is_constant(source, stack, found):
        return ""
    return "always" if shared else "built"


def _is_constant(source: Source, stack: Stack, found: Declared) -> bool:
    """Whether the variable itself is ``const`` or ``constexpr``, not only what it points to."""
    words = {*_qualifiers(source, found.statement)}
    if "constexpr" in words:
        return True
    pointers = (one for one in reversed(stack[found.place :]) if one.type == "pointer_declarator")
    pointer = next(pointers, None)
    return "const" in (words if pointer is None else {*_qualifiers(source, pointer)})


def is_shared(source: Source, found: Declared) -> bool:
    """Whether all objects of a class have a member of it in common."""
    stored = {one.text for one in found.statement.children if one.type == _STORAGE}
    return b"static" in stored or "constexpr" in {*_qualifiers(source, found.statement)}


def _qualifiers(source: Source, node: Node) -> Iterator[str]:
    return (source.text(one) for one in node.children if one.type == "type_qualifier")


def is_elsewhere(found: Declared, scope: Scope) -> bool:
    """Whether a variable without a value gets it in another place, perhaps of another file."""
    words = {one.text for one in found.statement.children if one.type == _STORAGE}
    return b"extern" in words or (b"static" in words and scope.sort == "type")
