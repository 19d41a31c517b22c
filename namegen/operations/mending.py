"""Mending: the repairs of an audit, and after them the constants, in one change of each file."""

from __future__ import annotations

from collections.abc import Collection

from msgspec.structs import replace

from namegen.model.findings import Safety
from namegen.operations.code_files import Selection
from namegen.operations.constants import use_constants
from namegen.operations.fix import Fixed, fix, one_each
from namegen.operations.workspace import Workspace


def mend_with_constants(
    workspace: Workspace, selection: Selection, safeties: Collection[Safety]
) -> Fixed:
    """Work the repairs out in memory, then the constants of the names as they are with them.

    It is what an audit with ``--fix`` and one with ``--constants --fix`` after it do.

    Raises:
        UnusableInput: a path or an entry of the settings cannot be used.
    """
    fixed = fix(workspace, selection, safeties)
    named = use_constants(*_with(workspace, selection, fixed))
    moves = {change.path: change.moves for change in fixed.changes}
    refused = dict(fixed.refused)
    moved = {at: named.moved.get(now, now) for at in refused for now in [fixed.moved.get(at, at)]}
    for place, reason in named.refused:
        at = moves[place.path].back(place) if place.path in moves else place
        refused.setdefault(at, reason)
        moved.setdefault(at, named.moved.get(place, place))
    return Fixed(
        tuple(one_each((*fixed.changes, *named.changes))),
        tuple(sorted(refused.items())),
        fixed.before,
        named.after,
        moved,
        named.constants,
    )


def _with(workspace: Workspace, selection: Selection, fixed: Fixed) -> tuple[Workspace, Selection]:
    """Return both as they are with the repairs, those of a text that is not on the disk too."""
    if selection.text is None:
        changes = {change.path: change.new for change in fixed.changes}
        return replace(workspace, folder=workspace.folder.with_changes(changes)), selection
    path, data = selection.text
    new = fixed.text_of(workspace.folder.relative(path), data)
    return workspace, replace(selection, text=(path, new))
