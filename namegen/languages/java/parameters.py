"""Names of look-ups that are parameters: of which method, and which argument fills them."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.java.definitions import Definitions
from namegen.languages.parameters import Parameter, bound_as_parameter
from namegen.languages.sources import Source, elements
from namegen.model.facts import Expression


def parameter(source: Source, definitions: Definitions, name: Expression) -> Parameter | None:
    """Return the parameter that a name is, if nothing else is put into it."""
    bound = bound_as_parameter(name, definitions.bound_at)
    if bound is None or not bound.within.name:
        return None
    method = bound.within
    return Parameter(method.name, method.name, _place(source, method.node, source.text(bound.name)))


def _place(source: Source, method: Node, word: str) -> int | None:
    """Return which argument of a call fills a parameter; None for one that takes several."""
    given = elements(method.child_by_field_name("parameters"))
    given = [one for one in given if one.type != "receiver_parameter"]
    for index, one in enumerate(given):
        name = one.child_by_field_name("name")
        if one.type == "formal_parameter" and name is not None and source.text(name) == word:
            return index
    return None
