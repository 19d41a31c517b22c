"""The user's files: reading them, and replacing them so that none is ever half written."""

from __future__ import annotations

import contextlib
import os
import stat
from collections.abc import Mapping
from pathlib import Path

from namegen.errors import RefusedWrite, UnusableInput

PART_SUFFIX = ".namegen-part"
"""Ending of the file beside the real one that holds the new bytes until they are whole."""


class Folder:
    """A workspace's folder. Paths are relative to it, with ``/``.

    ``overlay`` holds bytes that are to be seen instead of those on disk, so that
    an edit can be judged before it is written.
    """

    def __init__(self, root: Path, overlay: Mapping[str, bytes] | None = None) -> None:
        self.root = root.resolve()
        self.overlay = dict(overlay or {})

    def with_changes(self, changes: Mapping[str, bytes]) -> Folder:
        """Return the same folder as it would be after the changes."""
        return Folder(self.root, {**self.overlay, **changes})

    def read(self, path: str) -> bytes:
        """Return a file's bytes.

        Raises:
            UnusableInput: there is no such file, it is a folder, or it may not be read.
        """
        if path in self.overlay:
            return self.overlay[path]
        try:
            # A quarter of pathlib's cost: an audit reads thousands of files.
            with open(os.path.join(self.root, path), "rb", buffering=0) as file:
                return file.read()
        except OSError as error:
            raise unreadable(path, error) from error

    def source(self, path: str) -> str | None:
        """Return the text of a file to show in a report, or None."""
        try:
            data = self.read(path)
        except UnusableInput:
            return None
        return data.decode("utf-8-sig", errors="replace")

    def matches(self, pattern: str) -> list[str]:
        """Return the paths that a glob fits, sorted."""
        return sorted(path.relative_to(self.root).as_posix() for path in self.root.glob(pattern))

    def watch(self, folder: str) -> None:
        """Take note that everything in a folder is read by others; a plain folder does not."""

    def exists(self, path: str) -> bool:
        """Whether something lies at the path, a dangling link included."""
        return path in self.overlay or os.path.lexists(self.root / path)

    def is_file(self, path: str) -> bool:
        """Whether a file, or a link to one, lies at the path."""
        return path in self.overlay or (self.root / path).is_file()

    def listed(self, folder: str) -> list[str]:
        """Return the paths of the files right in a folder, sorted; none where it is no folder."""
        inside = f"{folder}/" if folder else ""
        found = {path for path in self.overlay if path.rpartition("/")[0] == folder}
        with contextlib.suppress(OSError), os.scandir(self.root / folder) as entries:
            found |= {f"{inside}{entry.name}" for entry in entries if entry.is_file()}
        return sorted(found)

    def relative(self, path: Path) -> str:
        """Return the workspace-relative form of a path.

        Raises:
            UnusableInput: the path lies outside the workspace.
        """
        absolute = Path(os.path.abspath(path))
        for candidate in (absolute, absolute.resolve()):
            with contextlib.suppress(ValueError):
                return candidate.relative_to(self.root).as_posix()
        raise UnusableInput(
            "this path lies outside the workspace",
            where=str(path),
            remedy=f"the workspace is {self.root}; give a path inside it",
        )

    def check_inside(self, path: str) -> Path:
        """Return where a write to ``path`` would really land, links followed.

        Raises:
            RefusedWrite: that is outside the workspace, or a folder stands there.
        """
        real = Path(os.path.realpath(os.path.join(self.root, path)))
        if os.path.isabs(path) or not real.is_relative_to(self.root):
            raise RefusedWrite(
                "this output would land outside the workspace",
                where=path,
                remedy="give a path below namegen.yaml that no link leads out of",
            )
        if real.is_dir():
            raise RefusedWrite(
                "a folder stands where this file should go",
                where=path,
                remedy="name a file in `to`, or move the folder away",
            )
        if not real.parent.is_dir():
            self._check_parents(real, path)
        return real

    def _check_parents(self, real: Path, path: str) -> None:
        """Refuse a file where a folder on the way is wanted."""
        blocked = next((above for above in real.parents if above.exists()), real)
        if not blocked.is_dir():
            raise RefusedWrite(
                f"a file stands where this output needs a folder: {self.relative(blocked)}",
                where=path,
                remedy="name another folder in `to`, or move the file away",
            )

    def write(self, changes: Mapping[str, bytes]) -> None:
        """Write the files, each in one step: at any instant a file is wholly old or wholly new.

        Every new file is laid beside its old one first, so that a full disk or a
        missing permission leaves all old files as they were.

        Raises:
            RefusedWrite: a file may not be written, or would lie outside the workspace.
        """
        targets = {path: self.check_inside(path) for path in changes}
        parts: list[tuple[str, Path, Path]] = []
        path = ""
        try:
            for path, data in changes.items():
                parts.append((path, _lay_beside(targets[path], data), targets[path]))
            for whose, part, real in parts:
                path = whose
                os.replace(part, real)
        except OSError as error:
            for _, part, _ in parts:
                part.unlink(missing_ok=True)
            raise RefusedWrite(
                f"this file cannot be written: {_reason(error)}",
                where=path,
                remedy="every file keeps its old content, or already has its whole new one",
            ) from error

    def remove(self, path: str) -> None:
        """Delete one file.

        Raises:
            RefusedWrite: it lies outside the workspace or may not be deleted.
        """
        self.check_inside(path)
        try:
            (self.root / path).unlink(missing_ok=True)
        except OSError as error:
            raise RefusedWrite(f"cannot be deleted: {_reason(error)}", where=path) from error


def unreadable(path: str, error: OSError) -> UnusableInput:
    """Return the message for a file that could not be read."""
    remedies = {
        FileNotFoundError: "check the spelling of the path, capitals too",
        IsADirectoryError: "name a file, not a folder",
        PermissionError: "allow reading it, or leave it out",
    }
    what = f"cannot be read: {_reason(error)}"
    return UnusableInput(what, where=path, remedy=remedies.get(type(error), ""))


def _reason(error: OSError) -> str:
    return (error.strerror or str(error)).lower()


def _protected(real: Path) -> bool:
    """Whether the owner marked the file as not to be written.

    Replacing a file by renaming needs no right to write it, so it must be asked
    for; the mode counts even where the user is allowed everything.
    """
    return not stat.S_IMODE(real.stat().st_mode) & 0o222 or not os.access(real, os.W_OK)


def _lay_beside(real: Path, data: bytes) -> Path:
    """Write the bytes beside the real file, with its mode, and return where.

    The name is the same every time, so that what an interrupted run left is
    overwritten by the next and never piles up.
    """
    if real.exists() and _protected(real):
        raise PermissionError(13, "it is write-protected")
    real.parent.mkdir(parents=True, exist_ok=True)
    part = real.with_name(f".{real.name}{PART_SUFFIX}")
    part.unlink(missing_ok=True)
    descriptor = os.open(part, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o666)
    try:
        with os.fdopen(descriptor, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        if real.exists():
            os.chmod(part, stat.S_IMODE(real.stat().st_mode))
    except BaseException:
        part.unlink(missing_ok=True)
        raise
    return part
