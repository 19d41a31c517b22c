"""The facts of one Kotlin file, worked out on demand."""

from __future__ import annotations

from collections.abc import Sequence

from tree_sitter import Node

from namegen.languages.kotlin.definitions import Definitions
from namegen.languages.kotlin.expressions import dotted
from namegen.languages.kotlin.imports import Imports
from namegen.languages.kotlin.lookups import Finder
from namegen.languages.kotlin.marks import has_implicit, looks_up
from namegen.languages.kotlin.mending import mended
from namegen.languages.kotlin.named_values import named_values
from namegen.languages.kotlin.scopes import REGIONS, TYPES, scope_of, tries
from namegen.languages.kotlin.trees import BODIES, body_of, child_of
from namegen.languages.numbers import NumberForms
from namegen.languages.prefilters import without_receivers
from namegen.languages.readings import TreeReading
from namegen.languages.sources import Stack
from namegen.languages.stretches import merged
from namegen.model.facts import Path
from namegen.model.places import Span
from namegen.model.workspaces import LookupRule

_SIMPLE_STATEMENTS = frozenset(
    {
        "assignment",
        "call_expression",
        "enum_entry",
        "import",
        "index_expression",
        "package_header",
        "property_declaration",
        "return_expression",
        "throw_expression",
        "type_alias",
    }
)
_COMPOUND_STATEMENTS = (
    TYPES
    | BODIES
    | REGIONS
    | {
        "do_while_statement",
        "finally_block",
        "function_body",
        "if_expression",
        "object_literal",
        "source_file",
        "try_expression",
        "when_entry",
        "while_statement",
    }
)


class KotlinReading(TreeReading[Definitions, Imports]):
    """Implements `namegen.model.facts.Reading`."""

    SIMPLE = _SIMPLE_STATEMENTS
    COMPOUND = _COMPOUND_STATEMENTS
    CLASSES = "type"
    NUMBERS = NumberForms(
        literals=frozenset({"number_literal", "float_literal"}),
        products="binary_expression",
        brackets="parenthesized_expression",
        suffixes="lfu",
    )
    LOOKS_UP = looks_up
    FINDER = Finder
    NAMED_VALUES = named_values
    IDENTIFIERS = frozenset({"identifier"})

    def _parts(self) -> tuple[Definitions, Imports]:
        return Definitions(self.source), Imports(self.source)

    def _searched(self, utf8: bytes) -> Sequence[LookupRule]:
        return without_receivers(self.rules) if has_implicit(utf8) else self.rules

    @property
    def _broken(self) -> Sequence[Span]:
        unclosed = mended(self.source.data).unclosed
        return merged([*super()._broken, *unclosed]) if unclosed else super()._broken

    def _body(self, declaration: Node) -> Node | None:
        return body_of(declaration)

    def _member(self, statement: Node) -> Node | None:
        if statement.type == "property_declaration":
            return child_of(child_of(statement, "variable_declaration"), "identifier")
        if statement.type in {"object_declaration", "class_declaration"}:
            return statement.child_by_field_name("name")
        return child_of(statement, "identifier") if statement.type == "enum_entry" else None

    def _tries(self, stack: Stack, words: Path) -> tuple[Path, ...]:
        return tries(scope_of(self.source, stack), words)

    def _dotted(self, node: Node) -> Path | None:
        return dotted(self.source, node)
