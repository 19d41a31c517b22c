"""Names of look-ups that are parameters: of which function, and how a call fills them."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.kotlin.definitions import Definitions
from namegen.languages.kotlin.trees import child_of
from namegen.languages.parameters import Parameter, bound_as_parameter
from namegen.languages.sources import Source, elements
from namegen.model.facts import Expression

_LISTS = ("function_value_parameters", "class_parameters")


def parameter(source: Source, definitions: Definitions, name: Expression) -> Parameter | None:
    """Return the parameter that a name is, if nothing else is put into it."""
    binding = bound_as_parameter(name, definitions.bound_at)
    if binding is None or not binding.within.name:
        return None
    scope = binding.within
    word = source.text(binding.name)
    constructs = scope.node.type == "secondary_constructor"
    owner = scope.outer if constructs else None
    called = owner.name if owner is not None else scope.name
    at, key = _filling(source, scope.node, word)
    return Parameter(called, called, at, key)


def _filling(source: Source, function: Node, word: str) -> tuple[int | None, str | None]:
    """Return the place and the name by which a call fills a parameter; a ``vararg`` has none."""
    listed = child_of(function, *_LISTS) or child_of(
        child_of(function, "primary_constructor"), "class_parameters"
    )
    several = False
    place = 0
    for one in elements(listed):
        if one.type in {"parameter_modifiers", "modifiers"}:
            several = "vararg" in source.text(one)
        elif one.type in {"parameter", "class_parameter"}:
            name = child_of(one, "identifier")
            words = source.text(one).split()
            if name is not None and source.text(name) == word:
                return (None, None) if several or "vararg" in words else (place, word)
            place += 1
            several = False
    return None, None
