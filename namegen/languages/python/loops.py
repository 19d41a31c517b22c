"""What Python loops run over, and what the names of a loop get of it."""

from __future__ import annotations

from collections.abc import Callable

from tree_sitter import Node

from namegen.languages.python.chains import EACH, KEYS, VALUES
from namegen.languages.sources import Source, elements
from namegen.model.facts import Path

_SAME_ELEMENTS = frozenset({"iter", "list", "reversed", "set", "sorted", "tuple"})


def run_over(
    source: Source, value: Node, taking: Path, is_own: Callable[[str], bool]
) -> tuple[Node, Path] | None:
    """Return the list or table that a loop runs over, and the words for what a name gets of it.

    ``taking`` are the words for what it gets of each element of ``value``; ``is_own`` tells
    the words that the program itself gives a meaning. None where only running it tells.
    """
    while value.type == "call":
        function, listed = (value.child_by_field_name(field) for field in ("function", "arguments"))
        given = elements(listed) if listed is not None else []
        if function is None or any("splat" in one.type for one in given):
            return None
        place, *rest = taking or ("",)
        if function.type == "attribute":
            method = function.child_by_field_name("attribute")
            table = function.child_by_field_name("object")
            if given or method is None or table is None or source.text(method) != "items":
                break
            return _of_items(table, place, tuple(rest))
        called = source.text(function)
        if is_own(called):
            break
        positional = [one for one in given if one.type != "keyword_argument"]
        if called in _SAME_ELEMENTS and positional:
            value = positional[0]
        elif called == "enumerate" and positional and place == "[1]":
            value, taking = positional[0], tuple(rest)
        elif called == "zip" and place in (places := [f"[{n}]" for n in range(len(positional))]):
            value, taking = positional[places.index(place)], tuple(rest)
        else:
            break
    return value, (EACH, *taking)


def _of_items(table: Node, place: str, rest: Path) -> tuple[Node, Path] | None:
    """Return what is got of ``table.items()``: each key or each value."""
    if place == "[1]":
        return table, (VALUES, EACH, *rest)
    return (table, (KEYS, EACH)) if place == "[0]" and not rest else None
