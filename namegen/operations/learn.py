"""Learn: which look-ups a code base has, told from the device names that it already uses.

What stands before a name is guessed from the text; whether it is a look-up of that
shape is then proved by reading the code with it, as an audit would.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from pathlib import Path

from msgspec import Struct, field
from msgspec.structs import replace

from namegen import languages
from namegen.errors import UnusableInput
from namegen.model.facts import Text
from namegen.model.places import Span
from namegen.model.workspaces import LookupRule, Shape
from namegen.operations.asked_kinds import with_kinds
from namegen.operations.call_shapes import Seen, propose
from namegen.operations.walking import walk
from namegen.operations.workspace import Workspace
from namegen.text.likeness import suggest
from namegen.text.lookalikes import skeleton
from namegen.text.positions import split_lines

LEAST_NAMES = 2
"""Different names that a look-up must have been seen with: one may be there by chance."""
LEAST_SHARE = 0.7
"""Share of its texts that must be device names, or slips of them."""
SURE_SHARE = 0.9
"""From this share on it needs no receiver to tell it from calls of other things."""
KIND_SHARE = 0.75
"""Share of a look-up's names that must be of one kind: another may be a mistake in the code."""


class Learnt(Struct):
    """A look-up that was found: the rule, the names seen and how often, other texts, one place.

    ``slips`` are texts that were surely meant to be a name; they count for it in ``names``.
    """

    rule: LookupRule
    names: Counter[str] = field(default_factory=Counter)
    slips: Counter[str] = field(default_factory=Counter)
    others: Counter[str] = field(default_factory=Counter)
    place: str = ""

    @property
    def share(self) -> float:
        """The share of its texts that are names of devices."""
        names = self.names.total()
        return names / (names + self.others.total()) if names else 0.0

    @property
    def sure(self) -> bool:
        """Whether it is a look-up and no call that happens to get a name now and then."""
        return len(self.names) >= LEAST_NAMES and self.share >= LEAST_SHARE


class Lesson(Struct, frozen=True):
    """What was learnt from so many files; ``known`` are look-ups that the settings have.

    ``unread`` are files that are no text, ``lost`` manifests whose names are not known.
    """

    found: tuple[Learnt, ...]
    known: tuple[LookupRule, ...]
    files: int
    unread: tuple[str, ...] = ()
    lost: tuple[str, ...] = ()


def learn(workspace: Workspace, paths: Sequence[Path] = ()) -> Lesson:
    """Look for the look-ups in the given files and folders; without any, in all code known.

    Where the settings name no code, that is the whole workspace. Nothing is written.

    Raises:
        UnusableInput: a path does not exist or lies outside the workspace.
    """
    kinds = _kinds(workspace)
    files = list(_files(workspace, paths))
    texts = dict(_texts(workspace, files))
    looks = {skeleton(name).casefold() for name in kinds}
    seen: dict[tuple[Shape, str], Seen] = {}
    for path, text in texts.items():
        language = languages.for_path(path)
        if language is not None:
            propose(text, language.makes, looks, seen)
    known = [rule for rule in workspace.settings.lookups if (rule.shape, rule.called) in seen]
    for rule in known:
        del seen[rule.shape, rule.called]
    rules = [rule for (shape, called), one in seen.items() for rule in one.rules(shape, called)]
    found = [_best(some) for some in _grouped(_proved(texts, rules, kinds.keys()))]
    told = [_with_kind(one, kinds, texts) for one in found if one is not None]
    told.sort(key=lambda one: (-one.names.total(), one.rule.called))
    unread = tuple(path for path in files if path not in texts)
    return Lesson(tuple(told), tuple(known), len(texts), unread, workspace.broken)


def _kinds(workspace: Workspace) -> Mapping[str, set[str]]:
    """Return every name, old ones too, with the kinds of the devices that have it."""
    kinds: dict[str, set[str]] = {}
    for manifest in workspace.manifests:
        for device in manifest.devices.values():
            for name in (device.name, *device.formerly):
                kinds.setdefault(name, set()).add(device.kind)
    return kinds


def _files(workspace: Workspace, paths: Sequence[Path]) -> Iterator[str]:
    folder = workspace.folder
    starts = [folder.relative(path) for path in paths]
    starts = starts or [entry.path for entry in workspace.settings.code] or ["."]
    outputs = set(_outputs(workspace))
    for start in dict.fromkeys(starts):
        if not folder.exists(start):
            raise UnusableInput(
                "there is no such file or folder",
                where=start,
                remedy="check the spelling of the path, capitals too",
            )
        at = start.strip("/").removeprefix(".")
        below = [start] if folder.is_file(start) else walk(folder.root, at)
        yield from (path for path in below if path not in outputs and languages.for_path(path))


def _outputs(workspace: Workspace) -> Iterable[str]:
    from namegen.operations.record import read_record

    return read_record(workspace.folder)


def _texts(workspace: Workspace, files: Iterable[str]) -> Iterator[tuple[str, str]]:
    """Yield the files that can be read as text; the others are for an audit to tell."""
    for path in files:
        language = languages.for_path(path)
        try:
            if language is not None:
                yield path, language.decode(workspace.folder.read(path)).text
        except UnusableInput:
            continue


def _proved(
    texts: Mapping[str, str], rules: Sequence[LookupRule], names: Iterable[str]
) -> Iterable[Learnt]:
    """Read all files with the rules, and count what each finds."""
    known, found = tuple(names), [Learnt(rule) for rule in rules]
    for one in found:
        rule = one.rule
        for path, text in texts.items():
            language = languages.for_path(path)
            data = text.encode("utf-8", "replace")
            if language is None or not language.prefilter([rule])(data):
                continue
            for site in language.read(data, [rule]).lookups:
                if not isinstance(site.name, Text) or site.member is not None:
                    continue
                value = site.name.value
                meant = value if value in known else suggest(value, known).best
                if meant is None:
                    one.others[value] += 1
                    continue
                one.names[meant] += 1
                one.slips[value] += value not in known
                if not one.place:
                    one.place = f"{path}:{_line(data, site.name.span)}"
    return found


def _line(data: bytes, span: Span) -> int:
    """Return the line that a stretch begins in, from 1."""
    return len(split_lines(data[: span.start].decode("utf-8", "replace") + "."))


def _grouped(found: Iterable[Learnt]) -> Iterable[list[Learnt]]:
    groups: dict[tuple[Shape, str], list[Learnt]] = {}
    for one in found:
        groups.setdefault((one.rule.shape, one.rule.called), []).append(one)
    return groups.values()


def _best(some: list[Learnt]) -> Learnt | None:
    """Return the rule without a receiver if it is sure, else the one with it, else none."""
    sure = [one for one in some if one.sure]
    plain = [one for one in sure if one.share >= SURE_SHARE]
    return next(iter([*plain, *sorted(sure, key=lambda one: -one.share)]), None)


def _with_kind(one: Learnt, kinds: Mapping[str, set[str]], texts: Mapping[str, str]) -> Learnt:
    """Return the look-up with the kind of the devices seen in it, if nearly all have one.

    If not, the code may say the kind beside each name.
    """
    seen = Counter(
        kind for name, times in one.names.items() for kind in kinds[name] for _ in range(times)
    )
    ((kind, times),) = seen.most_common(1)
    if times >= KIND_SHARE * seen.total():
        one.rule = replace(one.rule, kind=kind)
    else:
        one.rule = with_kinds(one.rule, texts, kinds)
    return one


def row(rule: LookupRule) -> str:
    """Return a rule as ``lookups`` in the settings has it."""
    fields: dict[str, str] = {rule.shape: rule.called}
    if rule.on is not None:
        fields["on"] = rule.on
    if rule.name_at == "rest":
        fields["name_at"] = rule.name_at
    elif rule.name_at != (0,):
        fields["name_at"] = str(list(rule.name_at) if len(rule.name_at) > 1 else rule.name_at[0])
    if rule.name_key is not None:
        fields["name_key"] = rule.name_key
    if rule.kind is not None:
        fields["kind"] = rule.kind
    if rule.kind_at is not None:
        fields["kind_at"] = str(rule.kind_at)
    if rule.kind_by is not None:
        fields["kind_by"] = rule.kind_by
    if rule.kinds:
        words = ", ".join(f"{word}: {kind}" for word, kind in rule.kinds.items())
        fields["kinds"] = f"{{{words}}}"
    return "{" + ", ".join(f"{name}: {value}" for name, value in fields.items()) + "}"
