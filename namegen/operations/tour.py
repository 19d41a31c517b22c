"""Tour: the bundled example, and the mends that its writers made by hand."""

from __future__ import annotations

from namegen.operations.files import Folder
from namegen.operations.fix import Change
from namegen.operations.new import starter_files

EXAMPLE = "boatclub"
MENDED = "mended/"


def example_files() -> dict[str, bytes]:
    """Return the files of the example by their relative path."""
    return starter_files(EXAMPLE)


def hand_mends(folder: Folder) -> tuple[Change, ...]:
    """Return what a person changes after the repairs that namegen can make.

    Each file below ``mended/`` stands for the one of the same path beside it.
    """
    changes = []
    for mended, new in example_files().items():
        if not mended.startswith(MENDED):
            continue
        path = mended.removeprefix(MENDED)
        old = folder.read(path)
        texts = (old.decode("utf-8"), new.decode("utf-8"))
        if old != new:
            changes.append(Change(path, old, new, *texts, edits=1))
    return tuple(changes)
