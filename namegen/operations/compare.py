"""Compare: two manifests, or a manifest and an as-found list; one action is one finding."""

from __future__ import annotations

import os
from collections.abc import Iterable, Iterator, Mapping, Sequence
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from namegen import checks
from namegen.checks.comparison.matching import matched
from namegen.errors import UnusableInput
from namegen.loading.as_found import read_as_found
from namegen.model.findings import Finding
from namegen.model.manifests import Device, Manifest, Port
from namegen.model.places import Place
from namegen.model.reports import Report, SourceText
from namegen.model.views import ComparisonView, Side
from namegen.operations.alone import Alone, open_manifest
from namegen.operations.files import Folder, unreadable
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
    names = _Names(Folder(folder.root), near)
    sides = [
        None if space is None else _side(space, names.of(file), setup)
        for file, space in zip(files, spaces, strict=True)
    ]
    manifest = next(side.manifest for side in sides if side is not None and side.manifest)
    both = [
        side or _list_side(file, names.of(file), manifest)
        for file, side in zip(files, sides, strict=True)
    ]
    faults = [fault for space in spaces if space for fault in _faults(space)]
    findings = [] if stops(faults) else list(_findings(_best_fit(*both, setup=setup)))
    told = sort(names.told(finding) for finding in (*faults, *findings))
    return Compared(Report(told, files=len(files)), names.source)


class _Names:
    """How files are called in a report: from the workspace, or from where the user stands."""

    def __init__(self, folder: Folder, near: Sequence[Path]) -> None:
        self.folder = folder
        self.near = near
        self.paths: dict[str, str] = {}

    def of(self, file: Path) -> str:
        """Return what a file is called."""
        inside = next((one for one in self.near if file.is_relative_to(one)), None)
        name = (file.relative_to(inside) if inside else file).as_posix()
        self.paths[name] = self.folder.relative(file)
        return name

    def told(self, finding: Finding) -> Finding:
        """Return a finding with its places called so."""
        related = [replace(one, place=self._place(one.place)) for one in finding.related]
        return replace(finding, place=self._place(finding.place), related=tuple(related))

    def source(self, name: str) -> str | None:
        """Return the text of a file by what it is called."""
        return self.folder.source(self.paths.get(name, name))

    def _place(self, place: Place) -> Place:
        if place.path in self.paths:
            return place  # of a list, which is read under its own name
        return replace(place, path=self.of(self.folder.root / place.path))


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
        raise UnusableInput(
            f'{manifest.robot} has no setup "{setup}"',
            where=name,
            remedy=f"its setups: {', '.join(manifest.setups) or 'none'}",
        )
    devices = tuple(manifest.devices.values())
    return Side(name, devices, _OF_MANIFESTS, manifest)


def _list_side(file: Path, name: str, manifest: Manifest) -> Side:
    """Return a list as a side, with its ports spelt as the manifest spells them.

    What a program printed is known only where it is not what the manifest says: that
    program was built from another one, or a person wrote the list after all.
    """
    try:
        found = read_as_found(file.read_bytes(), name)
    except OSError as error:
        raise unreadable(name, error) from error
    spelt = _spellings(manifest)
    devices = tuple(
        replace(one, ports=tuple(spelt.get(str(port).casefold(), port) for port in one.ports))
        for one in found.devices
    )
    known = found.known
    if found.printed:
        known = frozenset(field for field in known if _contradicts(field, devices, manifest))
    return Side(name, devices, known, printed=found.printed)


def _wirings(manifest: Manifest) -> list[Device]:
    """Return the devices as the manifest has them, and as each setup wires them."""
    wired = [one for setup in manifest.setups for one in manifest.devices_in(setup)]
    return [*manifest.devices.values(), *wired]


def _spellings(manifest: Manifest) -> Mapping[str, Port]:
    """Return every port that a device has in some setup, by its text in small letters."""
    return {str(port).casefold(): port for one in _wirings(manifest) for port in one.ports}


def _contradicts(field: str, devices: Iterable[Device], manifest: Manifest) -> bool:
    """Whether a list says something of a device that the manifest says in no setup."""
    said = {(one.name, _value(one, field)) for one in _wirings(manifest)}
    return any(
        one.name in manifest.devices
        and _value(one, field)
        and (one.name, _value(one, field)) not in said
        for one in devices
    )


def _value(device: Device, field: str) -> object:
    return {"port": device.ports, "kind": device.kind, "address": device.address}[field]


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
