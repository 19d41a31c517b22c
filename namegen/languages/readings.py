"""What the readings of all languages share: facts worked out on demand from a syntax tree.

A language gives its own node types and says how its look-ups, definitions and
imports are found; what a reading promises is kept here.
"""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Iterable, Sequence
from functools import cached_property
from typing import Any, ClassVar, Generic, TypeVar

from tree_sitter import Node

from namegen.languages.definitions import DefinitionFinder
from namegen.languages.imports import Origins
from namegen.languages.named_values import NamedValues
from namegen.languages.numbers import NumberForms, figure
from namegen.languages.prefilters import LooksUp, candidates
from namegen.languages.sources import Source, Stack, TreeParser, span_of
from namegen.languages.stretches import merged, touches, unsound
from namegen.languages.uses import LookupFinder
from namegen.model.facts import Definition, Import, LookupSite, NumberSite, Path, Ref
from namegen.model.places import Span
from namegen.model.workspaces import LookupRule

DefinitionsT = TypeVar("DefinitionsT", bound="DefinitionFinder[Any]")
ImportsT = TypeVar("ImportsT", bound=Origins)


class TreeReading(ABC, Generic[DefinitionsT, ImportsT]):
    """Implements `namegen.model.facts.Reading` on a tree of tree-sitter."""

    SIMPLE: ClassVar[frozenset[str]]
    """Types of the statements that hold no others."""
    COMPOUND: ClassVar[frozenset[str]]
    """Types of the statements and declarations that do."""
    CLASSES: ClassVar[str]
    """How the binding of a class or type is called."""
    NUMBERS: ClassVar[NumberForms]
    """How numbers are written."""
    IDENTIFIERS: ClassVar[frozenset[str]]
    """Types of the leaves that refer to something."""
    LOOKS_UP: ClassVar[LooksUp]
    """Whether a look-up can stand at an identifier, told from bytes."""
    FINDER: ClassVar[type[LookupFinder[Any, Any, Any]]]
    """What finds the look-ups."""
    NAMED_VALUES: ClassVar[NamedValues]
    """What finds the values that a name is given without being defined."""

    def __init__(self, utf8: bytes, parser: TreeParser, rules: Sequence[LookupRule]) -> None:
        self.rules = tuple(rules)
        self.candidates = candidates(utf8, self._searched(utf8), type(self).LOOKS_UP)
        self.source = Source(utf8, parser, self._joints(utf8), self.candidates)
        self.bound, self.imports = self._parts()

    def _searched(self, utf8: bytes) -> Sequence[LookupRule]:
        """Return the rules by which bytes are searched for look-ups; the rules by default."""
        return self.rules

    def _joints(self, utf8: bytes) -> Sequence[int]:
        """Return where the file can be cut into pieces to parse alone; nowhere by default."""
        return ()

    @abstractmethod
    def _parts(self) -> tuple[DefinitionsT, ImportsT]:
        """Return what finds definitions and imports in this file."""

    def _sites(self) -> Sequence[LookupSite]:
        """Return all look-ups in the order of the file, those in unsound stretches too."""
        finder = self.FINDER(self.source, self.bound, self.imports, self.rules)
        return finder.sites(self.candidates)

    def _named_values(self, name: str) -> Iterable[Node]:
        """Return the values that a name is given without being defined: arguments, keys."""
        return self.NAMED_VALUES(self.source, name)

    @abstractmethod
    def _member(self, statement: Node) -> Node | None:
        """Return the name that a statement in the body of a class defines, if it does."""

    def _body(self, declaration: Node) -> Node | None:
        """Return what the declaration of a class has between its braces."""
        return declaration.child_by_field_name("body")

    @abstractmethod
    def _dotted(self, node: Node) -> Path | None:
        """Return the words of ``a.b.c``, or None where a node is anything else."""

    @abstractmethod
    def _tries(self, stack: Stack, words: Path) -> tuple[Path, ...]:
        """Return the paths that a dotted name may mean where the stack leads to."""

    def _stands_alone(self, stack: Stack) -> bool:
        """Whether a word is a name by itself, here or where it is imported; no by default."""
        return False

    @cached_property
    def lookups(self) -> Sequence[LookupSite]:
        """All look-ups in the order of the file, but for those in unsound stretches."""
        sites = self._sites()
        broken = self._broken
        return [site for site in sites if not touches(broken, site.span)]

    @cached_property
    def unsound(self) -> Sequence[Span]:
        """Stretches that could not be parsed, or lie deeper than is looked."""
        _ = self.lookups  # looking for them is what finds those that lie too deep
        return merged([*self._broken, *self.source.too_deep()])

    @property
    def _broken(self) -> Sequence[Span]:
        """Stretches with an error of the parser, in what it was asked about until now."""
        spans = unsound(self.source, self.SIMPLE, self.COMPOUND)
        return () if spans and self._sound_after_all else spans

    @cached_property
    def _sound_after_all(self) -> bool:
        """Whether the language's own compiler accepts what the parser did not; no by default."""
        return False

    def numbers(self, names: Sequence[str]) -> Sequence[NumberSite]:
        """Return the numbers that are given one of these names here, in order."""
        found: dict[Span, NumberSite] = {}
        for name in names:
            bound = (one.value for one in self.bound.bindings(name))
            for value in (*bound, *self._named_values(name)):
                known = figure(self.source, value, self.NUMBERS)
                if known is not None and value is not None:
                    span, text = span_of(value), self.source.text(value)
                    found.setdefault(span, NumberSite(name, *known, text, span))
        broken = self._broken
        return [found[span] for span in sorted(found) if not touches(broken, span)]

    def definitions(self, path: Path) -> Sequence[Definition]:
        """Return every binding of the path in this file, in order."""
        return self.bound.find(path)

    def declared_type(self, path: Path) -> Path | None:
        """Return the type of the object that the path is declared as; not known by default."""
        return None

    def imported(self, name: str) -> Sequence[Import]:
        """Return where a name not defined in this file may come from, best first."""
        return self.imports.named(name)

    @property
    def spaces(self) -> Sequence[Path]:
        """The namespaces that the file opens; none by default."""
        return ()

    @property
    def included(self) -> Sequence[Import]:
        """The files that are included whole; none by default."""
        return ()

    def members(self, word: str) -> Sequence[str]:
        """Return what the classes of this name define directly, in order."""
        found: list[str] = []
        for one in self.bound.bindings(word):
            known = one.way == self.CLASSES and one.value is not None
            body = self._body(one.value) if known and one.value else None
            for statement in body.named_children if body is not None else ():
                name = self._member(statement)
                if name is not None:
                    found.append(self.source.text(name))
        return found

    def references(self, name: str) -> Sequence[Ref]:
        """Return sound code's names that are this word or end in it; the span is the word's."""
        found: list[Ref] = []
        for stack in self.source.stacks((name,)):
            words = self._dotted(stack[-2])
            if self._stands_alone(stack):
                words = (name,)
            elif not words or len(words) == 1 or stack[-2].end_byte != stack[-1].end_byte:
                continue
            found.append(Ref(self._tries(stack, words), span_of(stack[-1])))
        broken = self._broken
        return [one for one in found if not touches(broken, one.span)]

    def mentions(self, path: Path) -> bool:
        """Whether code of this file refers to the dotted name, or to its end imported alone."""
        return any(self._refers(stack, path) for stack in self.source.stacks((path[-1],)))

    def _refers(self, stack: Stack, path: Path) -> bool:
        if stack[-1].type not in self.IDENTIFIERS:
            return False
        words = self._dotted(stack[-2])
        if words is not None and len(words) > 1 and words[-1] == path[-1]:
            return len(path) == 1 or words[-len(path) :] == path
        imports = self.imports.named(path[-1])
        return len(path) == 1 or any(one.member[-len(path) :] == path for one in imports)
