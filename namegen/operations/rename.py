"""Rename: gives a device another name in manifests, setups, code and outputs."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from msgspec import Struct
from msgspec.structs import replace

from namegen.errors import UnusableInput
from namegen.loading.edits import rename_device, retire_name
from namegen.model.findings import Finding
from namegen.model.manifests import Device, Manifest
from namegen.model.places import Place
from namegen.operations import build, fix
from namegen.operations.code_files import ALL, code_files
from namegen.operations.fix import Change
from namegen.operations.record import read_record
from namegen.operations.schemes import schemes_by_robot
from namegen.operations.splicing import splice
from namegen.operations.verify import judge, stops
from namegen.operations.workspace import Workspace, reopened
from namegen.text.likeness import nearest
from namegen.text.positions import split_lines


class Renamed(Struct, frozen=True):
    """What a rename does: the changed files, and the places that a person must look at.

    ``left`` are lines of code that still hold the old name or its constant.
    """

    changes: tuple[Change, ...]
    left: tuple[tuple[Place, str], ...]
    robots: tuple[str, ...]
    doubts: tuple[Finding, ...]
    """Warnings that the new name brings."""


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
    built = replace(after, folder=build.built_folder(build.plan(after, robots)))
    fixed = fix.fix(built, ALL, fix.SAFE, lambda finding: _is_old(finding, old, new))
    done = built.folder.with_changes({c.path: c.new for c in fixed.changes})
    left = tuple(_left(replace(built, folder=done), workspace, owners, old))
    return Renamed((*manifests, *fixed.changes), left, robots, doubts)


def write(workspace: Workspace, renamed: Renamed) -> None:
    """Write the changes; build the outputs afterwards.

    Raises:
        RefusedWrite: a file changed meanwhile, or may not be written.
    """
    fix.write_changes(workspace.folder, renamed.changes)


def _check(workspace: Workspace, owners: Sequence[Manifest], old: str, new: str) -> None:
    if not owners and workspace.broken:
        path = workspace.broken[0]
        raise UnusableInput(workspace.faults_of[path][0].message, where=path)
    if not owners:
        names = [name for manifest in workspace.manifests for name in manifest.devices]
        best = nearest(old, names)
        now = [d.name for m in workspace.manifests for d in m.retired.get(old, ())]
        if now:
            raise UnusableInput(
                f'"{old}" is an old name; the device is called "{now[0]}" now',
                remedy=f"rename that: namegen rename {now[0]} {new}",
            )
        raise UnusableInput(
            f'no robot has a device "{old}"',
            remedy=f'did you mean "{best}"?' if best else "`namegen explain NAME` shows near names",
        )
    for manifest in owners:
        if new in manifest.devices:
            raise UnusableInput(
                f'{manifest.robot} has a device "{new}" already',
                where=str(manifest.devices[new].place()),
                remedy="choose another name",
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
        retired = retire_name(text.encode(), path, new, old) if path in homes else None
        text = splice(text, [retired]) if retired else text
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
        wanted = replace(wanted, name=new, formerly=(old, *wanted.formerly), places={})
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


def _is_old(finding: Finding, old: str, new: str) -> bool:
    return finding.kind == "retired-name" and (finding.found, finding.expected) == (old, new)


def _left(
    after: Workspace, before: Workspace, owners: Sequence[Manifest], old: str
) -> Iterator[tuple[Place, str]]:
    """Yield the lines of code that still hold the old name or its old constant."""
    constants = {
        scheme.constant(manifest.devices[old])
        for manifest in owners
        for scheme in schemes_by_robot(before).get(manifest.robot, ())
    }
    words = re.compile(r"(?<!\w)(?:" + "|".join(map(re.escape, {old, *constants})) + r")(?!\w)")
    generated = read_record(after.folder)
    robots = {manifest.robot for manifest in owners}
    for path, uses in code_files(after).uses.items():
        if path in generated or not robots & {use.robot for use in uses}:
            continue
        text = after.folder.read(path).decode("utf-8", "replace")
        for number, line in enumerate(split_lines(text), 1):
            for match in words.finditer(line):
                start, end = match.start() + 1, match.end() + 1
                yield Place(path, number, start, number, end), match[0]
