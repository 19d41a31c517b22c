"""Which file an import means, among the files of the code."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from posixpath import dirname, normpath

from msgspec import Struct

from namegen.model.facts import Import

ANY = "*"
"""Stands in an import for the name of a file that may be any of its folder."""


def _none(_folder: str, _ending: str, _word: str) -> Sequence[str]:
    return ()


class ModuleFinder(Struct, frozen=True):
    """Finds the file of an import: beside the importing file first, then below each root.

    ``exists`` tells whether a workspace-relative path is a file of the code;
    ``roots`` are the folders that imports start from ("" is the workspace).
    ``holding`` gives the files right in a folder that end so and hold a word.
    """

    exists: Callable[[str], bool]
    roots: Sequence[str] = ("",)
    holding: Callable[[str, str, str], Sequence[str]] = _none

    def __call__(self, imported: Import, path: str) -> Sequence[str]:
        """Return the file that an import in the file ``path`` means; several if any may be it."""
        own = dirname(path) + "/.." * (imported.up or 0)
        folders = [own] if imported.up is not None else [own, *self.roots]
        for folder in folders:
            for file in imported.files:
                candidate = normpath(f"{folder}/{file}" if folder else file)
                if candidate.startswith("../"):
                    continue
                within, _, name = candidate.rpartition("/")
                if name.startswith(ANY):
                    word = (*imported.member, imported.local)[0]
                    some = self.holding(within, name.removeprefix(ANY), word)
                    if found := [one for one in some if one != path]:
                        return found
                elif self.exists(candidate):
                    return (candidate,)
        return ()
