"""The open workspace: settings, catalogue and manifests, read once, with all their faults."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING

from msgspec import Struct, field
from msgspec.structs import replace

from namegen import checks
from namegen.errors import UnusableInput
from namegen.loading.catalogue import NO_CATALOGUE, read_catalogue
from namegen.loading.lookups import with_known_kinds
from namegen.loading.manifest import read_manifest
from namegen.loading.settings import read_settings
from namegen.model.addresses import addressed
from namegen.model.boards import Catalogue
from namegen.model.findings import Fault, Finding, Severity
from namegen.model.manifests import Manifest
from namegen.model.places import Place
from namegen.model.workspaces import Settings
from namegen.operations.files import Folder
from namegen.operations.roots import SETTINGS_FILE
from namegen.text.likeness import nearest

if TYPE_CHECKING:
    from namegen.targets.shelf import Shelf
    from namegen.targets.target import Target

CATALOGUE_FILE = "catalogue.yaml"


class Workspace(Struct, frozen=True, dict=True):
    """What the YAML files of a workspace say, and the folder that they lie in.

    ``faults`` belong to the settings and the catalogue; a manifest's own are in
    ``faults_of`` under its path. ``broken`` are the paths of manifests that
    could not be made out at all.
    """

    folder: Folder
    settings: Settings
    catalogue: Catalogue
    manifests: tuple[Manifest, ...]
    faults: tuple[Finding, ...] = ()
    faults_of: Mapping[str, tuple[Finding, ...]] = field(default_factory=dict)
    broken: tuple[str, ...] = ()
    alone: bool = False
    """Whether it is one manifest that belongs to no workspace."""

    @property
    def addressed(self) -> tuple[Manifest, ...]:
        """The manifests, each with the bus addresses that the catalogue gives."""
        return tuple(addressed(manifest, self.catalogue) for manifest in self.manifests)

    @cached_property
    def shelf(self) -> Shelf:
        """The targets that `build` may name: the bundled ones, then the workspace's own.

        Raises:
            UnusableInput: the folder of the workspace's own targets does not exist.
        """
        from namegen.targets.shelf import shelf  # 10 ms that an audit alone can save

        return shelf(_template_folders(self), self.folder.root)

    @property
    def targets(self) -> Mapping[str, Target]:
        """The targets that can be used.

        Raises:
            UnusableInput: the folder of the workspace's own targets does not exist.
        """
        return self.shelf.targets

    def chosen(self, robots: Sequence[str]) -> tuple[Manifest, ...]:
        """Return the manifests of the named robots; no name means all.

        Raises:
            UnusableInput: a name is not a robot of this workspace.
        """
        known = {manifest.robot: manifest for manifest in self.manifests}
        for robot in robots:
            if robot not in known:
                raise self._no_robot(robot, known)
        return tuple(known[robot] for robot in robots) if robots else self.manifests

    def _no_robot(self, robot: str, known: Iterable[str]) -> UnusableInput:
        """Say that a robot is not there, or that its manifest could not be made out."""
        own = next((path for path in self.broken if Path(path).stem == robot), None)
        if own is not None:
            return UnusableInput(
                f'robot "{robot}" cannot be read:\n'
                + "\n".join(f"{one.place}: {one.message}" for one in self.faults_of[own]),
                remedy="mend these lines first",
            )
        best = nearest(robot, list(known))
        meant = f'did you mean "{best}"? ' if best else ""
        other = next((one for one in self.manifests if Path(one.path).stem == robot), None)
        if other is not None:
            meant = f"{other.path} says `robot: {other.robot}`; "
        there = f"the robots are: {', '.join(known)}" if known else "no manifest can be read"
        lost = "".join(f"; {path} cannot be read" for path in self.broken)
        return UnusableInput(f'there is no robot "{robot}"', remedy=f"{meant}{there}{lost}")

    def sound(self, manifest: Manifest) -> bool:
        """Whether the manifest's text was read without an error."""
        return not any(f.severity is Severity.ERROR for f in self.faults_of[manifest.path])

    def source(self, path: str) -> str | None:
        """Return the text of a file to show in a report, or None."""
        return self.folder.source(path)


def open_workspace(root: Path) -> Workspace:
    """Read ``namegen.yaml`` in ``root`` and everything that it names.

    Raises:
        UnusableInput: the settings cannot be used, or name no manifest.
    """
    return open_folder(Folder(root))


def open_folder(folder: Folder) -> Workspace:
    """Read the workspace as it is in ``folder``, which may hold edits not yet written.

    Raises:
        UnusableInput: the settings cannot be used, or name no manifest.
    """
    loaded = read_settings(folder.read(SETTINGS_FILE), SETTINGS_FILE)
    if loaded.value is None or (loaded.faults and not loaded.value.robots):
        raise UnusableInput(listed(loaded.faults), remedy="mend these lines first")
    paths = _matches(folder, loaded.value.robots)
    if not paths:
        raise UnusableInput(
            f"`robots` names no file that exists: {', '.join(loaded.value.robots)}",
            where=str(loaded.value.places.get("robots", SETTINGS_FILE)),
            remedy="it lists the manifests' paths, such as `robots: [robots/*.yaml]`; a robot "
            "without a manifest cannot be used",
        )
    return opened(folder, loaded.value, paths, findings_of(loaded.faults))


def reopened(workspace: Workspace, changes: Mapping[str, bytes]) -> Workspace:
    """Read the same workspace, or the same manifest, as it would be after the changes.

    Raises:
        UnusableInput: the settings cannot be used any more.
    """
    folder = workspace.folder.with_changes(changes)
    if not workspace.alone:
        return open_folder(folder)
    again = opened(folder, workspace.settings, workspace.settings.robots)
    return replace(again, alone=True)


def opened(
    folder: Folder, settings: Settings, paths: Iterable[str], faults: tuple[Finding, ...] = ()
) -> Workspace:
    """Read the catalogue that the settings name, and the manifests at ``paths``.

    Raises:
        UnusableInput: the catalogue cannot be read.
    """
    catalogue = NO_CATALOGUE
    if settings.catalogue is not None:
        loaded = read_catalogue(_catalogue_bytes(folder, settings), settings.catalogue)
        catalogue = loaded.value or NO_CATALOGUE
        faults += findings_of(loaded.faults)
    rules = (with_known_kinds(rule, catalogue.kinds) for rule in settings.lookups)
    settings = replace(settings, lookups=tuple(rules))
    manifests: list[Manifest] = []
    faults_of: dict[str, tuple[Finding, ...]] = {}
    broken: list[str] = []
    for path in paths:
        manifest, faults_of[path] = _read_one(folder, path, catalogue)
        if manifest is None:
            broken.append(path)
            continue
        twin = next((other for other in manifests if other.robot == manifest.robot), None)
        if twin is not None:
            faults_of[path] += (_same_robot(manifest, twin),)
            faults_of[twin.path] += (_same_robot(twin, manifest),)
        manifests.append(manifest)
    return Workspace(
        folder, settings, catalogue, tuple(manifests), faults, faults_of, tuple(broken)
    )


def _catalogue_bytes(folder: Folder, settings: Settings) -> bytes:
    """Return the catalogue's bytes; where it cannot be read, say which line names it."""
    path = settings.catalogue or ""
    try:
        return folder.read(path)
    except UnusableInput as error:
        if "catalogue" not in settings.places:
            raise
        where = str(settings.places["catalogue"])
        raise UnusableInput(f"`{path}` {error.what}", where=where, remedy=error.remedy) from error


def _read_one(
    folder: Folder, path: str, catalogue: Catalogue
) -> tuple[Manifest | None, tuple[Finding, ...]]:
    try:
        loaded = read_manifest(path, folder.read, catalogue)
    except UnusableInput as error:
        return None, findings_of([Fault("bad-yaml", f"{error.what}; {error.remedy}", Place(path))])
    found = findings_of(loaded.faults)
    if loaded.value is None:
        # Whatever keeps a whole manifest from being read is an error.
        found = tuple(replace(finding, severity=Severity.ERROR) for finding in found)
    return loaded.value, found


def _template_folders(workspace: Workspace) -> list[Path]:
    own = workspace.settings.templates
    if not own:
        return []
    where = str(workspace.settings.places.get("templates") or workspace.settings.path)
    if Path(own).is_absolute():
        raise UnusableInput(
            "`templates` is no path from this file on, so it holds on this machine alone",
            where=where,
            remedy="write the path from the folder of namegen.yaml on, such as my-templates",
        )
    folder = workspace.folder.root / own
    if not folder.is_dir():
        raise UnusableInput(
            f"`templates: {own}` names a folder that does not exist",
            where=where,
            remedy="make the folder, or take the line away",
        )
    workspace.folder.watch(own)
    return [folder]


def _matches(folder: Folder, globs: Iterable[str]) -> list[str]:
    """Return the files that the globs name, sorted, each once."""
    found: dict[str, None] = {}
    for glob in globs:
        pattern = Path(glob)
        if pattern.is_absolute() or ".." in pattern.parts:
            raise UnusableInput(
                f"`robots: {glob}` leaves the workspace",
                where=SETTINGS_FILE,
                remedy="keep the manifests below the folder of namegen.yaml",
            )
        found.update(dict.fromkeys(folder.matches(glob)))
    return list(found)


def _same_robot(manifest: Manifest, twin: Manifest) -> Finding:
    message = (
        f'two manifests say robot: "{manifest.robot}" ({twin.path} is the other); '
        "give each robot its own name"
    )
    return findings_of([Fault("wrong-value", message, manifest.place("robot"), manifest.robot)])[0]


def findings_of(faults: Iterable[Fault]) -> tuple[Finding, ...]:
    """Give the faults of loading the severity that their kind declares."""
    return tuple(
        checks.kinds()[fault.kind].finding(
            fault.place,
            fault.message,
            found=fault.found,
            expected=fault.expected,
            related=fault.related,
        )
        for fault in faults
    )


def listed(faults: Iterable[Fault]) -> str:
    """Return faults as the lines of one message."""
    return "\n".join(f"{fault.place}: {fault.message}" for fault in faults)
