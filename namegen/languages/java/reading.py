"""The facts of one Java file, worked out on demand."""

from __future__ import annotations

from tree_sitter import Node

from namegen.languages.java.definitions import Definitions
from namegen.languages.java.expressions import dotted
from namegen.languages.java.imports import Imports
from namegen.languages.java.lookups import Finder
from namegen.languages.java.marks import looks_up
from namegen.languages.java.named_values import named_values
from namegen.languages.java.scopes import TYPES, scope_of, tries
from namegen.languages.numbers import NumberForms
from namegen.languages.readings import TreeReading
from namegen.languages.sources import Stack, same
from namegen.model.facts import Path

_SIMPLE_STATEMENTS = frozenset(
    {
        "assert_statement",
        "break_statement",
        "constant_declaration",
        "continue_statement",
        "expression_statement",
        "field_declaration",
        "import_declaration",
        "local_variable_declaration",
        "package_declaration",
        "return_statement",
        "throw_statement",
        "yield_statement",
    }
)
_COMPOUND_STATEMENTS = TYPES | {
    "block",
    "class_body",
    "constructor_declaration",
    "do_statement",
    "enhanced_for_statement",
    "enum_body",
    "for_statement",
    "if_statement",
    "interface_body",
    "method_declaration",
    "program",
    "static_initializer",
    "switch_expression",
    "synchronized_statement",
    "try_statement",
    "try_with_resources_statement",
    "while_statement",
}
_MEMBERS = frozenset({"field_declaration", "constant_declaration", "enum_constant"})


class JavaReading(TreeReading[Definitions, Imports]):
    """Implements `namegen.model.facts.Reading`."""

    SIMPLE = _SIMPLE_STATEMENTS
    COMPOUND = _COMPOUND_STATEMENTS
    CLASSES = "type"
    NUMBERS = NumberForms(
        literals=frozenset(
            {
                "decimal_integer_literal",
                "hex_integer_literal",
                "octal_integer_literal",
                "binary_integer_literal",
                "decimal_floating_point_literal",
            }
        ),
        products="binary_expression",
        brackets="parenthesized_expression",
        suffixes="lfd",
    )
    LOOKS_UP = looks_up
    FINDER = Finder
    NAMED_VALUES = named_values
    IDENTIFIERS = frozenset({"identifier", "type_identifier"})

    def _parts(self) -> tuple[Definitions, Imports]:
        return Definitions(self.source), Imports(self.source)

    def _member(self, statement: Node) -> Node | None:
        if statement.type not in _MEMBERS:
            return None
        return (statement.child_by_field_name("declarator") or statement).child_by_field_name(
            "name"
        )

    def _tries(self, stack: Stack, words: Path) -> tuple[Path, ...]:
        return tries(scope_of(self.source, stack), words)

    def _stands_alone(self, stack: Stack) -> bool:
        leaf, parent = stack[-1], stack[-2]
        if any(node.type == "import_declaration" for node in stack):
            return stack[-3].type == "import_declaration" and parent.end_byte == leaf.end_byte
        named = (parent.child_by_field_name(field) for field in ("name", "field"))
        return leaf.type == "identifier" and not any(same(one, leaf) for one in named)

    def _dotted(self, node: Node) -> Path | None:
        return dotted(self.source, node)
