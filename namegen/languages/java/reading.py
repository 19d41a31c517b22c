"""The facts of one Java file, worked out on demand."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cached_property

from tree_sitter import Parser

from namegen.languages.java.definitions import Definitions
from namegen.languages.java.expressions import dotted
from namegen.languages.java.imports import Imports
from namegen.languages.java.lookups import Finder
from namegen.languages.java.scopes import TYPES
from namegen.languages.sources import Source, Stack, merged, touches
from namegen.model.facts import Definition, Import, LookupSite, Path
from namegen.model.places import Span
from namegen.model.workspaces import LookupRule

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


class JavaReading:
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
        return self.source.unsound(_SIMPLE_STATEMENTS, _COMPOUND_STATEMENTS)

    def definitions(self, path: Path) -> Sequence[Definition]:
        """Return every binding of the path in this file, in order."""
        return self._definitions.find(path)

    def imported(self, name: str) -> Sequence[Import]:
        """Return where a name not defined in this file may come from, best first."""
        return self._imports.named(name)

    def members(self, word: str) -> Sequence[str]:
        """Return the fields and constants that the types of this name declare, in order."""
        found: list[str] = []
        for one in self._definitions.bindings(word):
            body = (
                one.value.child_by_field_name("body") if one.way == "type" and one.value else None
            )
            for statement in body.named_children if body is not None else ():
                declared = statement.child_by_field_name("declarator") or statement
                name = declared.child_by_field_name("name")
                if name is not None and statement.type in _MEMBERS:
                    found.append(self.source.text(name))
        return found

    def mentions(self, path: Path) -> bool:
        """Whether code of this file refers to the dotted name, or to its end imported alone."""
        return any(self._refers(stack, path) for stack in self.source.stacks((path[-1],)))

    def _refers(self, stack: Stack, path: Path) -> bool:
        if stack[-1].type not in {"identifier", "type_identifier"}:
            return False
        words = dotted(self.source, stack[-2])
        if words is not None and len(words) > 1 and words[-1] == path[-1]:
            return len(path) == 1 or words[-len(path) :] == path
        imports = self._imports.named(path[-1])
        return len(path) == 1 or any(one.member[-len(path) :] == path for one in imports)
