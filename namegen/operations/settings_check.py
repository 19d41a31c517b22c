"""What ``namegen.yaml`` names: robots, setups, kinds, languages and targets that must exist.

A name that fits nothing would switch a check off without a word, or blame right
code; so each is a finding where it stands.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator

from namegen import checks, languages
from namegen.model.boards import Places
from namegen.model.findings import Finding, Severity
from namegen.model.places import Place
from namegen.model.workspaces import BuildEntry, CodeEntry
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
        place = entry.places.get("target")
        known = {**workspace.targets, **workspace.shelf.broken}
        yield from _unknown(workspace, place, "target", entry.target, known)
    yield from _of_own_targets(workspace)


def _of_own_targets(workspace: Workspace) -> Iterator[Finding]:
    """Yield the targets that cannot be used; what no row names keeps nothing from being made."""
    if not (workspace.settings.build or workspace.settings.templates):
        return
    named = {entry.target for entry in workspace.settings.build}
    for name, fault in workspace.shelf.broken.items():
        yield checks.kinds()["wrong-value"].finding(
            fault.place,
            f'Target "{name}" cannot be used: {fault.what}. {fault.way_out}'.rstrip(),
            severity=None if name in named else Severity.WARNING,
        )


def _of_lookups(workspace: Workspace) -> Iterator[Finding]:
    kinds = workspace.catalogue.kinds
    known = set(languages.extensions().values())
    readable = workspace.catalogue.path == workspace.settings.catalogue
    for rule in workspace.settings.lookups:
        for field, kind in rule.unknown.items() if readable else ():
            yield from _unknown(workspace, rule.places.get(field), "kind", kind, kinds)
        for language in rule.languages:
            place = _place(rule.places, "languages", language)
            yield from _unknown(workspace, place, "language", language, known)


def _of_robots(workspace: Workspace) -> Iterator[Finding]:
    manifests = {manifest.robot: manifest for manifest in workspace.manifests}
    entries: list[CodeEntry | BuildEntry] = [*workspace.settings.code, *workspace.settings.build]
    for entry in entries:
        for robot in entry.robots:
            place = _place(entry.places, "robots", robot)
            yield from _unknown(workspace, place, "robot", robot, manifests)
    for code in workspace.settings.code:
        for robot in code.robots:
            if code.setup and robot in manifests:
                what, setups = f"setup of {robot}", manifests[robot].setups
                place = code.places.get("setup")
                yield from _unknown(workspace, place, what, code.setup, setups)


def _place(places: Places, field: str, text: str) -> Place | None:
    """Return where a text of a list stands, or the one text that stands in place of the list."""
    return places.get(f"{field}.{text}") or places.get(field)


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
