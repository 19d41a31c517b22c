"""Which file an import means, among the files of the code."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from posixpath import dirname, normpath

from msgspec import Struct

from namegen.model.facts import Import


class ModuleFinder(Struct, frozen=True):
    """Finds the file of an import: beside the importing file first, then below each root.

    ``exists`` tells whether a workspace-relative path is a file of the code;
    ``roots`` are the folders that imports start from ("" is the workspace).
    """

    exists: Callable[[str], bool]
    roots: Sequence[str] = ("",)

    def __call__(self, imported: Import, path: str) -> str | None:
        """Return the file that an import in the file ``path`` means, or None."""
        own = dirname(path) + "/.." * (imported.up or 0)
        folders = [own] if imported.up is not None else [own, *self.roots]
        for folder in folders:
            for file in imported.files:
                candidate = normpath(f"{folder}/{file}" if folder else file)
                if not candidate.startswith("../") and self.exists(candidate):
                    return candidate
        return None
