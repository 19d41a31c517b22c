"""Rendering: every output that the settings ask for, as artifacts in memory."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from msgspec.structs import replace

from namegen.errors import UnusableInput
from namegen.model.artifacts import Artifact
from namegen.model.findings import Fault, Finding
from namegen.model.manifests import Manifest
from namegen.model.workspaces import BuildEntry
from namegen.operations.workspace import Workspace, findings_of
from namegen.targets.misfits import misfits
from namegen.targets.rendering import render
from namegen.targets.scene import Scene
from namegen.targets.target import Target
from namegen.text.likeness import nearest
from namegen.text.words import convert

_HOLDER = re.compile(r"\{([^{}]*)\}")


def render_all(
    workspace: Workspace, manifests: Sequence[Manifest], *, whole_fleet: bool
) -> Iterator[Artifact]:
    """Yield the artifacts of the manifests; those of the whole workspace only when it is whole.

    Raises:
        UnusableInput: a target, robot or place holder is not known.
        UnusableTarget: a target, its options or a template cannot be used.
    """
    jobs = list(_jobs(workspace, manifests, whole_fleet))
    # The outputs of one robot come one after another, because they share its template data.
    turns = sorted(
        range(len(jobs)), key=lambda turn: [m.robot for m in jobs[turn][1].manifests[:1]]
    )
    made = {turn: render(*jobs[turn]) for turn in turns}
    for turn, (_, scene, _) in enumerate(jobs):
        row = None if workspace.alone else scene.places.get("to")
        yield replace(made[turn], row=row)


def misfits_of(workspace: Workspace, manifest: Manifest) -> tuple[Finding, ...]:
    """Return what keeps the targets of the settings from making this robot's outputs.

    Outputs for the whole workspace and targets that are not known are left to `render_all`.
    """
    settings = workspace.settings
    faults: list[Fault] = []
    for entry in settings.build:
        target = workspace.targets.get(entry.target)
        wanted = not entry.robots or manifest.robot in entry.robots
        if target is not None and target.per == "robot" and wanted:
            scene = Scene((manifest,), workspace.catalogue, entry.options, entry.places)
            path = path_of(workspace, entry, manifest.robot)
            faults += misfits(target, scene, path)
    return tuple(replace(one, robot=manifest.robot) for one in findings_of(faults))


def _jobs(
    workspace: Workspace, manifests: Sequence[Manifest], whole_fleet: bool
) -> Iterator[tuple[Target, Scene, str]]:
    """Yield what is to be rendered, in the order of the settings: target, scene and path."""
    settings = workspace.settings
    if not settings.build:
        return
    for entry in settings.build:
        target = workspace.targets.get(entry.target)
        if entry.target in workspace.shelf.broken:
            raise workspace.shelf.broken[entry.target]
        if target is None:
            raise _unknown_target(workspace, entry)
        _check_robots(workspace, entry)
        chosen = [m for m in manifests if not entry.robots or m.robot in entry.robots]
        if target.per == "workspace":
            if whole_fleet:
                scene = Scene(tuple(chosen), workspace.catalogue, entry.options, entry.places)
                yield target, scene, path_of(workspace, entry, None)
            continue
        for manifest in chosen:
            scene = Scene((manifest,), workspace.catalogue, entry.options, entry.places)
            yield target, scene, path_of(workspace, entry, manifest.robot)


def path_of(workspace: Workspace, entry: BuildEntry, robot: str | None) -> str:
    """Return where an output goes: ``to`` with ``{robot}`` and ``{Robot}`` filled in.

    Raises:
        UnusableInput: ``to`` holds another place holder, or one that has no robot.
    """
    words = {} if robot is None else {"robot": robot, "Robot": convert(robot, "PascalCase")}
    if any(name not in words for name in _HOLDER.findall(entry.to)):
        raise UnusableInput(
            f"`to: {entry.to}` cannot be filled in",
            where=_where(workspace, entry),
            remedy="only {robot} and {Robot} may stand in braces, and only for a target that "
            "makes one file per robot",
        )
    return _HOLDER.sub(lambda match: words[match[1]], entry.to)


def _check_robots(workspace: Workspace, entry: BuildEntry) -> None:
    if workspace.broken:  # one of them may be meant
        return
    try:
        workspace.chosen(entry.robots)
    except UnusableInput as error:
        place = entry.places.get("robots")
        where = str(place) if place else _where(workspace, entry)
        raise UnusableInput(error.what, where=where, remedy=error.remedy) from error


def _unknown_target(workspace: Workspace, entry: BuildEntry) -> UnusableInput:
    names = sorted(workspace.targets)
    best = nearest(entry.target, names)
    meant = f'did you mean "{best}"? ' if best else ""
    return UnusableInput(
        f'there is no target "{entry.target}"',
        where=_where(workspace, entry),
        remedy=f"{meant}the targets are: {', '.join(names)}",
    )


def _where(workspace: Workspace, entry: BuildEntry) -> str:
    place = entry.places.get("target") or entry.places.get("")
    return str(place) if place else workspace.settings.path
