"""Compare: two manifests, or a manifest and an as-found list; one action is one finding."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from namegen import checks
from namegen.checks.comparison.matching import matched
from namegen.errors import UnusableInput
from namegen.loading.as_found import read_as_found
from namegen.model.findings import Finding
from namegen.model.manifests import Manifest
from namegen.model.reports import Report
from namegen.model.views import ComparisonView, Side
from namegen.operations.alone import Alone, open_manifest
from namegen.operations.files import Folder, unreadable
from namegen.operations.verify import sort, stops
from namegen.operations.workspace import Workspace

LISTS = (".csv", ".tsv", ".txt")
_OF_MANIFESTS = frozenset({"kind", "port", "part", "address", "reversed", "optional"})


class Compared(Struct, frozen=True):
    """The findings, and the folder that their paths are relative to."""

    report: Report
    folder: Folder


def file_of(word: str, workspace: Workspace | None) -> Path:
    """Return the file that a word of the command line means: a robot's manifest, or a path.

    Raises:
        UnusableInput: it is neither.
    """
    robots = {m.robot: m.path for m in workspace.manifests} if workspace else {}
    if workspace is not None and word in robots:
        return workspace.folder.root / robots[word]
    if not Path(word).exists():
        raise UnusableInput(
            "this is neither a file nor a robot of this workspace",
            where=word,
            remedy="name a manifest, an as-found list (.csv)"
            + (f", or one of the robots: {', '.join(robots)}" if robots else ""),
        )
    return Path(word).absolute()


def catalogue_of(workspace: Workspace | None) -> Path | None:
    """Return the workspace's catalogue; without one the nearest to a manifest is taken."""
    if workspace is None or workspace.settings.catalogue is None:
        return None
    return workspace.folder.root / workspace.settings.catalogue


def compare(
    before: Path, after: Path, setup: str | None = None, catalogue: Path | None = None
) -> Compared:
    """Return what differs from one to the other; an as-found list is the later, however given.

    ``setup`` is the one of a manifest that a list is held against (None: the selected
    one). Two manifests are compared with all their devices.

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
    folder = Folder(folder.root)
    sides = [
        _list_side(file, folder) if space is None else _side(space, file, folder, setup)
        for file, space in zip(files, spaces, strict=True)
    ]
    faults = [fault for space in spaces if space for fault in _faults(space)]
    findings = [] if stops(faults) else list(_findings(_best_fit(*sides, setup=setup)))
    return Compared(Report(sort([*faults, *findings]), files=len(files)), folder)


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


def _side(space: Workspace, file: Path, folder: Folder, setup: str | None) -> Side:
    (manifest,) = space.manifests
    if setup is not None and setup not in manifest.setups:
        raise UnusableInput(
            f'{manifest.robot} has no setup "{setup}"',
            where=str(file),
            remedy=f"its setups: {', '.join(manifest.setups) or 'none'}",
        )
    devices = tuple(manifest.devices.values())
    return Side(folder.relative(file), devices, _OF_MANIFESTS, manifest)


def _list_side(file: Path, folder: Folder) -> Side:
    path = folder.relative(file)
    try:
        found = read_as_found(file.read_bytes(), path)
    except OSError as error:
        raise unreadable(path, error) from error
    return Side(path, found.devices, found.known)


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
