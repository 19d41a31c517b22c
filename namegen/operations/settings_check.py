"""What ``namegen.yaml`` names: robots, setups, kinds, languages and targets that must exist.

A name that fits nothing would switch a check off without a word, or blame right
code; so each is a finding at its line.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator

from namegen import checks, languages
from namegen.model.findings import Finding
from namegen.model.places import Place
from namegen.operations.workspace import Workspace
from namegen.text.likeness import nearest


def settings_findings(workspace: Workspace) -> Iterator[Finding]:
    """Yield each name in the settings that fits nothing.

    Raises:
        UnusableInput: the folder of the workspace's own targets does not exist.
        UnusableTarget: a target cannot be used.
    """
    yield from _of_lookups(workspace)
    if not workspace.broken:  # a robot whose manifest cannot be read may well be meant
        yield from _of_robots(workspace)
    for entry in workspace.settings.build:
        place = entry.places.get("target") or entry.places.get("")
        yield from _unknown(workspace, place, "target", entry.target, workspace.targets)


def _of_lookups(workspace: Workspace) -> Iterator[Finding]:
    kinds = workspace.catalogue.kinds
    known = set(languages.extensions().values())
    for rule in workspace.settings.lookups:
        for kind in [rule.kind] if rule.kind else rule.kinds.values():
            yield from _unknown(workspace, rule.place, "kind", kind, kinds)
        for language in rule.languages:
            yield from _unknown(workspace, rule.place, "language", language, known)


def _of_robots(workspace: Workspace) -> Iterator[Finding]:
    manifests = {manifest.robot: manifest for manifest in workspace.manifests}
    for entry in workspace.settings.code:
        for robot in entry.robots:
            yield from _unknown(workspace, entry.place, "robot", robot, manifests)
            if entry.setup and robot in manifests:
                setups = manifests[robot].setups
                yield from _unknown(
                    workspace, entry.place, f"setup of {robot}", entry.setup, setups
                )
    for built in workspace.settings.build:
        for robot in built.robots:
            place = built.places.get("robots") or built.places.get("")
            yield from _unknown(workspace, place, "robot", robot, manifests)


def _unknown(
    workspace: Workspace, place: Place | None, what: str, name: str, known: Collection[str]
) -> Iterator[Finding]:
    if name in known:
        return
    best = nearest(name, known)
    guess = f'Did you mean "{best}"? ' if best else ""
    listed = f"There are: {', '.join(sorted(known))}." if known else "There are none."
    yield checks.kinds()["wrong-value"].finding(
        place or Place(workspace.settings.path),
        f'"{name}" is no {what}. {guess}{listed}',
        found=name,
        expected=best,
    )
