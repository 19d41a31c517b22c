"""Names of look-ups that are parameters: of which function, and how a call fills them."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.parameters import Parameter, bound_as_parameter
from namegen.languages.python.definitions import Definitions
from namegen.languages.python.scopes import Scope
from namegen.languages.python.signatures import signature
from namegen.languages.sources import Source, same
from namegen.model.facts import Expression

_CONSTRUCTORS = frozenset({"__init__", "__new__"})


def parameter(source: Source, definitions: Definitions, name: Expression) -> Parameter | None:
    """Return the parameter that a name is, if nothing else is put into it."""
    bound = bound_as_parameter(name, definitions.bound_at)
    return _parameter(source, bound.scope, bound.name) if bound and bound.scope.name else None


def _parameter(source: Source, function: Scope, name: Node) -> Parameter:
    own = next((one for one in signature(source, function) if same(one.name, name)), None)
    at, key = (own.at, own.key) if own is not None else (None, None)
    owner = function.outer
    constructs = owner is not None and owner.sort == "class" and function.name in _CONSTRUCTORS
    called = owner.name if constructs and owner is not None else function.name
    return Parameter(function.name, called, at, key)
