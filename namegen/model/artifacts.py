"""A generated file, before anybody writes it."""

from __future__ import annotations

from msgspec import Struct

from namegen.model.places import Place


class Artifact(Struct, frozen=True):
    """What one target makes for one robot (None: for the whole workspace).

    ``path`` is relative to the workspace with ``/``; ``text`` has LF line ends.
    """

    path: str
    text: str
    target: str
    robot: str | None = None
    row: Place | None = None
    """Where the settings ask for it; None where an option of the command does."""
