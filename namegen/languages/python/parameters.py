"""Names of look-ups that are parameters: of which function, and how a call fills them."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.parameters import Parameter, bound_as_parameter
from namegen.languages.python.definitions import Definitions
from namegen.languages.python.scopes import Scope, own_name
from namegen.languages.sources import Source, elements, named_child, same
from namegen.model.facts import Expression

_CONSTRUCTORS = frozenset({"__init__", "__new__"})
_KEYWORDS_FOLLOW = frozenset({"list_splat_pattern", "keyword_separator"})


def parameter(source: Source, definitions: Definitions, name: Expression) -> Parameter | None:
    """Return the parameter that a name is, if nothing else is put into it."""
    bound = bound_as_parameter(name, definitions.bound_at)
    return _parameter(source, bound.scope, bound.name) if bound and bound.scope.name else None


def _parameter(source: Source, function: Scope, name: Node) -> Parameter:
    at, key = _filling(source, function, name)
    owner = function.outer
    constructs = owner is not None and owner.sort == "class" and function.name in _CONSTRUCTORS
    called = owner.name if constructs and owner is not None else function.name
    return Parameter(function.name, called, at, key)


def _filling(source: Source, function: Scope, name: Node) -> tuple[int | None, str | None]:
    """Return the place and the keyword by which a call fills a parameter."""
    listed = function.node.child_by_field_name("parameters")
    parameters = elements(listed) if listed is not None else []
    if own_name(source, function) is not None and not _static(source, function):
        parameters = parameters[1:]
    slash = next((i for i, p in enumerate(parameters) if p.type == "positional_separator"), 0)
    key: str | None = source.text(name)
    place: int | None = 0
    for index, one in enumerate(parameters):
        if one.type == "positional_separator":
            continue
        gathers = _gathers(one)
        if _named(one, name):
            return (None, None) if gathers else (place, key if index >= slash else None)
        if gathers or one.type in _KEYWORDS_FOLLOW:
            place = None
        elif place is not None:
            place += 1
    return None, None


def _named(parameter: Node, name: Node) -> bool:
    """Whether the parameter bears this name; its type and its default do not count."""
    node: Node | None = parameter
    while node is not None and node.type != "identifier":
        node = node.child_by_field_name("name") or next(iter(elements(node)), None)
    return same(node, name)


def _gathers(parameter: Node) -> bool:
    """Whether the parameter takes all arguments that are left: ``*names``, ``**options``."""
    first = named_child(parameter, 0) if parameter.type == "typed_parameter" else parameter
    return first is not None and first.type in {"list_splat_pattern", "dictionary_splat_pattern"}


def _static(source: Source, function: Scope) -> bool:
    """Whether the function of a class gets neither its object nor its class."""
    above = function.node.parent
    if above is None or above.type != "decorated_definition":
        return False
    marks = [source.text(one) for one in elements(above) if one.type == "decorator"]
    return any(mark.strip("@ ") == "staticmethod" for mark in marks)
