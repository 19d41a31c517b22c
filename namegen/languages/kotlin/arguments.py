"""What a look-up of Kotlin is given: by place and by name."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.kotlin.trees import argument_value, key_of
from namegen.languages.sources import Source, elements
from namegen.languages.uses import placed


class Arguments(Struct, frozen=True):
    """The arguments of one call, annotation or subscript."""

    positional: tuple[Node, ...]
    keyed: dict[str, Node]

    def placed(self, places: Sequence[int] | Literal["rest"]) -> list[Node]:
        """Return the arguments at so many places."""
        return placed(self.positional, places)


def arguments(source: Source, given: Node) -> Arguments:
    """Return what stands in the brackets of a call or a subscript, or behind an infix call."""
    if given.type == "infix_expression":
        return Arguments(tuple(elements(given)[2:]), {})
    if given.type == "parenthesized_expression":
        return Arguments(tuple(elements(given)), {})
    if given.type == "index_expression":
        return Arguments(tuple(elements(given)[1:]), {})
    positional: list[Node] = []
    keyed: dict[str, Node] = {}
    for one in elements(given):
        key, value = key_of(one), argument_value(one)
        if value is None:
            continue
        if key is None:
            positional.append(value)
        else:
            keyed[source.text(key)] = value
    return Arguments(tuple(positional), keyed)
