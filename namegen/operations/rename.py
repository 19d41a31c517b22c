"""Rename: gives a device another name in manifests, setups, code and outputs."""

from __future__ import annotations

import shlex
from collections.abc import Iterator, Sequence

from msgspec import Struct
from msgspec.structs import replace

from namegen.errors import UnusableInput
from namegen.loading.edits import rename_device, retire_name
from namegen.model.findings import Finding, Severity
from namegen.model.manifests import Device, Manifest
from namegen.operations import build, fix
from namegen.operations.acceptances import (
    ACCEPTED_FILE,
    accepted_bytes,
    carried,
    read_accepted,
)
from namegen.operations.build import Plan
from namegen.operations.code_files import ALL
from namegen.operations.constant_names import constant_words, with_new_constants
from namegen.operations.files import Folder
from namegen.operations.fix import Change
from namegen.operations.leftovers import Left, is_old, leftovers
from namegen.operations.roots import SETTINGS_FILE
from namegen.operations.schemes import schemes_by_robot
from namegen.operations.splicing import splice
from namegen.operations.verify import judge, stops
from namegen.operations.workspace import Workspace, reopened
from namegen.text.likeness import nearest


class Renamed(Struct, frozen=True):
    """What a rename does: the changed files, and the places that a person must look at.

    ``left`` are places in code and manifests that still mean the old name, or may.
    """

    changes: tuple[Change, ...]
    left: tuple[Left, ...]
    robots: tuple[str, ...]
    doubts: tuple[Finding, ...]
    """Warnings that the new name brings."""
    built: Plan
    """The outputs as they are to be after the changes."""


def rename(workspace: Workspace, old: str, new: str) -> Renamed:
    """Work the rename out in memory: the device keeps its old name under ``formerly``.

    It concerns every robot that has the device. The edited manifests are read
    and compared, and the code is audited again, before anything may be written.

    Raises:
        UnusableInput: there is no such device, the new name is taken or brings an
            error, or a manifest cannot be edited so that it reads as it should.
    """
    owners = [m for m in workspace.manifests if old in m.devices]
    _check(workspace, owners, old, new)
    manifests = _edited(workspace, owners, old, new)
    after = reopened(workspace, {change.path: change.new for change in manifests})
    doubts = tuple(_compare(workspace, after, owners, old, new))
    robots = tuple(manifest.robot for manifest in owners)
    planned = build.plan(after, robots)
    outputs = build.built_folder(planned)
    words = constant_words(workspace, owners, old, new)
    named = tuple(with_new_constants(workspace, outputs, planned, words))
    built = replace(after, folder=outputs.with_changes({one.path: one.new for one in named}))
    # Until now the text was this device's name to the letter, whatever kind is asked for.
    fixed = fix.fix(built, ALL, fix.SUGGESTED, lambda finding: is_old(finding, old, new))
    done = replace(built, folder=built.folder.with_changes({c.path: c.new for c in fixed.changes}))
    left = leftovers(workspace, done, fixed.after.findings, old, new)
    changes = (*manifests, *fix.one_each((*named, *fixed.changes)))
    changes += _carried(workspace.folder, changes)
    return Renamed(changes, left, robots, doubts, planned)


def write(workspace: Workspace, renamed: Renamed) -> None:
    """Write the changes; build the outputs afterwards.

    Raises:
        RefusedWrite: a file changed meanwhile, or may not be written.
    """
    fix.write_changes(workspace.folder, renamed.changes)


def _check(workspace: Workspace, owners: Sequence[Manifest], old: str, new: str) -> None:
    _check_all_known(workspace, owners)
    if not owners:
        raise _no_such_device(workspace, old, new)
    for manifest in owners:
        if new in manifest.devices:
            raise UnusableInput(
                f'{manifest.robot} has a device "{new}" already',
                where=str(manifest.devices[new].place()),
                remedy="choose another name",
            )


def _check_all_known(workspace: Workspace, owners: Sequence[Manifest]) -> None:
    """Refuse where a robot may have the device and its code cannot follow: half a rename."""
    if workspace.alone and owners:
        _check_homeless(workspace, owners[0])
    unsound = [manifest.path for manifest in owners if not workspace.sound(manifest)]
    for path in (*workspace.broken, *unsound):
        fault = next(f for f in workspace.faults_of[path] if f.severity is Severity.ERROR)
        raise UnusableInput(
            f"this error keeps the code of its robot from being renamed too: {fault.message}",
            where=str(fault.place),
            remedy="nothing was written; mend it first, and `namegen verify` shows all that is "
            "wrong",
        )


def _check_homeless(workspace: Workspace, manifest: Manifest) -> None:
    """Refuse to rename in one manifest alone what a workspace has around it."""
    home = (workspace.folder.root / manifest.path).parent
    root = next((one for one in (home, *home.parents) if (one / SETTINGS_FILE).is_file()), None)
    if root is not None:
        raise UnusableInput(
            "this manifest belongs to a workspace, whose other robots and code would keep the old "
            "name",
            where=manifest.path,
            remedy=f"nothing was written; rename it there, with --workspace {root}",
        )


def _no_such_device(workspace: Workspace, old: str, new: str) -> UnusableInput:
    now = [d.name for m in workspace.manifests for d in m.retired.get(old, ())]
    if now:
        words = " ".join(map(shlex.quote, (now[0], new)))
        back = now[0] == new
        return UnusableInput(
            f'"{old}" is an old name; the device is called "{now[0]}" now',
            remedy="it has that name already" if back else f"rename that: namegen rename {words}",
        )
    robot = next((one for one in workspace.manifests if one.robot == old), None)
    if robot is not None:
        return UnusableInput(
            f'"{old}" is a robot, and this renames devices',
            remedy=f"write `robot: {new}` into {robot.path}, then correct namegen.yaml where "
            "`namegen verify` says that the old name stands",
        )
    names = dict.fromkeys(name for m in workspace.manifests for name in m.devices)
    best = nearest(old, list(names))
    return UnusableInput(
        f'no robot has a device "{old}"',
        remedy=f'did you mean "{best}"?' if best else "`namegen fleet` shows all names",
    )


def _edited(
    workspace: Workspace, owners: Sequence[Manifest], old: str, new: str
) -> tuple[Change, ...]:
    """Return the changed manifests and included files."""
    homes = {_home(manifest.devices[old]) for manifest in owners}
    changes = []
    for path in dict.fromkeys(source for manifest in owners for source in manifest.sources):
        data = workspace.folder.read(path)
        mark = data[:3] if data.startswith(b"\xef\xbb\xbf") else b""
        before = data[len(mark) :].decode("utf-8")
        text = splice(before, rename_device(data, path, old, new))
        retired = retire_name(text.encode(), path, new, old) if path in homes else ()
        text = splice(text, retired)
        if text != before:
            changes.append(Change(path, data, mark + text.encode(), before, text, edits=1))
    return tuple(changes)


def _home(device: Device) -> str:
    """Return the file in which the device's former names stand, or would."""
    return device.place("formerly").path


def _compare(
    before: Workspace, after: Workspace, owners: Sequence[Manifest], old: str, new: str
) -> Iterator[Finding]:
    """Make sure that the edited manifests say the same but for the name; yield new warnings.

    Raises:
        UnusableInput: they do not, or the new name brings an error.
    """
    now = {manifest.robot: manifest for manifest in after.manifests}
    schemes = schemes_by_robot(after)
    for manifest in owners:
        wanted = manifest.devices[old]
        older = (name for name in wanted.formerly if name != new)
        wanted = replace(wanted, name=new, formerly=(old, *older), places={})
        edited = now.get(manifest.robot)
        found = edited.devices.get(new) if edited else None
        if edited is None or found is None or replace(found, places={}) != wanted:
            raise UnusableInput(
                f'the name cannot be changed there so that it reads as "{new}"',
                where=manifest.path,
                remedy="nothing was written; rename it by hand and add the old name to `formerly`",
            )
        old_findings = judge(before, manifest, schemes_by_robot(before))
        known = {finding.message for finding in old_findings}
        news = [one for one in judge(after, edited, schemes) if one.message not in known]
        yield from (finding for finding in news if new in (finding.found, finding.expected))
        if stops(news) and not stops(old_findings):
            raise UnusableInput(
                f'"{new}" cannot be a name there: {news[0].message}',
                where=str(news[0].place),
                remedy="nothing was written; choose another name",
            )


def _carried(folder: Folder, changes: Sequence[Change]) -> tuple[Change, ...]:
    """Return the change of the accepted findings, which are known by the text of their lines."""
    accepted = read_accepted(folder)
    now = carried(accepted, {one.path: (one.old_text, one.new_text) for one in changes})
    if now == accepted:
        return ()
    old, new = folder.read(ACCEPTED_FILE), accepted_bytes(now)
    texts = old.decode("utf-8-sig"), new.decode("utf-8")
    return (Change(ACCEPTED_FILE, old, new, *texts, edits=1),)
