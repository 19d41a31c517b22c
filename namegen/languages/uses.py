"""Places that match a look-up rule, and the look-ups that they give, in every language."""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from typing import Generic, Literal, Protocol, TypeVar

from msgspec import Struct
from tree_sitter import Node

from namegen.languages.parameters import Parameter, by_keyword, without_shadowed
from namegen.languages.sources import Source, span_of
from namegen.model.facts import PASSED_ON, Expression, LookupSite, Path, Ref, Several, Unknown
from namegen.model.places import Span
from namegen.model.workspaces import LookupRule


class Scope(Protocol):
    """Where a look-up stands, as far as all languages have it."""

    @property
    def readable(self) -> Path:
        """The names of the classes and functions, outermost first."""


class Use(Struct, frozen=True):
    """A place that matches a rule: the whole look-up, what it is given, its type arguments."""

    rule: LookupRule
    stack: tuple[Node, ...]
    """From the root down to the whole look-up."""
    given: Node
    """The argument list, or a subscript or a reference itself."""
    types: Node | None = None

    member: Ref | None = None
    """What it is put into, where another file tells whether that is of the rule's class."""
    passed_on: bool = False
    """Whether it is no look-up yet but a reference, ``boat::motor``, which is called elsewhere."""
    first: int = 0
    """Which of the arguments is the first that the look-up itself gets."""
    mapped: bool = False
    """Whether it is called with the elements of its arguments, one after the other."""

    @property
    def node(self) -> Node:
        """The whole look-up."""
        return self.stack[-1]


DefinitionsT = TypeVar("DefinitionsT")
ImportsT = TypeVar("ImportsT")
ScopeT = TypeVar("ScopeT", bound=Scope)


class LookupFinder(ABC, Generic[DefinitionsT, ImportsT, ScopeT]):
    """Finds the look-ups of one file."""

    def __init__(
        self,
        source: Source,
        definitions: DefinitionsT,
        imports: ImportsT,
        rules: Sequence[LookupRule],
    ) -> None:
        self.source = source
        self.definitions = definitions
        self.imports = imports
        self.rules = rules

    def sites(self, candidates: Sequence[Span]) -> list[LookupSite]:
        """Return the look-ups at some places in the order of the file, each place once."""
        rules: dict[str, list[LookupRule]] = {}
        for rule in self.rules:
            rules.setdefault(rule.called, []).append(rule)
        found: dict[tuple[int, int, int, str], LookupSite] = {}
        for use in self._uses(rules, candidates):
            for site in self._sites(use):
                either = site.rule.called if site.member is not None else ""
                key = (use.node.start_byte, use.node.end_byte, site.name.span.start, either)
                found.setdefault(key, site)
        return sorted(
            without_shadowed(found.values()), key=lambda site: (site.name.span, site.span)
        )

    @abstractmethod
    def _uses(
        self, rules: Mapping[str, Sequence[LookupRule]], places: Sequence[Span]
    ) -> Iterator[Use]:
        """Yield those places that match the rules, which are given by the word that they call."""

    @abstractmethod
    def _scope(self, use: Use) -> ScopeT:
        """Return the scope in which the arguments are worked out."""

    @abstractmethod
    def _names(self, use: Use, scope: ScopeT) -> list[Expression]:
        """Return the arguments that are names."""

    @abstractmethod
    def _holders(self, use: Use, names: int) -> Sequence[str | None]:
        """Return for each of so many names what its device is put into."""

    @abstractmethod
    def _parameter(self, name: Expression) -> Parameter | None:
        """Return the parameter of a function around it that a name is, if it is one."""

    @abstractmethod
    def _overlooked(self, use: Use) -> Mapping[str, Node]:
        """Return the keywords, with values, that may give the name where the rule has none."""

    @abstractmethod
    def _kind(self, use: Use) -> str | None:
        """Return the device kind that the look-up asks for."""

    def _sites(self, use: Use) -> Iterator[LookupSite]:
        scope = self._scope(use)
        if use.passed_on:
            span = span_of(use.node)
            yield LookupSite(
                use.rule, Unknown(PASSED_ON, span), use.rule.kind, span, scope.readable
            )
            return
        names = [inner for name in self._names(use, scope) for inner in _spread(name)]
        about = (self._kind(use), span_of(use.node), scope.readable)
        for name, holder in zip(names, self._holders(use, len(names)), strict=True):
            filled = self._parameter(name)
            if filled is None:
                yield LookupSite(use.rule, name, *about, holder, member=use.member)
            elif not filled.declared(self.rules, use.rule):  # else its calls are checked
                unknown = Unknown(f"it is a parameter of `{filled.function}`", name.span)
                by = (filled.function, filled.at, filled.key)
                yield LookupSite(use.rule, unknown, *about, holder, *by, member=use.member)
        keyed = self._overlooked(use) if not names else {}
        if keyed:
            words = tuple(keyed)
            unknown = Unknown(by_keyword(words), span_of(next(iter(keyed.values()))))
            yield LookupSite(use.rule, unknown, *about, keywords=words)


def kind_among(rule: LookupRule, words: Iterable[str]) -> str | None:
    """Return the one kind that a rule gives to the words, or its own if that is none or two."""
    kinds = {rule.kinds[word] for word in words if word in rule.kinds}
    return kinds.pop() if len(kinds) == 1 else rule.kind


def kind_asked(
    rule: LookupRule,
    word_at: Callable[[int], str | None],
    types: Callable[[], set[str]],
    declared: Callable[[], set[str]],
) -> str | None:
    """Return the kind that a look-up asks for by what its rule goes by, or the rule's own.

    ``word_at`` gives the last word of the argument at a place, ``types`` those of the type
    arguments, ``declared`` those of the type of what the device is put into.
    """
    if rule.kind_at is not None:
        return rule.kinds.get(word_at(rule.kind_at) or "", rule.kind)
    words: set[str] = set()
    if rule.kind_by == "type-argument":
        words = types()
    elif rule.kind_by == "declared-type":
        words = declared()
    return kind_among(rule, words)


def placed(given: Sequence[Node], places: Sequence[int] | Literal["rest"]) -> list[Node]:
    """Return the arguments at so many places, as far as there are any."""
    if places == "rest":
        return list(given)
    return [given[at] for at in places if at < len(given)]


def _spread(name: Expression) -> list[Expression]:
    """Return the names in a list or a condition one by one."""
    if not isinstance(name, Several):
        return [name]
    return [inner for option in name.options for inner in _spread(option)]
