"""Where a Java name gets a value: fields, locals, parameters, enum constants, types."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.java.scopes import scope_of
from namegen.languages.java.types import base_types, modifiers_of
from namegen.languages.owned_bindings import WordBindings
from namegen.languages.owned_names import Binding, Change
from namegen.languages.scopes import Scope
from namegen.languages.sources import Stack, is_field, same


class JavaBindings(WordBindings):
    """Finds all bindings of one word in a Java file."""

    def _is_alone(self, stack: Stack) -> bool:
        leaf, above = stack[-1], stack[-2]
        if above.type in {"field_access", "scoped_identifier"}:
            return same(above.named_children[0], leaf)
        is_method = above.type == "method_invocation"
        return not (is_method and is_field(above, "name", leaf))

    def _change(self, stack: Stack) -> Change | None:
        place, whose = _whole(stack)
        scopes = self._scopes(scope_of(self.source, stack), whose)
        return self._changed(stack, place, scopes, None if scopes else whose)

    def _scopes(self, scope: Scope, whose: Node | None) -> tuple[Scope, ...]:
        """Return the scopes that may declare a name, innermost first; none for any object's.

        ``whose`` stands before it: ``this``, or a type around that is named.
        """
        if whose is None:
            return tuple(scope.enclosing)
        types = [one for one in scope.enclosing if one.sort != "region"]
        if whose.type == "this":
            return tuple(types)
        return tuple(one for one in types if one.name == self.source.text(whose))

    def _is_variable(self, declaration: Binding) -> bool:
        declarator = declaration.name.parent
        statement = declarator.parent if declarator is not None else None
        return statement is not None and "final" not in modifiers_of(self.source, statement)

    def _opens_more(self, scope: Scope) -> bool:
        is_type = scope.sort == "anonymous" or scope.node.type == "class_declaration"
        return is_type and bool(base_types(self.source, scope.node))


def _whole(stack: Stack) -> tuple[int, Node | None]:
    """Return where ``name`` or ``boat.name`` stands, and what stands before it."""
    above = stack[-2]
    whose = above.child_by_field_name("object") if above.type == "field_access" else None
    if whose is None or not is_field(above, "field", stack[-1]):
        return len(stack) - 1, None
    return len(stack) - 2, whose
