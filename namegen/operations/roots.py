"""Where a workspace lies: the folder with ``namegen.yaml``."""

from __future__ import annotations

from pathlib import Path

from namegen.errors import UnusableInput

SETTINGS_FILE = "namegen.yaml"


def find_root(start: Path) -> Path:
    """Return the nearest folder upwards that holds ``namegen.yaml``.

    Raises:
        UnusableInput: there is none.
    """
    for folder in (start.resolve(), *start.resolve().parents):
        if (folder / SETTINGS_FILE).is_file():
            return folder
    raise UnusableInput(
        f"no {SETTINGS_FILE} here or in a folder above",
        where=str(start),
        remedy="go to the workspace's folder, name it with --workspace DIR, name one manifest "
        "with --manifest FILE, or start a workspace with `namegen new`",
    )


def named_root(folder: Path) -> Path:
    """Return a folder that a user names as the workspace's.

    Raises:
        UnusableInput: it holds no ``namegen.yaml``.
    """
    if (folder / SETTINGS_FILE).is_file():
        return folder
    below = list(folder.glob(f"*/{SETTINGS_FILE}"))
    near = below[0] if len(below) == 1 else None
    raise UnusableInput(
        f"no {SETTINGS_FILE} in this folder",
        where=str(folder),
        remedy=f"did you mean --workspace {near.parent}?"
        if near
        else f"name the folder that holds {SETTINGS_FILE} itself",
    )
