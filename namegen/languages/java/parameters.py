"""Names of look-ups that are parameters: of which method, and which argument fills them."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.java.definitions import Definitions
from namegen.languages.java.scopes import Scope
from namegen.languages.parameters import Parameter
from namegen.languages.sources import Source, elements
from namegen.model.facts import Expression, Ref, Unknown


def parameter(
    source: Source, definitions: Definitions, scope: Scope, name: Expression
) -> Parameter | None:
    """Return the parameter that a name is, if nothing else is put into it."""
    if not isinstance(name, Ref):
        return None
    for path in name.tries:
        if len(path) != 2 or not path[0].startswith("@"):
            continue
        found = definitions.find(path)
        if found:
            value = found[0].value
            if len(found) > 1 or not isinstance(value, Unknown):
                return None
            if not value.why.startswith("it is a param"):
                return None
            method = _scope_at(scope, path[0])
            if method is None or not method.name:
                return None
            return Parameter(method.name, method.name, _place(source, method.node, path[1]))
    return None


def _scope_at(scope: Scope | None, word: str) -> Scope | None:
    """Return the scope around a place that the ``@`` word stands for."""
    while scope is not None and scope.path != (word,):
        scope = scope.outer
    return scope


def _place(source: Source, method: Node, word: str) -> int | None:
    """Return which argument of a call fills a parameter; None for one that takes several."""
    listed = method.child_by_field_name("parameters")
    given = elements(listed) if listed is not None else []
    given = [one for one in given if one.type != "receiver_parameter"]
    for index, one in enumerate(given):
        name = one.child_by_field_name("name")
        if one.type == "formal_parameter" and name is not None and source.text(name) == word:
            return index
    return None
