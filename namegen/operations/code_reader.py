"""Reading code: bytes to facts to look-ups whose text is known, one file at a time."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from contextlib import suppress
from functools import lru_cache

from msgspec import Struct, field

from namegen import languages
from namegen.errors import UnusableInput
from namegen.model.facts import LookupSite, Path, Reading, Text
from namegen.model.places import Place, Span
from namegen.model.views import ResolvedLookup, TypedNumber
from namegen.model.workspaces import LookupRule
from namegen.operations.files import Folder
from namegen.operations.number_names import NumberNames
from namegen.resolving.modules import ModuleFinder
from namegen.resolving.resolver import Resolved, Resolver
from namegen.text.positions import Lines

MARK = b"namegen:"
"""How a comment begins that is meant for namegen."""
KEPT_READINGS = 64
"""How many parsed files stay in memory for the imports of others."""


class Literal(Struct, frozen=True):
    """A literal that a finding points at, with what is needed to rewrite it."""

    path: str
    text: Text


class FileFacts(Struct, frozen=True):
    """What one file says about devices.

    ``unreadable`` are stretches of which nothing is known, with the reason where
    it is another than a fault in the code.
    """

    path: str
    lookups: tuple[ResolvedLookup, ...] = ()
    unreadable: tuple[tuple[Place, str | None], ...] = ()
    numbers: tuple[TypedNumber, ...] = ()
    marked: bool = False
    """Whether its bytes may hold a comment that allows a finding."""
    through: frozenset[str] = frozenset()
    """Other files that hold texts of its look-ups."""
    literals: Mapping[Place, Literal] = field(default_factory=dict)
    """The look-ups' texts that are one literal each, here or in another file."""

    def holds_after(self, changed: Collection[str]) -> bool:
        """Whether all this stays true when literals of other files get another text.

        What is not known counts as not holding: it may lie in any file.
        """
        known = all(lookup.text is not None for lookup in self.lookups)
        return known and self.path not in changed and self.through.isdisjoint(changed)


class CodeReader:
    """Reads the code of one folder by the look-up rules."""

    def __init__(
        self,
        folder: Folder,
        rules: Sequence[LookupRule],
        roots: Sequence[str],
        outputs: Collection[str] = (),
        numbers: NumberNames | None = None,
    ) -> None:
        self.folder = folder
        self.outputs = frozenset(outputs)
        self.numbers = numbers or NumberNames()
        self.rules = tuple(rules)
        self.roots = tuple(roots)
        self._reading = lru_cache(maxsize=KEPT_READINGS)(self._read)
        holding = lru_cache(maxsize=None)(self._holding)
        find = lru_cache(maxsize=None)(ModuleFinder(folder.is_file, self.roots, holding))
        self._may_name: dict[str, languages.Prefilter] = {}
        self._resolver = Resolver(self._reading_or_none, find)

    def facts(self, path: str) -> FileFacts:
        """Return what one file says; it is parsed only if it names a look-up or a number."""
        language = languages.for_path(path)
        assert language is not None, "the caller chose the files of known languages"
        try:
            data = self.folder.read(path)
            if language.name not in self._may_name:
                self._may_name[language.name] = language.prefilter(self.rules)
            looks_up = self._may_name[language.name](data)
            named = self.numbers.within(data) if path not in self.outputs else []
            if not looks_up and not named:
                return FileFacts(path, marked=MARK in data)
            reading, lines = self._reading(path)
        except UnusableInput as error:
            return FileFacts(path, unreadable=((Place(path), _told(error)),))
        numbers = tuple(
            TypedNumber(
                one.name,
                one.text,
                one.value,
                one.unit,
                _place(path, lines, one.span),
                language.name,
            )
            for one in reading.numbers(named)
        )
        if not looks_up:
            return FileFacts(path, numbers=numbers, marked=MARK in data)
        resolved = [
            (site, found)
            for site in reading.lookups
            if self._resolver.holds(site, path)
            for found in self._resolver.resolve(site, path)
        ]
        lookups = tuple(self._lookup(*one, path, language.name) for one in resolved)
        return FileFacts(
            path,
            lookups=lookups,
            unreadable=tuple((_place(path, lines, span), None) for span in reading.unsound),
            numbers=numbers,
            marked=MARK in data,
            through=frozenset(file for _, found in resolved for file, _ in found.pieces) - {path},
            literals={
                lookup.place: Literal(found.path, found.literal)
                for lookup, (_, found) in zip(lookups, resolved, strict=True)
                if lookup.literal and found.literal
            },
        )

    def references(self, path: str, name: str) -> list[tuple[Span, tuple[str, Path]]]:
        """Return where dotted names end in this word, each with the file and path that it means.

        Those of which it is not known are left out.
        """
        try:
            if name.encode() not in self.folder.read(path):
                return []
            reading, _ = self._reading(path)
        except UnusableInput:
            return []
        found = (
            (one.span, self._resolver.bound_at(path, one.tries)) for one in reading.references(name)
        )
        return [(span, home) for span, home in found if home is not None]

    def defines(self, path: str, inside: Path) -> bool:
        """Whether a file binds a dotted name."""
        reading = self._reading_or_none(path)
        return reading is not None and bool(reading.definitions(inside))

    def mentions(self, path: str, names: Sequence[str]) -> set[str]:
        """Return which of the identifiers the file's code refers to."""
        try:
            data = self.folder.read(path)
            if not any(name.encode() in data for name in names):
                return set()
            reading, _ = self._reading(path)
        except UnusableInput:
            return set()
        return {name for name in names if reading.mentions((name,))}

    def _read(self, path: str) -> tuple[Reading, Lines]:
        """Parse a file.

        Raises:
            UnusableInput: it cannot be read or decoded.
        """
        language = languages.for_path(path)
        if language is None:
            raise UnusableInput("not a language that namegen reads", where=path)
        utf8 = language.decode(self.folder.read(path)).utf8
        return language.read(utf8, self.rules), Lines.of_utf8(utf8)

    def _holding(self, folder: str, ending: str, word: str) -> list[str]:
        """Return the files right in a folder that end so and whose bytes hold a word."""
        wanted, found = word.encode(), []
        for path in self.folder.listed(folder):
            with suppress(UnusableInput):
                if path.endswith(ending) and wanted in self.folder.read(path):
                    found.append(path)
        return found

    def _reading_or_none(self, path: str) -> Reading | None:
        try:
            return self._reading(path)[0]
        except UnusableInput:
            return None

    def _lookup(
        self, site: LookupSite, found: Resolved, path: str, language: str
    ) -> ResolvedLookup:
        lines = self._reading(path)[1]
        output = found.path if found.path in self.outputs and found.path != path else None
        if output is None:
            place = _place(found.path, self._reading(found.path)[1], found.span)
            literal = found.literal
        else:  # what a constant says is for the build to mend; its use is what can be wrong
            place, literal = _place(path, lines, site.name.span), None
        return ResolvedLookup(
            site=site,
            at=_place(path, lines, site.span),
            place=place,
            text=found.text,
            why=found.why,
            literal=literal is not None,
            language=language,
            output=output,
            lacking=found.lacking,
            is_key=any(text.is_key for _, text in found.pieces),
        )


def _place(path: str, lines: Lines, span: Span) -> Place:
    return Place(path, *lines.locate(span.start, span.end))


def _told(error: UnusableInput) -> str:
    """Return why a file is not read and how to mend that, as one clause."""
    return f"{error.what}; {error.remedy}" if error.remedy else error.what
