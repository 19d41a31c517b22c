"""Following the name of a look-up to its text, through constants and across files."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from msgspec import Struct, field
from msgspec.structs import replace

from namegen.model.facts import (
    MADE,
    Definition,
    Each,
    Expression,
    Import,
    Join,
    LookupSite,
    Path,
    Reading,
    Ref,
    Several,
    Text,
    Unknown,
    Wrapped,
    Wrapper,
)
from namegen.model.places import Span
from namegen.resolving.modules import ANY
from namegen.text.likeness import nearest

MOST_STEPS = 60
"""Names followed one after another, before a text counts as not known."""
MOST_NAMES = 5_000
"""Names looked at for one look-up: files that import all of each other have endless detours."""
MOST_TEXTS = 64
"""Texts that one look-up may get, before it counts as not known."""
LONGEST = 10_000
"""Code points of a text, and pieces of it."""


class Resolved(Struct, frozen=True):
    """One text that a look-up gets, or why it is not known.

    ``path`` and ``span`` are where it stands: the text between the quotes if it
    is one literal, in whichever file; else the whole expression at the look-up.
    ``pieces`` are the literals it is put together from, each with its file.
    """

    path: str
    span: Span
    text: str | None
    why: str | None = None
    pieces: tuple[tuple[str, Text], ...] = ()
    lacking: bool = False
    """Whether it is not known because the file that it is imported from has no such name."""

    @property
    def literal(self) -> Text | None:
        """The one literal that is the whole text and may be rewritten, if it is one."""
        piece = self.pieces[0][1] if len(self.pieces) == 1 else None
        whole = piece is not None and piece.value == self.text and not piece.is_key
        return piece if whole else None


class _Known(Struct, frozen=True):
    text: str
    pieces: tuple[tuple[str, Text], ...] = ()
    lists: int = 0
    """How many lists, within one another, it stands in."""


class _Lost(Struct, frozen=True):
    why: str
    wrapper: bool = False
    missing: bool = False
    lacking: bool = False
    lists: int = 0
    sought: tuple[Path, ...] = ()
    """Of a name that is lacking, the paths under which it was sought there."""
    weighs: bool = False
    """Whether the reason stands for what the name is used in as well."""


_Outcome = _Known | _Lost


class _TooFar(Exception):
    """Following a name took too many steps."""


class Resolver(Struct):
    """Follows names through the files of one run.

    ``reading_of`` gives the facts of a file, or None if it cannot be read;
    ``find`` gives the files that an import in another file may mean, none if it is not known.
    """

    reading_of: Callable[[str], Reading | None]
    find: Callable[[Import, str], Sequence[str]]
    _known: dict[tuple[str, tuple[Path, ...]], list[_Outcome]] = field(default_factory=dict)
    _whole: dict[str, tuple[str, ...]] = field(default_factory=dict)
    _open: set[tuple[str, tuple[Path, ...]]] = field(default_factory=set)
    _cut: bool = False
    _spent: int = 0

    def resolve(self, site: LookupSite, path: str) -> tuple[Resolved, ...]:
        """Return every text that a look-up in the file ``path`` may get; at least one entry."""
        name = site.name
        self._spent = 0
        try:
            outcomes = self._follow(path, name, 0) or [_Lost("there are no values to take")]
        except _TooFar:
            self._open.clear()
            self._cut = False
            outcomes = [_Lost("it leads through too many names")]
        return tuple(_resolved(outcome, path, name.span) for outcome in outcomes)

    def bound_at(self, path: str, tries: tuple[Path, ...]) -> tuple[str, Path] | None:
        """Return the file and the path inside it where a name is bound, imports followed."""
        return self._nearest(path, tries, _binds, set())

    def holds(self, site: LookupSite, path: str) -> bool:
        """Whether a place in the file ``path`` is the look-up that it looks like there."""
        if site.member is None:
            return True
        home = self._nearest(path, site.member.tries, _declares, set())
        reading = self.reading_of(home[0]) if home is not None else None
        words = reading.declared_type(home[1]) if reading is not None and home is not None else None
        rule = site.rule
        if not words or words[-1] != rule.called:
            return False
        return rule.on is None or words[-2:-1] == (rule.on,)

    def _nearest(
        self,
        path: str,
        tries: tuple[Path, ...],
        tells: Callable[[Reading, Path], bool],
        asked: set[tuple[str, tuple[Path, ...]]],
    ) -> tuple[str, Path] | None:
        """Return the nearest file, with the path inside it, that tells of a name."""
        reading = self.reading_of(path)
        if reading is None or (path, tries) in asked or len(asked) > MOST_NAMES:
            return None
        asked.add((path, tries))
        for attempt in tries:
            for home, known in self._readings(path, attempt):
                if tells(known, attempt):
                    return home, attempt
        word, *rest = tries[-1]
        for one in reading.imported(word):
            if tuple(rest[: len(one.under)]) != one.under:
                continue
            target = (*one.member, *rest[len(one.under) :])
            for file in self._files(one, path, target):
                found = self._nearest(file, (target,), tells, asked)
                if found is not None:
                    return found
        return None

    def _readings(self, path: str, attempt: Path) -> Iterator[tuple[str, Reading]]:
        """Yield the file and those that it includes; names inside a function are its own alone."""
        inside = attempt[0].startswith("@")
        for file in (path,) if inside else (path, *self._included(path)):
            reading = self.reading_of(file)
            if reading is not None:
                yield file, reading

    def _included(self, path: str) -> Sequence[str]:
        """Return the files that a file includes, and what these include, nearest first."""
        if path not in self._whole:
            found, pending = {path: False}, [path]
            for file in pending:
                reading = None if found[file] else self.reading_of(file)
                for one in reading.included if reading is not None else ():
                    for other in self.find(one, file):
                        if other not in found:
                            found[other] = one.alone
                            pending.append(other)
            self._whole[path] = tuple(pending[1:])
        return self._whole[path]

    def _follow(  # noqa: PLR0911 - one per sort of expression
        self, path: str, value: Expression, steps: int
    ) -> list[_Outcome]:
        match value:
            case Text():
                return [_Known(value.value, ((path, value),))]
            case Unknown():
                return [_Lost(value.why, weighs=value.weighs)]
            case Wrapper():
                return [_Lost("it is a type, not text", wrapper=True)]
            case Ref():
                return self._reference(path, value.tries, steps + 1)
            case Wrapped():
                return self._wrapped(path, value, steps + 1)
            case Several():
                options = (self._follow(path, one, steps + 1) for one in value.options)
                outcomes = [outcome for option in options for outcome in option]
                return _few([_in_list(one) for one in outcomes] if value.listed else outcomes)
            case Each():
                return _elements(self._follow(path, value.of, steps + 1))
            case Join():
                return self._join(path, value, steps + 1)

    def _join(self, path: str, value: Join, steps: int) -> list[_Outcome]:
        """Return the texts that the pieces give, in every combination."""
        if len(value.parts) > LONGEST:
            return [_Lost("it is put together from too many pieces")]
        choices: list[list[_Outcome]] = [self._follow(path, part, steps) for part in value.parts]
        lost = next((one for choice in choices for one in choice if isinstance(one, _Lost)), None)
        if lost is not None:
            return [replace(lost, wrapper=False, missing=False, lists=0)]
        if any(one.lists for choice in choices for one in choice):
            return [_Lost("it is put together from lists")]
        count = 1
        for choice in choices:
            count *= len(choice)
            if count > MOST_TEXTS:
                return [_Lost("it is put together in too many ways")]
        combinations: list[list[_Known]] = [[]]
        for choice in choices:
            known = [one for one in choice if isinstance(one, _Known)]
            if len(known) == 1:
                for done in combinations:
                    done.append(known[0])
            else:
                combinations = [[*done, one] for done in combinations for one in known]
        return [_joined(done) for done in combinations]

    def _wrapped(self, path: str, value: Wrapped, steps: int) -> list[_Outcome]:
        wrappers = self._follow(path, value.by, steps)
        if len(wrappers) == 1 and isinstance(wrappers[0], _Lost) and wrappers[0].wrapper:
            return self._follow(path, value.value, steps)
        return [_Lost(f"it is made at run time by `{value.by.tries[-1][-1]}()`")]

    def _reference(self, path: str, tries: tuple[Path, ...], steps: int) -> list[_Outcome]:
        self._spent += 1
        if steps > MOST_STEPS or self._spent > MOST_NAMES:
            raise _TooFar
        key = (path, tries)
        if key in self._known:
            return self._known[key]
        if key in self._open:
            self._cut = True
            return [_Lost(f"`{_last(tries)}` is defined by itself")]
        self._open.add(key)
        found = self._sought(path, tries, steps)
        self._open.discard(key)
        outcomes = found or [_missing(_last(tries))]
        if not self._open:
            self._cut = False
        if not self._cut:  # what was cut short inside a cycle may be more when asked outside it
            self._known[key] = outcomes
        return outcomes

    def _sought(self, path: str, tries: tuple[Path, ...], steps: int) -> list[_Outcome]:
        """Return what the first path that is defined gives; empty if none is."""
        reading = self.reading_of(path)
        if reading is None:
            return []
        lacking: list[_Outcome] = []
        for attempt in tries:
            for file, known in self._readings(path, attempt):
                definitions = known.definitions(attempt)
                if not definitions:
                    continue
                outcomes = self._defined(file, definitions, steps)
                if _is_lacking(outcomes, definitions[0]):
                    lacking = lacking or outcomes  # no base has it: it may be a name further out
                    continue
                if not _is_missing(outcomes):
                    return outcomes
                if not definitions[0].inherited:
                    return [
                        replace(one, missing=False) for one in outcomes if isinstance(one, _Lost)
                    ]
        word, *rest = tries[-1]
        for one in reading.imported(word):
            outcomes = self._imported(path, one, tuple(rest), steps)
            if outcomes:
                return outcomes
        if lacking:
            return [replace(one, sought=tries) for one in lacking if isinstance(one, _Lost)]
        return self._without_member(path, reading.imported(word), tries)

    def _without_member(
        self, path: str, imports: Sequence[Import], tries: tuple[Path, ...]
    ) -> list[_Outcome]:
        """Return that a file or class which is imported from lacks a name, where one does."""
        rest = tries[-1][1:]
        for one in imports:
            target = (*one.member, *rest[len(one.under) :])
            file = next(iter(self._files(one, path, target)), None)
            reading = self.reading_of(file) if file is not None else None
            if reading is None:
                continue
            known = next(
                (n for n in range(len(target)) if not reading.definitions(target[: n + 1])), None
            )
            if known is None or (known == 0 and reading.imported(target[0])):
                return []
            owner = [word for word in target[:known] if word != MADE][-1:]
            near = nearest(target[known], reading.members(owner[0])) if owner else None
            hint = f"the nearest is `{near}`" if near else "its spelling may be wrong"
            name = ".".join([*owner, target[known]])
            return [_Lost(f"{file} has no `{name}`; {hint}", lacking=True, sought=tries)]
        return []

    def _defined(self, path: str, definitions: Sequence[Definition], steps: int) -> list[_Outcome]:
        first = definitions[0]
        if len(definitions) > 1:
            reasons = (one.value for one in definitions if isinstance(one.value, Unknown))
            weighty = next((one for one in reasons if one.weighs), None)
            if weighty is not None:
                return [_Lost(weighty.why, weighs=True)]
            said = _said(first.path)
            if said.endswith("()") and isinstance(first.value, Unknown):
                return [_Lost(first.value.why)]
            how = "defined" if said.endswith("()") else "assigned"
            return [_Lost(f"`{said}` is {how} more than once")]
        return self._follow(path, first.value, steps)

    def _imported(self, path: str, one: Import, rest: Path, steps: int) -> list[_Outcome]:
        """Return what an import gives for the words after its local name; empty if nothing."""
        if rest[: len(one.under)] != one.under:
            return []
        target = (*one.member, *rest[len(one.under) :])
        for file in self._files(one, path, target):
            if (file, (target,)) in self._open:
                self._cut = True
                continue
            outcomes = self._reference(file, (target,), steps + 1)
            if not _is_missing(outcomes):
                return outcomes
        return []

    def _files(self, one: Import, path: str, target: Path) -> Sequence[str]:
        """Return the files in which an import may find a path: of any, those that define it."""
        files = self.find(one, path) if target else ()
        if not any(ANY in file for file in one.files):
            return files
        readings = {file: self.reading_of(file) for file in files}
        return [file for file, one in readings.items() if one and one.definitions(target[:1])]


def _binds(reading: Reading, path: Path) -> bool:
    definitions = reading.definitions(path)
    return bool(definitions) and not definitions[0].inherited


def _declares(reading: Reading, path: Path) -> bool:
    return reading.declared_type(path) is not None


def _missing(word: str) -> _Lost:
    if word.endswith("()"):
        return _Lost(f"it is made at run time by `{word}`", missing=True)
    if word.startswith("["):
        return _Lost("it is taken out of a table", missing=True)
    return _Lost(f"`{word}` is not defined in code that was read", missing=True)


def _is_missing(outcomes: list[_Outcome]) -> bool:
    return len(outcomes) == 1 and isinstance(outcomes[0], _Lost) and outcomes[0].missing


def _said(path: Path) -> str:
    """Return the last word of a path, with what it stands for where it takes out of a table."""
    plain = max(n for n, word in enumerate(path) if n == 0 or not word.startswith("["))
    return "".join(path[plain:])


def _is_lacking(outcomes: list[_Outcome], definition: Definition) -> bool:
    """Whether a name that may be inherited is not: its base was read and does not define it."""
    lost, value = outcomes[0] if len(outcomes) == 1 else None, definition.value
    if not (definition.inherited and isinstance(value, Ref) and isinstance(lost, _Lost)):
        return False
    return lost.lacking and lost.sought[-1:] == value.tries[-1:]


def _last(tries: tuple[Path, ...]) -> str:
    return tries[-1][-1]


def _in_list(outcome: _Outcome) -> _Outcome:
    if isinstance(outcome, _Lost):
        return replace(outcome, wrapper=False, missing=False, lists=outcome.lists + 1)
    return replace(outcome, lists=outcome.lists + 1)


def _elements(outcomes: list[_Outcome]) -> list[_Outcome]:
    """Return what a loop takes, given what the value comes to that it runs over."""
    if not outcomes:
        return [_Lost("it runs over a list without elements")]
    weighty = next((one for one in outcomes if isinstance(one, _Lost) and one.weighs), None)
    if weighty is not None:
        return [_Lost(f"what it runs over is not known: {weighty.why}")]
    if not all(one.lists for one in outcomes):
        return [_Lost("it runs over values that are not written out")]
    return [replace(one, lists=one.lists - 1) for one in outcomes]


def _few(outcomes: list[_Outcome]) -> list[_Outcome]:
    return outcomes if len(outcomes) <= MOST_TEXTS else [_Lost("it may be one of too many texts")]


def _joined(parts: list[_Known]) -> _Outcome:
    text = "".join(part.text for part in parts)
    pieces = tuple(piece for part in parts for piece in part.pieces)
    if len(text) > LONGEST or len(pieces) > LONGEST:
        return _Lost("it is put together from too many pieces")
    return _Known(text, pieces)


def _resolved(outcome: _Outcome, path: str, whole: Span) -> Resolved:
    if isinstance(outcome, _Lost):
        return Resolved(path, whole, None, outcome.why, lacking=outcome.lacking)
    if len(outcome.pieces) == 1 and outcome.pieces[0][1].value == outcome.text:
        file, literal = outcome.pieces[0]
        return Resolved(file, literal.span, outcome.text, None, outcome.pieces)
    return Resolved(path, whole, outcome.text, None, outcome.pieces)
