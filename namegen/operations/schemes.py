"""Which languages a workspace generates for which robot, and how they spell identifiers."""

from __future__ import annotations

from pathlib import Path

from namegen.bundled import bundled
from namegen.errors import UnusableInput
from namegen.model.identifiers import NamingScheme
from namegen.operations.workspace import Workspace


def template_folders(workspace: Workspace) -> list[Path]:
    """Return the folders that hold targets: the bundled ones, then the workspace's own.

    Raises:
        UnusableInput: the workspace's own folder does not exist.
    """
    folders = [bundled("templates")]
    if own := workspace.settings.templates:
        folder = workspace.folder.root / own
        if not folder.is_dir():
            raise UnusableInput(
                "`templates` names a folder that does not exist",
                where=f"{workspace.settings.path}: {own}",
                remedy="make the folder, or take the line away",
            )
        folders.append(folder)
    return folders


def schemes_by_robot(workspace: Workspace) -> dict[str, tuple[NamingScheme, ...]]:
    """Return, for each robot, the languages that its outputs are written in."""
    settings = workspace.settings
    if not settings.build:
        return {}
    from namegen.targets.schemes import naming_schemes  # 10 ms that an audit alone can save
    from namegen.targets.shelf import load

    known = load(template_folders(workspace))
    schemes = naming_schemes()
    languages: dict[str, dict[str, NamingScheme]] = {}
    for entry in settings.build:
        target = known.get(entry.target)
        if target is None or target.language is None:
            continue
        for robot in entry.robots or [manifest.robot for manifest in workspace.manifests]:
            languages.setdefault(robot, {})[target.language] = schemes[target.language]
    return {robot: tuple(found.values()) for robot, found in languages.items()}
