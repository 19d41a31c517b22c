"""The facts of one Python file, worked out on demand."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cached_property

from tree_sitter import Parser

from namegen.languages.python.definitions import Definitions
from namegen.languages.python.expressions import dotted
from namegen.languages.python.imports import Imports
from namegen.languages.python.lookups import Finder
from namegen.languages.python.validity import compiles
from namegen.languages.sources import Source, Stack, merged, touches
from namegen.model.facts import Definition, Import, LookupSite, Path
from namegen.model.places import Span
from namegen.model.workspaces import LookupRule

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


class PythonReading:
    """Implements `namegen.model.facts.Reading`."""

    def __init__(self, utf8: bytes, parser: Parser, rules: Sequence[LookupRule]) -> None:
        self.source = Source(utf8, parser)
        self._rules = tuple(rules)
        self._definitions = Definitions(self.source)
        self._imports = Imports(self.source)

    @cached_property
    def lookups(self) -> Sequence[LookupSite]:
        """All look-ups in the order of the file, but for those in unsound stretches."""
        sites = Finder(self.source, self._definitions, self._imports, self._rules).sites()
        return [site for site in sites if not touches(self._broken, site.span)]

    @cached_property
    def unsound(self) -> Sequence[Span]:
        """Stretches that could not be parsed, or lie deeper than is looked."""
        _ = self.lookups  # looking for them is what finds those that lie too deep
        return merged([*self._broken, *self.source.too_deep()])

    @cached_property
    def _broken(self) -> Sequence[Span]:
        """Stretches with an error of the parser; none if Python itself compiles the file."""
        spans = self.source.unsound(_SIMPLE_STATEMENTS, _COMPOUND_STATEMENTS)
        return () if spans and compiles(self.source.data) else spans

    def definitions(self, path: Path) -> Sequence[Definition]:
        """Return every binding of the path in this file, in order."""
        return self._definitions.find(path)

    def imported(self, name: str) -> Sequence[Import]:
        """Return where a name not defined in this file may come from, best first."""
        return self._imports.named(name)

    def members(self, word: str) -> Sequence[str]:
        """Return what the classes of this name assign directly, in order."""
        found: list[str] = []
        for one in self._definitions.bindings(word):
            body = (
                one.value.child_by_field_name("body") if one.way == "class" and one.value else None
            )
            for statement in body.named_children if body is not None else ():
                assigned = statement.named_child(0)
                left = assigned.child_by_field_name("left") if assigned is not None else None
                if left is not None and left.type == "identifier":
                    found.append(self.source.text(left))
        return found

    def mentions(self, path: Path) -> bool:
        """Whether code of this file refers to the dotted name, or to its end imported alone."""
        return any(self._refers(stack, path) for stack in self.source.stacks((path[-1],)))

    def _refers(self, stack: Stack, path: Path) -> bool:
        if stack[-1].type != "identifier":
            return False
        words = dotted(self.source, stack[-2]) if stack[-2].type == "attribute" else None
        if words is not None and words[-1] == path[-1]:
            return len(path) == 1 or words[-len(path) :] == path
        imports = self._imports.named(path[-1])
        return len(path) == 1 or any(one.member[-len(path) :] == path for one in imports)
