"""The facts of one C++ file, worked out on demand."""

from __future__ import annotations

from collections.abc import Sequence

from tree_sitter import Node

from namegen.languages.cpp.definitions import Definitions
from namegen.languages.cpp.includes import Includes
from namegen.languages.cpp.lookups import Finder
from namegen.languages.cpp.marks import looks_up
from namegen.languages.cpp.named_values import named_values
from namegen.languages.cpp.names import dotted, type_words, whole_name
from namegen.languages.cpp.openings import tries
from namegen.languages.cpp.scopes import CLASSES, scope_of
from namegen.languages.numbers import NumberForms
from namegen.languages.readings import TreeReading
from namegen.languages.sources import Stack
from namegen.model.facts import Import, Path

_SIMPLE_STATEMENTS = frozenset(
    {
        "alias_declaration",
        "break_statement",
        "continue_statement",
        "declaration",
        "expression_statement",
        "field_declaration",
        "friend_declaration",
        "goto_statement",
        "namespace_alias_definition",
        "preproc_call",
        "preproc_def",
        "preproc_function_def",
        "preproc_include",
        "return_statement",
        "static_assert_declaration",
        "throw_statement",
        "type_definition",
        "using_declaration",
    }
)
_COMPOUND_STATEMENTS = CLASSES | {
    "case_statement",
    "compound_statement",
    "declaration_list",
    "do_statement",
    "enum_specifier",
    "field_declaration_list",
    "for_range_loop",
    "for_statement",
    "function_definition",
    "if_statement",
    "linkage_specification",
    "namespace_definition",
    "preproc_elif",
    "preproc_else",
    "preproc_if",
    "preproc_ifdef",
    "switch_statement",
    "template_declaration",
    "translation_unit",
    "try_statement",
    "while_statement",
}


class CppReading(TreeReading[Definitions, Includes]):
    """Implements `namegen.model.facts.Reading`."""

    SIMPLE = _SIMPLE_STATEMENTS
    COMPOUND = _COMPOUND_STATEMENTS
    CLASSES = "class"
    NUMBERS = NumberForms(
        literals=frozenset({"number_literal"}),
        products="binary_expression",
        brackets="parenthesized_expression",
        suffixes="ulfz",
    )
    LOOKS_UP = looks_up
    FINDER = Finder
    NAMED_VALUES = named_values
    IDENTIFIERS = frozenset({"identifier", "field_identifier", "type_identifier"})

    def _parts(self) -> tuple[Definitions, Includes]:
        return Definitions(self.source), Includes(self.source)

    def declared_type(self, path: Path) -> Path | None:
        """Return the type of the member that the path is declared as."""
        for one in self.bound.bound_at(path):
            if one.way in {"empty", "value"} and not one.points and not one.many:
                return type_words(self.source, one.declared)
        return None

    @property
    def included(self) -> Sequence[Import]:
        """The files that are included, and the sources of headers."""
        return self.imports.files

    @property
    def spaces(self) -> Sequence[Path]:
        """The namespaces that the file opens, each once."""
        found = (
            (*scope_of(self.source, stack[:-2]).path, *words)
            for stack in self.source.stacks(["namespace"])
            if stack[-2].type == "namespace_definition"
            and (words := dotted(self.source, stack[-2].child_by_field_name("name")))
        )
        return tuple(dict.fromkeys(found))

    def _member(self, statement: Node) -> Node | None:
        found: Node | None = statement if statement.type == "field_declaration" else None
        while found is not None and found.type != "field_identifier":
            found = found.child_by_field_name("declarator")
        return found

    def _tries(self, stack: Stack, words: Path) -> tuple[Path, ...]:
        return tries(self.source, scope_of(self.source, stack), words)

    def _dotted(self, node: Node) -> Path | None:
        return dotted(self.source, whole_name(node))
