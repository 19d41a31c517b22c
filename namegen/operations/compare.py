"""Compare: two manifests, or a manifest and an as-found list; one action is one finding."""

from __future__ import annotations

import os
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from namegen import checks
from namegen.checks.comparison.matching import matched
from namegen.errors import UnusableInput
from namegen.model.addresses import addressed
from namegen.model.findings import Finding
from namegen.model.manifests import Manifest
from namegen.model.reports import Report, SourceText
from namegen.model.views import ComparisonView, Side
from namegen.operations.alone import Alone, open_manifest
from namegen.operations.file_names import FileNames
from namegen.operations.files import Folder
from namegen.operations.found_side import found_side
from namegen.operations.verify import sort, stops
from namegen.operations.workspace import Workspace
from namegen.text.likeness import nearest

LISTS = (".csv", ".tsv", ".txt")
_OF_MANIFESTS = frozenset({"kind", "port", "part", "address", "reversed", "optional"})


class Compared(Struct, frozen=True):
    """The findings, and what gives the text of the files that they name."""

    report: Report
    source: SourceText


def file_of(word: str, workspace: Workspace | None) -> Path:
    """Return the file that a word of the command line means: a robot's manifest, or a path.

    Raises:
        UnusableInput: it is neither.
    """
    robots = {m.robot: m.path for m in workspace.manifests} if workspace else {}
    if workspace is not None and word in robots:
        return workspace.folder.root / robots[word]
    if not Path(word).exists():
        best = nearest(word, list(robots))
        raise UnusableInput(
            "this is neither a file nor a robot of this workspace",
            where=word,
            remedy=(f'did you mean "{best}"? ' if best else "")
            + "name a manifest, an as-found list (.csv)"
            + (f", or one of the robots: {', '.join(robots)}" if robots else "")
            + "".join(
                f"; {path} cannot be read" for path in (workspace.broken if workspace else ())
            ),
        )
    return Path(os.path.abspath(word))


def catalogue_of(workspace: Workspace | None) -> Path | None:
    """Return the workspace's catalogue; without one the nearest to a manifest is taken."""
    if workspace is None or workspace.settings.catalogue is None:
        return None
    return workspace.folder.root / workspace.settings.catalogue


def compare(
    before: Path,
    after: Path,
    setup: str | None = None,
    catalogue: Path | None = None,
    near: Sequence[Path] = (),
) -> Compared:
    """Return what differs from one to the other; an as-found list is the later, however given.

    ``setup`` is the one of a manifest that a list is held against (None: the selected
    one). Two manifests are compared with all their devices. Paths are told from the
    first of the folders ``near`` that a file lies in, or as a whole.

    Raises:
        UnusableInput: a file cannot be used, both are lists, or the setup is not known.
    """
    files = (after, before) if _is_list(before) else (before, after)
    if all(_is_list(file) for file in files):
        raise UnusableInput(
            "both are as-found lists", where=str(after), remedy="compare each with a manifest"
        )
    if setup is not None and not any(_is_list(file) for file in files):
        raise UnusableInput(
            "a setup is chosen to compare a manifest with an as-found list",
            where=setup,
            remedy="leave --setup out; of two manifests all setups are compared",
        )
    spaces = [None if _is_list(file) else _opened(file, files, catalogue) for file in files]
    folder = next(space.folder for space in spaces if space is not None)
    names = FileNames(Folder(folder.root), near)
    sides = [
        None if space is None else _side(space, names.of(file), setup)
        for file, space in zip(files, spaces, strict=True)
    ]
    manifest = next(side.manifest for side in sides if side is not None and side.manifest)
    both = [
        side or found_side(file, names.of_list(file), manifest)
        for file, side in zip(files, sides, strict=True)
    ]
    faults = [fault for space in spaces if space for fault in _faults(space)]
    findings = [] if stops(faults) else list(_findings(_best_fit(*both, setup=setup)))
    told = sort(names.told(finding) for finding in (*faults, *findings))
    return Compared(Report(told, files=len(files)), names.source)


def _is_list(file: Path) -> bool:
    return file.suffix.lower() in LISTS


def _opened(file: Path, files: Iterable[Path], catalogue: Path | None) -> Workspace:
    """Open one manifest with paths that suit both files."""
    space = open_manifest(Alone(file, catalogue, code=tuple(files)))
    if not space.manifests:
        faults = [fault for some in space.faults_of.values() for fault in some]
        raise UnusableInput(
            "\n".join(f"{fault.place}: {fault.message}" for fault in faults),
            remedy="mend these lines first",
        )
    return space


def _faults(space: Workspace) -> Iterator[Finding]:
    yield from space.faults
    for found in space.faults_of.values():
        yield from found


def _side(space: Workspace, name: str, setup: str | None) -> Side:
    (manifest,) = space.manifests
    if setup is not None and setup not in manifest.setups:
        best = nearest(setup, list(manifest.setups))
        raise UnusableInput(
            f'{manifest.robot} has no setup "{setup}"',
            where=name,
            remedy=(f'did you mean "{best}"? ' if best else "")
            + f"its setups: {', '.join(manifest.setups) or 'none'}",
        )
    manifest = addressed(manifest, space.catalogue)
    return Side(name, tuple(manifest.devices.values()), _OF_MANIFESTS, manifest)


def _best_fit(before: Side, after: Side, *, setup: str | None) -> ComparisonView:
    """Return the comparison with the wanted setup, or with one that a list fits instead."""
    manifest = before.manifest or after.manifest
    if manifest is None or (before.manifest and after.manifest):
        return matched(before, after)
    wanted = setup or manifest.selected
    view = _with_setup(before, after, manifest, wanted)
    if setup is not None or not _unlike(view):
        return view
    for name in manifest.setups:
        other = _with_setup(before, after, manifest, name)
        if not _unlike(other):
            return replace(other, fits=name, setup=wanted)
    return view


def _with_setup(before: Side, after: Side, manifest: Manifest, setup: str | None) -> ComparisonView:
    devices = manifest.devices_in(setup)
    sides = [replace(side, devices=devices) if side.manifest else side for side in (before, after)]
    return matched(*sides)


def _unlike(view: ComparisonView) -> bool:
    """Whether one side has devices that the other lacks, but for those that may be absent."""
    return not all(device.optional for device in (*view.missing, *view.extra))


def _findings(view: ComparisonView) -> Iterator[Finding]:
    for check in checks.comparison_checks():
        yield from check(view)
