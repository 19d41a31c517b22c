"""Output paths: no two outputs want one file, and none wants what namegen reads."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from pathlib import Path

from namegen.errors import UnusableInput
from namegen.model.artifacts import Artifact
from namegen.operations.acceptances import ACCEPTED_FILE
from namegen.operations.record import RECORD_FILE
from namegen.operations.workspace import Workspace


def one_each(artifacts: Iterable[Artifact], workspace: Workspace) -> list[Artifact]:
    """Return the artifacts, making sure that no two want one file, and none what namegen reads.

    Paths that differ only by case are one file on many machines; links and
    ``..`` lead to one file by several paths.

    Raises:
        UnusableInput: they do; says which rows of the settings ask for them.
        RefusedWrite: an output would land outside the workspace.
    """
    root = workspace.folder.root
    read = {_file((root / path).resolve()): path for path in _inputs(workspace)}
    seen: dict[str, Artifact] = {}
    for artifact in artifacts:
        file = _file(workspace.folder.check_inside(artifact.path))
        if file in read:
            raise UnusableInput(
                f"this output{_asked(artifact)} would take the place of {read[file]}, which "
                "namegen reads",
                where=artifact.path,
                remedy="name another file in `to`",
            )
        twin = seen.setdefault(file, artifact)
        if twin is not artifact:
            both = " and ".join(
                f"{a.target} for {a.robot or 'all robots'}{_asked(a)}" for a in (twin, artifact)
            )
            raise UnusableInput(
                f"two outputs go to one path: {both}",
                where=artifact.path,
                remedy="put {robot} into `to`, or give each its own file name",
            )
    return list(seen.values())


def _asked(artifact: Artifact) -> str:
    """Return where the settings ask for an output, to be put behind it."""
    return f" ({artifact.row})" if artifact.row else ""


def _file(path: Path) -> str:
    return path.as_posix().casefold()


def _inputs(workspace: Workspace) -> Iterator[str]:
    """Yield the files that a build may never write over, not even when it is forced."""
    yield from (workspace.settings.path, RECORD_FILE, ACCEPTED_FILE)
    if workspace.catalogue.path is not None:
        yield workspace.catalogue.path
    yield from workspace.broken
    for manifest in workspace.manifests:
        yield from (manifest.path, *manifest.sources)
