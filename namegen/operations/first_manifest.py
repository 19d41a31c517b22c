"""The manifest that a new robot starts with: a board of the catalogue, two devices as examples."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from namegen.loading.edits import spelled
from namegen.model.boards import Board, Catalogue
from namegen.model.workspaces import NameRules
from namegen.text.words import convert

NO_BOARD = Board("mainBoard", {"motor": ("1",), "digital": ("1",)})
"""Stands in where the catalogue has no board yet; verifying says that it is to be added."""

_SAMPLES: Mapping[str, tuple[str, str]] = {
    "motor": ("driveMotor", "Moves the robot"),
    "switch": ("bumpFront", "Closes when the front touches something"),
    "servo": ("hatchServo", "Opens the hatch"),
    "lamp": ("deckLamp", "Lights the deck"),
    "level": ("tankLevel", "Measures the level in the tank"),
}
"""Kind -> a name and what it does, as examples that a person replaces."""
_MOST = 2


def first_manifest(robot: str, catalogue: Catalogue, names: NameRules) -> str:
    """Return the text of a manifest to begin with, which passes where the catalogue is right."""
    board = next((one for one in catalogue.boards.values() if one.ports), NO_BOARD)
    devices = list(_devices(board, catalogue, names))
    lines = [
        "# One robot's manifest: what is plugged in where, and what it is called.",
        f"robot: {robot}",
        "",
        "controllers:",
        "  main:",
        f"    board: {spelled(board.name)}",
        "",
        "devices:" if devices else "devices: {}",
        *devices,
    ]
    return "\n".join(lines) + "\n"


def _devices(board: Board, catalogue: Catalogue, names: NameRules) -> Iterator[str]:
    """Yield the lines of up to two devices, each on a port of its own."""
    left = {
        port_type: labels[0]
        for port_type, labels in board.ports.items()
        if labels and not catalogue.port_types[port_type].shared
    }
    shown = 0
    for kind, (name, does) in _SAMPLES.items():
        fits = catalogue.kinds[kind].ports or tuple(left)
        port_type = next((one for one in fits if one in left), None)
        if port_type is None or shown == _MOST:
            continue
        shown += 1
        port = f"main {port_type} {left.pop(port_type)}"
        note = "          # controller, port type, label" if shown == 1 else ""
        yield f"  {name if names.style == 'any' else convert(name, names.style)}:"
        yield f"    kind: {kind}"
        yield f"    port: {spelled(port)}{note}"
        yield f"    does: {does}"
