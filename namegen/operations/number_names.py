"""The names that code may give to the numbers of a robot's devices, and a quick search for them."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence

from namegen import languages
from namegen.model.derived import DerivedNumber, figures
from namegen.model.identifiers import NamingScheme
from namegen.model.manifests import Device, Manifest
from namegen.model.views import Figure
from namegen.operations.record import read_record
from namegen.operations.workspace import Workspace
from namegen.text.words import Case, join, split

_CASES: tuple[Case, ...] = ("UPPER_SNAKE", "snake_case", "camelCase", "PascalCase", "kPascal")
_OF_MEMBERS = frozenset({"snake_case", "camelCase"})
"""Cases in which members of a class may bear a mark besides. Common practice, no source."""


class NumberNames:
    """Tells which of the names stand in the bytes of a file.

    Most files are done after a search for how the numbers themselves are called
    (``COUNTS_PER_MM``), of which there are few; only then devices count. Without
    figures in any manifest nothing is searched for at all.
    """

    def __init__(self, figures: Iterable[tuple[Device, DerivedNumber]] = ()) -> None:
        names: dict[bytes, dict[str, bytes]] = defaultdict(dict)
        for device, number in figures:
            after = split(number.name)
            for before in {device.name, *device.identifiers.values()}:
                for case in _CASES:
                    end = join(after, "PascalCase" if case in ("camelCase", "kPascal") else case)
                    name = join([*split(before), *after], case)
                    marked = (f"{name}_", f"m_{name}") if case in _OF_MEMBERS else ()
                    names[end.encode()] |= {one: one.encode() for one in (name, *marked)}
        self._names = {end: tuple(rows.items()) for end, rows in names.items()}

    def within(self, data: bytes) -> list[str]:
        """Return the names that stand in the bytes, in any order; longer words may hold them."""
        return [
            name
            for end, names in self._names.items()
            if end in data
            for name, spelt in names
            if spelt in data
        ]


def built_figures(
    workspace: Workspace, manifest: Manifest, schemes: Sequence[NamingScheme]
) -> tuple[Figure, ...]:
    """Return a robot's numbers with the names of their constants, where those are built.

    Raises:
        UnusableInput: a file that was built cannot be read.
    """
    texts: dict[str, bytes] = defaultdict(bytes)
    for path, entry in read_record(workspace.folder).items():
        language = languages.extensions().get(path[path.rfind(".") :])
        if language and entry.robot == manifest.robot and workspace.folder.is_file(path):
            texts[language] += workspace.folder.read(path)
    return tuple(
        Figure(
            device,
            number,
            {
                scheme.language: constant
                for scheme in schemes
                if (constant := scheme.number(device, number.name)).encode()
                in texts[scheme.language]
            },
        )
        for device, number in figures(manifest, workspace.catalogue)
    )
