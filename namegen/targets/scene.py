"""What a target renders: the robots, the catalogue and the options of one output."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import PurePosixPath

from msgspec import Struct, field

from namegen.model.boards import Catalogue, Places
from namegen.model.manifests import Manifest
from namegen.model.places import Place
from namegen.model.workspaces import OptionValue
from namegen.targets.option import Terms
from namegen.targets.schemes import naming_schemes
from namegen.targets.target import Target
from namegen.text.words import convert


class Scene(Struct, frozen=True):
    """The input of one output file.

    ``manifests`` is one robot for a target that makes a file per robot, and
    all robots of the build entry for one that makes a file per workspace.
    ``options`` are the ``with:`` of the build entry, ``places`` where its
    fields stand; without them, faults are told at the manifest.
    """

    manifests: tuple[Manifest, ...]
    catalogue: Catalogue
    options: Mapping[str, OptionValue] = field(default_factory=dict)
    places: Places = field(default_factory=dict)

    def place(self, option: str) -> Place:
        """Return where an option is given, or else where it could be."""
        for name in (f"with.{option}", "with", "target", ""):
            if name in self.places:
                return self.places[name]
        return Place(self.manifests[0].path) if self.manifests else Place("")

    def terms(self, target: Target, path: str) -> Terms:
        """Return what the options of a target may say of an output to lie at ``path``."""
        scheme = naming_schemes()[target.language] if target.language else None
        words = {"stem": PurePosixPath(path).name.split(".")[0]}
        if target.per == "robot":
            robot = self.manifests[0].robot
            type_name = scheme.type_name(robot) if scheme else None
            words |= {"robot": robot, "Robot": type_name or convert(robot, "PascalCase")}
        kinds = {one.kind for each in self.manifests for one in each.devices.values()}
        return Terms(
            words,
            kinds | set(self.catalogue.kinds),
            target.reserving(scheme) if scheme else None,
        )
