"""What a path stands for where names belong to a type or a region: Java and languages like it."""

from __future__ import annotations

from abc import abstractmethod
from collections import defaultdict
from collections.abc import Mapping, Set
from typing import ClassVar

from tree_sitter import Node

from namegen.languages.alterations import Alterations
from namegen.languages.definitions import DefinitionFinder, reason
from namegen.languages.expressions import RUN_TIME, ExpressionReader
from namegen.languages.families import Families
from namegen.languages.owned_bindings import WordBindings
from namegen.languages.owned_names import Binding
from namegen.languages.scopes import Scope
from namegen.languages.sources import Stack, span_of
from namegen.model.facts import Definition, Each, Expression, Path, Ref, Unknown


class MemberFinder(DefinitionFinder[Binding]):
    """Finds definitions by walking from a binding to the members of what it stands for."""

    ANONYMOUS: ClassVar[str]
    """The type of node that makes an object with a body of its own."""
    BINDINGS: ClassVar[type[WordBindings]]
    """What finds the bindings of a word."""
    NO_TEXTS: ClassVar[Mapping[str, str]]
    """Why a name that is bound in such a way is no text."""
    EXPRESSION: ClassVar[ExpressionReader[Scope]]
    """What reads values."""

    def __init__(self, alterations: Alterations, families: Families) -> None:
        super().__init__(alterations.source)
        self._alterations, self._families = alterations, families
        self.naming = families.NAMING
        self._found: dict[Path, list[Definition]] = {}
        self._owned: dict[str, dict[int, list[Binding]]] = {}
        self._started: dict[str, dict[int, list[Binding]]] = {}

    def find(self, path: Path) -> list[Definition]:
        """Return every binding of a path."""
        if path not in self._found:
            self._found[path] = self._sought(path) if path else []
        return self._found[path]

    @abstractmethod
    def _sought(self, path: Path) -> list[Definition]:
        """Return every binding of a path that is not empty."""

    @abstractmethod
    def _always_returned(self, binding: Binding, function: Node) -> Node | None:
        """Return the value that a method always gives; None if something may override it."""

    @abstractmethod
    def _below(self, binding: Binding, rest: Path, path: Path) -> list[Definition]:
        """Return a member of the object that a name stands for."""

    def _bindings_of(self, word: str) -> list[Binding]:
        return self.BINDINGS(self._alterations, self._families, word).all()

    def _value(self, binding: Binding) -> Expression:
        """Return what a name by itself stands for."""
        span, value = span_of(binding.name), binding.value
        if binding.way == "each" and value is not None:
            return Each(self.EXPRESSION(self.source, binding.within, value), span)
        if binding.way in self.NO_TEXTS:
            return Unknown(self.NO_TEXTS[binding.way], span)
        if binding.way == "method" and value is not None:
            value = self._always_returned(binding, value)
            if value is None:
                called = self.source.text(binding.name)
                return Unknown(f"it is made at run time by `{called}()`", span)
        if binding.way in {"parameter", "unknown"} or value is None:
            return reason(binding)
        return self.EXPRESSION(self.source, binding.within, value)

    def _inherited(self, scope: Scope, node: Node, words: Path) -> tuple[Path, ...]:
        """Return the paths that a type, named in a scope, may inherit a member from."""
        bases = self.naming.base_types(self.source, node)
        return tuple(path for base in bases for path in self.naming.tries(scope, (*base, *words)))

    def _owners(self, node: Node, words: Path) -> tuple[set[int], Path]:
        """Return the nodes that a type's member may belong to, and its name in them."""
        return {node.id}, words

    def _sort(self, node: Node) -> str:
        """Return what a type is, in words."""
        return "a type"

    def owned(self, word: str, owner: int) -> list[Binding]:
        """Return the bindings of a word that belong to a type or a region."""
        if word not in self._owned:
            found: defaultdict[int, list[Binding]] = defaultdict(list)
            for one in self.bindings(word):
                found[one.owner].append(one)
            self._owned[word] = dict(found)
        return self._owned[word].get(owner, [])

    def members_named(self, owner: int, word: str) -> list[Binding]:
        """Return the bindings of a member of a type: with brackets, of a method."""
        bound = self.owned(word.removesuffix("()"), owner)
        return [one for one in bound if (one.way == "method") == word.endswith("()")]

    def _in_region(self, path: Path) -> list[Binding]:
        """Return the bindings of a word in the region at a byte: ("@120", "name")."""
        word = path[1].removesuffix("()") if len(path) > 1 else ""
        if word and word not in self._started:
            found: defaultdict[int, list[Binding]] = defaultdict(list)
            for one in self.bindings(word):
                start = one.within.start_of(one.owner)
                if start is not None:
                    found[start].append(one)
            self._started[word] = dict(found)
        return self._started[word].get(int(path[0][1:]), []) if word else []

    def _of_anonymous(self, path: Path) -> list[Definition]:
        """Return a member that ``new Boat() { ... }`` inherits: ("@120", "name")."""
        stack = self._region(path, {self.ANONYMOUS})
        if stack is None:
            return []
        span = span_of(stack[-1])
        meant = self._inherited(self.naming.scope_of(self.source, stack), stack[-1], path[1:])
        return [Definition(path, Ref(meant, span), span, inherited=True)] if meant else []

    def _region(self, path: Path, types: Set[str]) -> Stack | None:
        """Return the nodes down to the one of some types that starts where ``@120`` says."""
        start = int(path[0][1:])
        node = self.source.root.descendant_for_byte_range(start, start + 1)
        found: Node | None = None
        while node is not None and node.start_byte == start:
            found = node if node.type in types else found
            node = node.parent
        stack = [found] if found is not None else []
        while stack and stack[-1].parent is not None:
            stack.append(stack[-1].parent)
        return stack[::-1] or None

    def _valued(self, bound: list[Binding], words: Path, path: Path) -> list[Definition]:
        """Return the definitions of ``words`` from the bindings of the first of them."""
        called = words[0].endswith("()") if words else False
        found: list[Definition] = []
        for one in bound:
            if (one.way == "method") != called:
                continue
            if one.way == "type" and one.value is not None:
                found += self._members(one, one.value, words[1:], path)
            elif len(words) > 1 and one.way == "each":  # each element has a member of its own
                span = span_of(one.name)
                found.append(Definition(path, Unknown(RUN_TIME, span), span))
            elif len(words) > 1:
                found += self._below(one, words[1:], path)
            elif one.way != "declared":
                found.append(Definition(path, self._value(one), span_of(one.name)))
        return found

    def _members(self, binding: Binding, node: Node, words: Path, path: Path) -> list[Definition]:
        """Return the definitions of a type's member, or where it is inherited from."""
        span = span_of(binding.name)
        if not words:
            return [Definition(path, Unknown(f"it is {self._sort(node)}, not text", span), span)]
        owners, words = self._owners(node, words)
        word = words[0].removesuffix("()")
        bound = [one for owner in owners for one in self.owned(word, owner)]
        bound.sort(key=lambda one: one.name.start_byte)
        found = self._valued(bound, words, path)
        if found or bound:
            return found
        inherited = self._inherited(binding.within, node, words)
        return [Definition(path, Ref(inherited, span), span, inherited=True)] if inherited else []
