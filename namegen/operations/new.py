"""New: starts a workspace, or another robot in one."""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path

from namegen.bundled import bundled
from namegen.errors import RefusedWrite, UnusableInput
from namegen.loading.copies import is_copy, next_edit
from namegen.operations.files import Folder
from namegen.operations.first_manifest import first_manifest
from namegen.operations.splicing import splice
from namegen.operations.workspace import Workspace

STARTER = "starter"
_ROBOT = re.compile(r"[A-Za-z][A-Za-z0-9_-]*")


def starter_files(example: str = STARTER) -> dict[str, bytes]:
    """Return the files of a bundled example by their relative path."""
    root = bundled("examples") / example
    return {
        path.relative_to(root).as_posix(): path.read_bytes()
        for path in sorted(root.rglob("*"))
        if path.is_file() and "__pycache__" not in path.parts
    }


def lay_out(files: Mapping[str, bytes], folder: Path) -> tuple[str, ...]:
    """Write files into a folder, making it if needed; return their paths.

    Raises:
        RefusedWrite: one of them is there already (nothing is written then), or
            the folder cannot be written to.
    """
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        raise RefusedWrite(f"this folder cannot be made: {reason}", where=str(folder)) from error
    target = Folder(folder)
    taken = [path for path in files if target.exists(path)]
    if taken:
        raise RefusedWrite(
            f"already there: {', '.join(taken)}",
            where=str(folder),
            remedy="nothing was written; choose an empty folder",
        )
    target.write(files)
    return tuple(files)


def new_robot(workspace: Workspace, name: str, like: str | None) -> str:
    """Write a manifest for another robot; return its path.

    With ``like`` it is a copy of that robot's manifest, comments and all, under
    the new name and without what is the other robot's alone: title, revision, old
    names, dead ports, accepted findings. Else it has a board of the catalogue.

    Raises:
        UnusableInput: the name is taken or cannot be one, ``like`` is not known, or
            its manifest cannot be copied.
        RefusedWrite: the file is already there.
    """
    if not _ROBOT.fullmatch(name):
        raise UnusableInput(
            f'"{name}" cannot be a robot\'s name',
            remedy="use letters, digits, - and _, beginning with a letter; "
            "`title` in the manifest may say more",
        )
    if any(manifest.robot.casefold() == name.casefold() for manifest in workspace.manifests):
        raise UnusableInput(f'there is a robot "{name}" already', remedy="choose another name")
    if like is None:
        source = ""
        text = first_manifest(name, workspace.catalogue, workspace.settings.names)
    else:
        source = workspace.chosen([like])[0].path
        text = _copy(workspace.folder.read(source), source, name)
    path = _path_beside(workspace, source, name)
    lay_out({path: text.encode("utf-8")}, workspace.folder.root)
    return path


def named_by(workspace: Workspace, path: str) -> bool:
    """Whether ``robots`` in the settings names this manifest, so that it is read."""
    return any(path in workspace.folder.matches(glob) for glob in workspace.settings.robots)


def _copy(data: bytes, path: str, name: str) -> str:
    """Return a manifest's text as another robot's.

    Raises:
        UnusableInput: its text is too broken to be copied.
    """
    text = data.decode("utf-8-sig", errors="replace")
    while edit := next_edit(text.encode(), path, name):
        text = splice(text, [edit])
    if not is_copy(data, text.encode(), path, name):
        raise UnusableInput(
            "this manifest cannot be copied", where=path, remedy="mend what `namegen verify` says"
        )
    return text


def _path_beside(workspace: Workspace, source: str, name: str) -> str:
    """Return where the new manifest goes: beside the others."""
    others = [manifest.path for manifest in workspace.manifests] + [*workspace.broken]
    beside = source or others[0]
    return Path(beside).with_name(f"{name}.yaml").as_posix()
