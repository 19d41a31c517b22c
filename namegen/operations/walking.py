"""Walking a folder of code without what ``.gitignore`` leaves out."""

from __future__ import annotations

import os
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from namegen.operations.files import unreadable

if TYPE_CHECKING:
    from pathspec import GitIgnoreSpec

IGNORE_FILE = ".gitignore"

Ignores = tuple[tuple[str, "GitIgnoreSpec"], ...]
"""Folders that hold an ignore file, each with a ``/`` behind it unless it is the workspace's
own, and what the file says; outermost first."""


def spec(lines: Sequence[str]) -> GitIgnoreSpec | None:
    """Return patterns in the form of ``.gitignore``, or None where there are none."""
    if not lines:
        return None
    from pathspec import GitIgnoreSpec

    return GitIgnoreSpec.from_lines(lines)


def walk(root: Path, start: str) -> Iterator[str]:
    """Yield the files below ``start``, in order, without what ignore files hide.

    Paths are relative to ``root``, with ``/``; an empty ``start`` is the root. They are
    plain text, because a path object for each of some thousand files takes longer than
    finding them. Ignore files count from ``root`` on. Links to folders are not followed,
    so that a loop of links cannot trap it.

    Raises:
        UnusableInput: a folder may not be read.
    """
    above: Ignores = ()
    folder = ""
    for part in start.split("/") if start else ():
        above += _ignores_in(root, folder)
        folder += part + "/"
    yield from _walk(root, folder, above)


def _walk(root: Path, folder: str, ignores: Ignores) -> Iterator[str]:
    try:
        entries = sorted(os.scandir(os.path.join(root, folder)), key=lambda entry: entry.name)
    except OSError as error:
        raise unreadable(folder.rstrip("/") or str(root), error) from error
    if any(entry.name == IGNORE_FILE for entry in entries):
        ignores += _ignores_in(root, folder)
    for entry in entries:
        path = folder + entry.name
        is_folder = entry.is_dir(follow_symlinks=False)
        if is_folder:
            path += "/"
        if entry.name == ".git" or (ignores and _is_ignored(path, ignores)):
            continue
        if is_folder:
            yield from _walk(root, path, ignores)
        elif entry.is_file():
            yield path


def _ignores_in(root: Path, folder: str) -> Ignores:
    try:
        text = (root / folder / IGNORE_FILE).read_text(encoding="utf-8", errors="replace")
    except OSError:
        return ()
    found = spec(text.splitlines())
    return ((folder, found),) if found is not None else ()


def _is_ignored(path: str, ignores: Ignores) -> bool:
    """Whether the innermost ignore file with an opinion leaves the path out."""
    for folder, found in reversed(ignores):
        verdict = found.check_file(path[len(folder) :]).include
        if verdict is not None:
            return verdict
    return False
