"""Which languages a workspace generates for which robot, and how they spell identifiers."""

from __future__ import annotations

from namegen.model.identifiers import NamingScheme
from namegen.operations.workspace import Workspace


def schemes_by_robot(workspace: Workspace) -> dict[str, tuple[NamingScheme, ...]]:
    """Return, for each robot, the languages that its outputs are written in."""
    settings = workspace.settings
    if not settings.build:
        return {}
    from namegen.targets.schemes import naming_schemes  # 10 ms that an audit alone can save

    schemes = naming_schemes()
    languages: dict[str, dict[str, NamingScheme]] = {}
    for entry in settings.build:
        target = workspace.targets.get(entry.target)
        if target is None or target.language is None:
            continue
        for robot in entry.robots or [manifest.robot for manifest in workspace.manifests]:
            languages.setdefault(robot, {})[target.language] = schemes[target.language]
    return {robot: tuple(found.values()) for robot, found in languages.items()}
