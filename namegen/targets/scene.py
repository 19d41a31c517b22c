"""What a target renders: the robots, the catalogue and the options of one output."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from namegen.model.boards import Catalogue
from namegen.model.manifests import Manifest
from namegen.model.workspaces import OptionValue


@dataclass(frozen=True, slots=True)
class Scene:
    """The input of one output file.

    ``manifests`` is one robot for a target that makes a file per robot, and
    all robots of the build entry for one that makes a file per workspace.
    ``options`` are the ``with:`` of the build entry.
    """

    manifests: tuple[Manifest, ...]
    catalogue: Catalogue
    options: Mapping[str, OptionValue] = field(default_factory=dict)
