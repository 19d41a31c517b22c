"""Elements of C++ lists that are written out: ``names[1]`` of ``{"bow", "stern"}``."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

from tree_sitter import Node

from namegen.languages.cpp.binding import Binding
from namegen.languages.cpp.names import dotted
from namegen.languages.sources import Source, elements
from namegen.model.facts import Path


def is_written_out(one: Binding) -> bool:
    """Whether the value of a list is a list of values itself, and no other name of one."""
    return one.value is not None and one.value.type == "initializer_list"


def numbered(source: Source, one: Binding, indices: Path) -> Node | None:
    """Return the element with these numbers; None where none is written out for them."""
    node, kind = one.value, dotted(source, one.declared)
    in_array = bool(kind) and kind is not None and kind[-1] == "array"
    for index in indices:
        given = _listed(node) if node is not None and node.type == "initializer_list" else ()
        if in_array and len(given) == 1 and given[0].type == "initializer_list":
            given = _listed(given[0])  # `std::array<T, 2> both = {{"bow", "stern"}}`
        at = int(index.strip("[]"))
        node = given[at] if at < len(given) else None
    is_named = node is not None and node.type in {"initializer_list", "initializer_pair"}
    return None if is_named else node


@lru_cache(maxsize=64)  # one list is asked for one element after the other
def _listed(node: Node) -> Sequence[Node]:
    return elements(node)
