"""A generated file, before anybody writes it."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Artifact:
    """What one target makes for one robot (None: for the whole workspace).

    ``path`` is relative to the workspace with ``/``; ``text`` has LF line ends.
    """

    path: str
    text: str
    target: str
    robot: str | None = None
