"""One manifest without a workspace: what ``namegen.yaml`` would say comes from the options."""

from __future__ import annotations

import json
import os
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from namegen.errors import UnusableInput
from namegen.loading.settings import read_settings
from namegen.model.findings import Fault
from namegen.model.places import Place
from namegen.model.workspaces import CodeEntry, Settings
from namegen.operations.files import Folder
from namegen.operations.roots import SETTINGS_FILE
from namegen.operations.workspace import CATALOGUE_FILE, Workspace, opened

LOOKUP = "--lookup"
"""The option that look-ups come from; findings about them name it as their file."""

_ABOVE = 2
"""Lines above the first look-up in the settings that the options stand for."""
_BEFORE = len("  - ")


class Alone(Struct, frozen=True):
    """One manifest that belongs to no workspace, with what ``namegen.yaml`` would say.

    ``lookups`` are rows as in ``namegen.yaml``; ``outputs`` are targets, each with
    the path it goes to; ``code`` are the files and folders to audit.
    """

    manifest: Path
    catalogue: Path | None = None
    lookups: tuple[str, ...] = ()
    outputs: tuple[tuple[str, Path], ...] = ()
    code: tuple[Path, ...] = ()


def open_manifest(alone: Alone) -> Workspace:
    """Read one manifest that belongs to no workspace, with the nearest catalogue if any.

    Raises:
        UnusableInput: a file cannot be read, or a look-up row cannot be understood.
    """
    file = alone.manifest.absolute()
    home = _home(file.parent)
    near = [
        above / CATALOGUE_FILE
        for above in (file.parent, *file.parents)
        if above.is_relative_to(home)
    ]
    catalogue = alone.catalogue or next((path for path in near if path.is_file()), None)
    others = [catalogue, *alone.code, *(path for _, path in alone.outputs)]
    places = [home, *(path.absolute() for path in others if path is not None)]
    folder = Folder(Path(os.path.commonpath(places)))
    path = folder.relative(file)
    folder.read(path)
    settings = _settings_of(alone, folder)
    named = folder.relative(catalogue) if catalogue else None
    found = opened(folder, replace(settings, path=path, catalogue=named), [path])
    robots = tuple(manifest.robot for manifest in found.manifests)
    code = tuple(CodeEntry(folder.relative(place), robots) for place in alone.code)
    shown = folder.with_changes({LOOKUP: "\n".join(_rows(alone)).encode("utf-8", "replace")})
    settings = replace(found.settings, code=code)
    return replace(found, folder=shown, settings=settings, alone=True)


def _home(folder: Path) -> Path:
    """Return the folder that includes may lie in: the checkout's, or else the manifest's own."""
    for above in (folder, *folder.parents):
        if (above / SETTINGS_FILE).is_file() or (above / ".git").exists():
            return above
    return folder


def _settings_of(alone: Alone, folder: Folder) -> Settings:
    """Return the settings that the options say, read as a ``namegen.yaml`` would be."""
    path = folder.relative(alone.manifest)
    rows = [f"robots: [{_quoted(path)}]"]
    rows += ["lookups:", *(f"  - {row}" for row in _rows(alone))] if alone.lookups else []
    rows += ["build:"] if alone.outputs else []
    for target, to in alone.outputs:
        rows.append(f"  - {{target: {_quoted(target)}, to: {_quoted(folder.relative(to))}}}")
    loaded = read_settings("\n".join(rows).encode("utf-8", "surrogateescape"), LOOKUP)
    if loaded.value is None or loaded.faults:
        raise UnusableInput(
            "\n".join(_told(fault, alone) for fault in loaded.faults),
            remedy="write a look-up as '{call: motor, kind: motor}'",
        )
    rules = [
        replace(rule, places={name: _as_typed(place) for name, place in rule.places.items()})
        for rule in loaded.value.lookups
    ]
    return replace(loaded.value, lookups=tuple(rules))


def _rows(alone: Alone) -> list[str]:
    """Return what was typed after each ``--lookup``, on one line."""
    return [" ".join(row.splitlines()) for row in alone.lookups]


def _told(fault: Fault, alone: Alone) -> str:
    rows, line = _rows(alone), _as_typed(fault.place).line
    return f"{LOOKUP} '{rows[min(line, len(rows)) - 1]}': {fault.message}"


def _as_typed(place: Place) -> Place:
    """Return a place in the settings as one in the rows: the n-th ``--lookup`` is line n."""
    line, column = max(1, place.line - _ABOVE), max(1, place.column - _BEFORE)
    end_line, end_column = max(1, place.end_line - _ABOVE), max(1, place.end_column - _BEFORE)
    return Place(place.path, line, column, end_line, end_column)


def _quoted(text: str) -> str:
    return json.dumps(text)
