"""A target: one sort of output, described by the ``target.yaml`` of its folder."""

from __future__ import annotations

import difflib
from collections.abc import Mapping
from pathlib import Path
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from namegen.errors import UnusableTarget
from namegen.model.identifiers import NamingScheme
from namegen.model.workspaces import OptionValue
from namegen.targets.option import Option, Setting, Terms


class Target(Struct, frozen=True):
    """One sort of output.

    ``file`` is the usual file name, as a hint; ``escapes`` are the filters
    that its templates may use.
    """

    name: str
    description: str
    language: str | None
    per: Literal["robot", "workspace"]
    file: str
    template: str
    folder: Path
    escapes: tuple[str, ...]
    options: Mapping[str, Option]
    shown: str
    """What messages call its folder."""
    fields: tuple[str, ...] | None = None
    """Words that its code keeps for itself where devices are fields; None: they are none."""

    def reserving(self, scheme: NamingScheme) -> NamingScheme:
        """Return its language's scheme with the words that its own code keeps for itself."""
        own = dict.fromkeys(self.fields or (), "a word that the generated code needs itself")
        return replace(scheme, reserved={**own, **scheme.reserved})

    def settings(
        self, given: Mapping[str, OptionValue], path: str, terms: Terms
    ) -> dict[str, Setting]:
        """Return the value of every option, with ``{word}`` replaced in texts.

        Raises:
            UnusableTarget: an option is unknown, missing or has a wrong value.
        """
        for name in given:
            if name not in self.options:
                raise self.unknown(name, path)
        return {
            name: option.setting(given.get(name), f"target {self.name}", terms)
            for name, option in self.options.items()
        }

    def unknown(self, option: str, where: str) -> UnusableTarget:
        """Return what to say of an option that it does not have."""
        near = difflib.get_close_matches(option, self.options, n=1)
        known = ", ".join(self.options) or "none"
        hint = f"Did you mean {near[0]}? " if near else ""
        return UnusableTarget(
            f"target {self.name} has no option {option}",
            where=where,
            remedy=f"{hint}Its options: {known}.",
        )
