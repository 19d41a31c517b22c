"""The types of a Kotlin file, and of which of them the objects are that it names."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from tree_sitter import Node

from namegen.languages.families import Families, Kin
from namegen.languages.kotlin.declarations import declared
from namegen.languages.kotlin.expressions import dotted, opened
from namegen.languages.kotlin.scopes import TYPES, has_receiver, scope_of, tries
from namegen.languages.kotlin.trees import called_of, last_name
from namegen.languages.kotlin.types import base_types, type_words
from namegen.languages.owned_names import Binding, Naming
from namegen.languages.scopes import Scope
from namegen.languages.sources import Stack, named_child

_KEYWORDS = ("class", "interface", "object")


class KotlinFamilies(Families):
    """Knows the types of one Kotlin file."""

    NAMING = Naming(
        declared=declared,
        scope_of=scope_of,
        tries=tries,
        base_types=base_types,
        type_words=type_words,
        assignment="assignment",
        top="Any",
    )

    def _types(self) -> Iterator[Kin]:
        for stack in self.source.stacks(_KEYWORDS):
            node = stack[-2] if len(stack) > 1 else stack[-1]
            if node.type not in TYPES | {"object_literal"}:
                continue
            named = node
            if node.type == "companion_object":  # its members are said by the name of the class
                named = next((one for one in stack[-3::-1] if one.type in TYPES), node)
            name = named.child_by_field_name("name")
            bases = tuple(words[-1] for words in base_types(self.source, node))
            yield Kin(self.source.text(name), node, bases)

    def class_of(self, stack: Stack, scope: Scope) -> str:
        """Return the name of the class of the object at the end of a stack; empty if not told."""
        node = opened(stack[-1]) if stack[-1].type == "unary_expression" else stack[-1]
        if node.type == "super_expression":
            return self._base_of(scope.type)
        if node.type == "navigation_expression" and dotted(self.source, node) is not None:
            first, last = named_child(node, 0), last_name(node)
            is_own = first is not None and first.type == "this_expression" and scope.type
            return self._of_variable(last, [scope.type]) if is_own and scope.type else ""
        if node.type == "identifier":
            return self._of_variable(node, list(scope.enclosing))
        return self._of_value(node)

    def _of_variable(self, name: Node | None, scopes: Sequence[Scope]) -> str:
        """Return the class that a variable is declared with or made of; a type's is itself."""
        word = self.source.text(name)
        binding = self.variable(word, scopes)
        if self._may_be_received(binding, scopes):
            return ""
        if binding is None or binding.way == "type":
            return word if word[:1].isupper() else ""
        if binding.declared is not None:
            return self._of_type(binding.declared)
        is_value = binding.way == "value" and binding.value is not None
        return self._of_value(binding.value) if is_value and binding.value is not None else ""

    def _may_be_received(self, binding: Binding | None, scopes: Sequence[Scope]) -> bool:
        """Whether a variable may be a member of what a lambda or a function is called on."""
        for scope in scopes:
            if binding is not None and scope.node.id == binding.owner:
                return False
            if scope.sort == "region" and has_receiver(scope.node):
                return binding is None or binding.within.sort != "region"
        return False

    def _of_value(self, value: Node) -> str:
        """Return the class of what a value makes, or is taken for."""
        while value.type == "parenthesized_expression" and value.named_child_count:
            value = value.named_children[0]
        if value.type == "as_expression":
            return self._of_type(named_child(value, 1))
        words = dotted(self.source, called_of(value)) if value.type == "call_expression" else None
        is_class = words is not None and words[-1][:1].isupper() and self.is_made(words[-1])
        return words[-1] if words is not None and is_class else ""
