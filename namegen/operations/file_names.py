"""How files are called in a report that is about no one workspace."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from msgspec.structs import replace

from namegen.model.findings import Finding
from namegen.model.places import Place
from namegen.operations.files import Folder


class FileNames:
    """Calls files from the first of the folders ``near`` that they lie in, or by their whole path.

    No two files are called the same.
    """

    def __init__(self, folder: Folder, near: Sequence[Path]) -> None:
        self.folder = folder
        self.near = near
        self.files: dict[str, Path] = {}
        self.lists: set[str] = set()

    def of(self, file: Path) -> str:
        """Return what a file is called."""
        inside = next((one for one in self.near if file.is_relative_to(one)), None)
        name = (file.relative_to(inside) if inside else file).as_posix()
        if self.files.setdefault(name, file) != file:
            name = file.as_posix()
            self.files[name] = file
        return name

    def of_list(self, file: Path) -> str:
        """Return what a list is called; places in it bear that name already."""
        name = self.of(file)
        self.lists.add(name)
        return name

    def told(self, finding: Finding) -> Finding:
        """Return a finding with its places called so."""
        related = [replace(one, place=self._place(one.place)) for one in finding.related]
        return replace(finding, place=self._place(finding.place), related=tuple(related))

    def source(self, name: str) -> str | None:
        """Return the text of a file by what it is called."""
        file = self.files.get(name)
        return None if file is None else self.folder.source(self.folder.relative(file))

    def _place(self, place: Place) -> Place:
        if place.path in self.lists:
            return place
        return replace(place, path=self.of(self.folder.root / place.path))
