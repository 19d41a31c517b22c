"""Leftovers of a rename: places that may still mean the old name, for a person to look at."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from pathlib import PurePath

from msgspec import Struct
from msgspec.structs import replace

from namegen.loading.edits import former_places
from namegen.model.findings import Finding
from namegen.model.manifests import Manifest
from namegen.model.places import Place
from namegen.operations.code_files import code_files
from namegen.operations.constant_names import constant_words
from namegen.operations.record import read_record
from namegen.operations.schemes import schemes_by_robot
from namegen.operations.workspace import Workspace
from namegen.text.positions import split_lines

_LOOK = "look whether it means this device"


class Left(Struct, frozen=True):
    """A place that a person must look at: the text that stands there, and what to do about it."""

    place: Place
    text: str
    advice: str


def leftovers(
    before: Workspace, after: Workspace, findings: Iterable[Finding], old: str, new: str
) -> tuple[Left, ...]:
    """Return what is left in code and manifests when a device has been renamed, by place.

    ``after`` is the workspace as it will be, and ``findings`` are what an audit says of it.
    """
    owners = [manifest for manifest in before.manifests if old in manifest.devices]
    left = [
        *_in_manifests(after, owners, old),
        *_in_code(
            after,
            owners,
            _words(before, owners, old, new),
            _fields(before, owners, old, new),
        ),
    ]
    known = {one.place for one in left}
    advice = f"put together from pieces; write {new} there by hand"
    left += [
        Left(one.place, old, advice)
        for one in findings
        if is_old(one, old, new) and one.place not in known
    ]
    return tuple(sorted(left, key=lambda one: one.place))


def is_old(finding: Finding, old: str, new: str) -> bool:
    """Whether a finding is about just this device's old name."""
    return finding.kind == "retired-name" and (finding.found, finding.expected) == (old, new)


def _words(before: Workspace, owners: Sequence[Manifest], old: str, new: str) -> Mapping[str, str]:
    """Return the texts that may mean the device in code, each with what to do about it."""
    words = {old: _LOOK}
    for names in constant_words(before, owners, old, new).values():
        for constant, now in names.items():
            words.setdefault(constant, f"if it is the device's constant, it is {now} now")
    return words


def _fields(
    before: Workspace, owners: Sequence[Manifest], old: str, new: str
) -> Mapping[str, Mapping[str, str]]:
    """Return by start-up module what the device's field in it may be called, with what to do."""
    found: dict[str, dict[str, str]] = {}
    schemes = schemes_by_robot(before)
    for path, entry in read_record(before.folder).items():
        target = before.targets.get(entry.target)
        owner = next((one for one in owners if one.robot == entry.robot), None)
        if owner is None or target is None or target.fields is None:
            continue
        for scheme in schemes.get(owner.robot, ()):
            device = owner.devices[old]
            was, now = (scheme.field_name(one) for one in (device, replace(device, name=new)))
            if was != now and scheme.language == target.language:
                advice = f"if it is the device's field, it is {now} now"
                found.setdefault(PurePath(path).stem, {})[was] = advice
    return found


def _in_code(
    after: Workspace,
    owners: Sequence[Manifest],
    words: Mapping[str, str],
    fields: Mapping[str, Mapping[str, str]],
) -> Iterator[Left]:
    """Yield the places in code that still hold the old name, constant or, by it, field.

    A field can be meant where the start-up module is named.
    """
    generated = read_record(after.folder)
    robots = {manifest.robot for manifest in owners}
    files = code_files(after)
    for path, uses in (*files.uses.items(), *files.unread.items()):
        if path not in generated and robots & {use.robot for use in uses}:
            text = after.folder.read(path).decode("utf-8", "replace")
            here = dict(words)
            for module, names in fields.items():
                here |= names if module in text else {}
            yield from (Left(at, word, here[word]) for at, word in _found(text, path, here))


def _in_manifests(after: Workspace, owners: Sequence[Manifest], old: str) -> Iterator[Left]:
    """Yield what a person reads in a manifest, but for the former names: comments and remarks."""
    for path in dict.fromkeys(source for manifest in owners for source in manifest.sources):
        data = after.folder.read(path)
        former = {(place.line, place.column) for place in former_places(data, path)}
        for at, word in _found(data.decode("utf-8-sig"), path, [old]):
            if not former & {(at.line, at.column), (at.line, at.column - 1)}:
                yield Left(at, word, _LOOK)


def _found(text: str, path: str, words: Iterable[str]) -> Iterator[tuple[Place, str]]:
    pattern = re.compile(r"(?<!\w)(?:" + "|".join(map(re.escape, words)) + r")(?!\w)")
    for number, line in enumerate(split_lines(text), 1):
        for match in pattern.finditer(line):
            yield Place(path, number, match.start() + 1, number, match.end() + 1), match[0]
