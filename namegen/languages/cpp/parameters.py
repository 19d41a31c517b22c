"""Names of look-ups that are parameters: of which function, and which argument fills them."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.cpp.declarators import PARAMETERS
from namegen.languages.cpp.definitions import Definitions
from namegen.languages.cpp.scopes import function_declarator
from namegen.languages.parameters import Parameter, bound_as_parameter
from namegen.languages.sources import Source, elements, field_of
from namegen.model.facts import Expression


def parameter(source: Source, definitions: Definitions, name: Expression) -> Parameter | None:
    """Return the parameter that a name is, if nothing else is put into it."""
    bound = bound_as_parameter(name, definitions.bound_at)
    if bound is None or not bound.within.name:
        return None
    function = bound.within
    return Parameter(function.name, function.name, _place(function.node, bound.name))


def _place(function: Node, name: Node) -> int | None:
    """Return which argument of a call fills a parameter; None for one that takes several."""
    declarator = function_declarator(function)
    for index, one in enumerate(elements(field_of(declarator, "parameters"))):
        if one.start_byte <= name.start_byte < one.end_byte:
            several = one.type not in PARAMETERS or one.type.startswith("variadic")
            return None if several else index
    return None
