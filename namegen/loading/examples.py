"""Examples for messages: from the user's own files where they are known, else a general form."""

from __future__ import annotations

from pathlib import PurePosixPath

from namegen.loading.nodes import GroupNode
from namegen.loading.ports import A_PORT
from namegen.loading.shapes.shape import Shape
from namegen.loading.shapes.workspace import CodeShape
from namegen.model.boards import Board, Catalogue

_GENERAL = {
    "because": "REASON",
    "board": "BOARD",
    "finding": "port-undecided",
    "kind": "imu",
    "path": "FOLDER",
    "robots": "[robots/*.yaml]",
    "target": "python-constants",
    "to": '"code/{robot}/devices.py"',
}
"""Field that must be there -> what could stand in it, where the user's files say nothing."""


class Examples:
    """Examples from a tree as it was typed, and from the catalogue where it is known."""

    def __init__(self, tree: GroupNode, catalogue: Catalogue | None = None) -> None:
        self._tree = tree
        self._boards = catalogue.boards if catalogue else {}

    def filled(self, message: str) -> str:
        """Return a message with a port of the user's own for `A_PORT`."""
        return message.replace(A_PORT, self.port()) if A_PORT in message else message

    def value(self, shape: type[Shape], field: str) -> str:
        """Return what could stand in a field that must be there."""
        if field == "port":
            return self.port()
        if field == "robot":
            return PurePosixPath(self._tree.source.path).stem
        if field == "board" and self._boards:
            return next(iter(self._boards))
        return "[ROBOT]" if (shape, field) == (CodeShape, "robots") else _GENERAL[field]

    def port(self, port_type: str | None = None) -> str:
        """Return a port of the first controller, of a type if it has one such."""
        controllers = self.names("controllers")
        if not controllers:
            return A_PORT
        board = self._board(controllers[0])
        ports = {name: labels for name, labels in board.ports.items() if labels} if board else {}
        if port_type not in ports:
            port_type = next(iter(ports), port_type or "motor")
        name = "-".join(controllers[0].split())
        return f"{name} {port_type} {ports.get(port_type, ('1',))[0]}"

    def names(self, group: str) -> list[str]:
        """Return the names in one of the tree's groups, such as ``devices``."""
        found = self._tree.value(group)
        return list(found.fields) if isinstance(found, GroupNode) else []

    def _board(self, controller: str) -> Board | None:
        found = self._tree.fields["controllers"].value
        entry = found.value(controller) if isinstance(found, GroupNode) else None
        board = entry.value("board") if isinstance(entry, GroupNode) else None
        return self._boards.get(getattr(board, "value", ""))
