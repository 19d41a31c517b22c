"""The types of a Java file, and of which of them the objects are that it names."""

from __future__ import annotations

from collections.abc import Iterator

from tree_sitter import Node

from namegen.languages.families import Families, Kin
from namegen.languages.java.declarations import declared
from namegen.languages.java.scopes import TYPES, scope_of, tries
from namegen.languages.java.types import base_types, type_words
from namegen.languages.owned_names import Naming
from namegen.languages.scopes import Scope
from namegen.languages.sources import Stack, elements

_KEYWORDS = ("class", "enum", "interface", "new", "record")
_MADE = "object_creation_expression"


class JavaFamilies(Families):
    """Knows the types of one Java file."""

    NAMING = Naming(
        declared=declared,
        scope_of=scope_of,
        tries=tries,
        base_types=base_types,
        type_words=type_words,
        assignment="assignment_expression",
        top="Object",
    )

    def _types(self) -> Iterator[Kin]:
        for stack in self.source.stacks(_KEYWORDS):
            node = stack[-2] if len(stack) > 1 else stack[-1]
            bodies = (one.type == "class_body" for one in node.named_children)
            if node.type in TYPES or (node.type == _MADE and any(bodies)):
                bases = tuple(words[-1] for words in base_types(self.source, node))
                yield Kin(self.source.text(node.child_by_field_name("name")), node, bases)

    def class_of(self, stack: Stack, scope: Scope) -> str:
        """Return the name of the class of the object at the end of a stack; empty if not told."""
        node: Node | None = stack[-1]
        while node is not None and node.type == "parenthesized_expression":
            node = next(iter(elements(node)), None)
        if node is None:
            return ""
        match node.type:
            case "cast_expression" | "object_creation_expression":
                return self._of_type(node.child_by_field_name("type"))
            case "super":
                return self._base_of(scope.type)
            case "array_access":
                return self._of_variable(node.child_by_field_name("array"), scope, is_array=True)
        return self._of_variable(node, scope)

    def _of_variable(self, node: Node | None, scope: Scope, is_array: bool = False) -> str:
        """Return the class that a variable, or an array, is declared with; a type's is itself."""
        scopes = list(scope.enclosing)
        if node is not None and node.type == "field_access":
            own = node.child_by_field_name("object")
            is_own = own is not None and own.type == "this" and scope.type is not None
            scopes = [scope.type] if is_own and scope.type is not None else []
            node = node.child_by_field_name("field")
        if node is None or node.type != "identifier":
            return ""
        word = self.source.text(node)
        binding = self.variable(word, scopes)
        if binding is None or binding.way == "type":
            return word if scopes and word[:1].isupper() else ""
        kind = binding.declared
        if is_array:
            is_one = kind is not None and kind.type == "array_type"
            return self._of_type(kind.child_by_field_name("element")) if is_one and kind else ""
        made = binding.value if kind is None or self.source.text(kind) == "var" else None
        if made is not None and made.type == _MADE:
            kind = made.child_by_field_name("type")
        return self._of_type(kind)
