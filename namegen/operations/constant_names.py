"""Constant names: what code calls the generated constants of a device that gets another name."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterator, Mapping, Sequence

from msgspec import Struct
from msgspec.structs import replace

from namegen import languages
from namegen.languages.edits import spliced
from namegen.model.derived import numbers_of
from namegen.model.facts import Path
from namegen.model.manifests import Manifest
from namegen.model.places import Span
from namegen.operations.build import KEPT, Plan
from namegen.operations.code_files import code_files
from namegen.operations.code_reader import CodeReader
from namegen.operations.files import Folder
from namegen.operations.fix import Change
from namegen.operations.record import read_record
from namegen.operations.schemes import schemes_by_robot
from namegen.operations.workspace import Workspace

Words = Mapping[tuple[str, str], Mapping[str, str]]
"""By robot and language: the constants of a device, each with what it is to be called."""


class _Edit(Struct, frozen=True):
    """A word in the code that means a constant: where, and the constant as it is to be."""

    span: Span
    file: str
    inside: Path


def constant_words(workspace: Workspace, owners: Sequence[Manifest], old: str, new: str) -> Words:
    """Return what the device's constants are called, and will be, where that differs."""
    found: dict[tuple[str, str], dict[str, str]] = {}
    schemes = schemes_by_robot(workspace)
    for manifest in owners:
        before = manifest.devices[old]
        after = replace(before, name=new)
        for scheme in schemes.get(manifest.robot, ()):
            pairs = {scheme.constant(before): scheme.constant(after)}
            for one in numbers_of(before, manifest, workspace.catalogue):
                pairs[scheme.number(before, one.name)] = scheme.number(after, one.name)
            changed = {was: becomes for was, becomes in pairs.items() if was != becomes}
            found[manifest.robot, scheme.language] = changed
    return found


def with_new_constants(
    before: Workspace, folder: Folder, planned: Plan, words: Words
) -> Iterator[Change]:
    """Yield the changes of code that refers to the constants by a dotted name, across files.

    ``folder`` holds the outputs as they will be. A word is changed only where it is certain
    that it means the constant in a generated file, and that the constant is there afterwards.
    """
    record = read_record(before.folder)
    kept = {one.path for one in planned.outputs if one.state in KEPT}
    robots = {path: entry.robot for path, entry in record.items() if path not in kept}
    files = code_files(before)
    was, becomes = (CodeReader(one, (), files.roots, record) for one in (before.folder, folder))
    for path in files.uses:
        language = languages.for_path(path)
        if language is None or path in record:
            continue
        mine = {file: words.get((robot or "", language.name), {}) for file, robot in robots.items()}
        edits = [one for one in _edits(was, path, mine) if becomes.defines(one.file, one.inside)]
        change = _changed(before.folder, path, edits) if edits else None
        if change is not None and _holds(folder, change, edits, files.roots, record):
            yield change


def _edits(
    reader: CodeReader, path: str, words: Mapping[str, Mapping[str, str]]
) -> Iterator[_Edit]:
    """Yield the words of a file that mean a constant in one of the generated files."""
    for word in sorted({word for some in words.values() for word in some}):
        for span, (file, inside) in reader.references(path, word):
            becomes = words.get(file, {}).get(word)
            if becomes is not None:
                yield _Edit(span, file, (*inside[:-1], becomes))


def _changed(folder: Folder, path: str, edits: Sequence[_Edit]) -> Change | None:
    """Return the file with the new words, or None where that cannot be written or is not valid."""
    language = languages.for_path(path)
    old = folder.read(path)
    if language is None or not (decoded := language.decode(old)).survives(old):
        return None
    after = spliced(decoded.utf8, [(one.span, one.inside[-1].encode()) for one in edits])
    if language.objection(after, after, ()) is not None:
        return None
    text = after.decode("utf-8")
    return Change(path, old, decoded.encode(text), decoded.text, text, len(edits))


def _holds(
    folder: Folder,
    change: Change,
    edits: Sequence[_Edit],
    roots: Sequence[str],
    outputs: Collection[str],
) -> bool:
    """Whether each new word means the new constant when the file is read again."""
    reader = CodeReader(folder.with_changes({change.path: change.new}), (), roots, outputs)
    words = {one.inside[-1] for one in edits}
    found = Counter(home for word in words for _, home in reader.references(change.path, word))
    wanted = Counter((one.file, one.inside) for one in edits)
    return all(found[home] >= count for home, count in wanted.items())
