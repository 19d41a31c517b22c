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

Ignores = tuple[tuple[Path, "GitIgnoreSpec"], ...]
"""Folders that hold an ignore file, with what it says, outermost first."""


def spec(lines: Sequence[str]) -> GitIgnoreSpec | None:
    """Return patterns in the form of ``.gitignore``, or None where there are none."""
    if not lines:
        return None
    from pathspec import GitIgnoreSpec

    return GitIgnoreSpec.from_lines(lines)


def walk(root: Path, start: Path) -> Iterator[Path]:
    """Yield the files below ``start``, in order, without what ignore files hide.

    Ignore files count from ``root`` on. Links to folders are not followed, so that a
    loop of links cannot trap it.

    Raises:
        UnusableInput: a folder may not be read.
    """
    above: Ignores = ()
    folder = root
    for part in start.relative_to(root).parts:
        above += _ignores_in(folder)
        folder /= part
    yield from _walk(start, above)


def _walk(folder: Path, ignores: Ignores) -> Iterator[Path]:
    ignores += _ignores_in(folder)
    try:
        entries = sorted(os.scandir(folder), key=lambda entry: entry.name)
    except OSError as error:
        raise unreadable(str(folder), error) from error
    for entry in entries:
        path = Path(entry.path)
        is_folder = entry.is_dir(follow_symlinks=False)
        if entry.name == ".git" or (ignores and _is_ignored(path, is_folder, ignores)):
            continue
        if is_folder:
            yield from _walk(path, ignores)
        elif entry.is_file():
            yield path


def _ignores_in(folder: Path) -> Ignores:
    try:
        text = (folder / IGNORE_FILE).read_text(encoding="utf-8", errors="replace")
    except OSError:
        return ()
    found = spec(text.splitlines())
    return ((folder, found),) if found is not None else ()


def _is_ignored(path: Path, is_folder: bool, ignores: Ignores) -> bool:
    """Whether the innermost ignore file with an opinion leaves the path out."""
    for folder, found in reversed(ignores):
        relative = path.relative_to(folder).as_posix() + ("/" if is_folder else "")
        verdict = found.check_file(relative).include
        if verdict is not None:
            return verdict
    return False
