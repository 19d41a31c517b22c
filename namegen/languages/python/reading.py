"""The facts of one Python file, worked out on demand."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cached_property

from tree_sitter import Node

from namegen.languages.numbers import NumberForms
from namegen.languages.python.definitions import Definitions
from namegen.languages.python.expressions import dotted
from namegen.languages.python.imports import Imports
from namegen.languages.python.joints import joints
from namegen.languages.python.lookups import Finder
from namegen.languages.python.marks import looks_up
from namegen.languages.python.named_values import named_values
from namegen.languages.python.scopes import scope_of, tries
from namegen.languages.python.validity import compiles
from namegen.languages.readings import TreeReading
from namegen.languages.sources import Stack, named_child
from namegen.model.facts import Path

_SIMPLE_STATEMENTS = frozenset(
    {
        "expression_statement",
        "assert_statement",
        "break_statement",
        "continue_statement",
        "delete_statement",
        "exec_statement",
        "future_import_statement",
        "global_statement",
        "import_from_statement",
        "import_statement",
        "nonlocal_statement",
        "pass_statement",
        "print_statement",
        "raise_statement",
        "return_statement",
        "type_alias_statement",
    }
)
_COMPOUND_STATEMENTS = frozenset(
    {
        "block",
        "class_definition",
        "decorated_definition",
        "for_statement",
        "function_definition",
        "if_statement",
        "match_statement",
        "module",
        "try_statement",
        "while_statement",
        "with_statement",
    }
)


class PythonReading(TreeReading[Definitions, Imports]):
    """Implements `namegen.model.facts.Reading`."""

    SIMPLE = _SIMPLE_STATEMENTS
    COMPOUND = _COMPOUND_STATEMENTS
    CLASSES = "class"
    NUMBERS = NumberForms(
        literals=frozenset({"integer", "float"}),
        products="binary_operator",
        brackets="parenthesized_expression",
    )
    LOOKS_UP = looks_up
    IDENTIFIERS = frozenset({"identifier"})
    FINDER = Finder
    NAMED_VALUES = named_values

    def _joints(self, utf8: bytes) -> Sequence[int]:
        return joints(utf8)

    def _parts(self) -> tuple[Definitions, Imports]:
        return Definitions(self.source), Imports(self.source)

    @cached_property
    def _sound_after_all(self) -> bool:
        return compiles(self.source.data)

    def _member(self, statement: Node) -> Node | None:
        assigned = named_child(statement, 0)
        left = assigned.child_by_field_name("left") if assigned is not None else None
        return left if left is not None and left.type == "identifier" else None

    def _tries(self, stack: Stack, words: Path) -> tuple[Path, ...]:
        return tries(self.source, scope_of(self.source, stack), words)

    def _dotted(self, node: Node) -> Path | None:
        return dotted(self.source, node)
