"""A port does not exist on the controller's board."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from namegen.checks.hints import did_you_mean, nearest
from namegen.checks.port_words import ask, meant
from namegen.checks.wiring import PortUse, exists, free_ports, ranges, written_uses
from namegen.checks.wording import listed, quoted, sentences
from namegen.model.boards import Board
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.manifests import Port
from namegen.model.views import RobotView
from namegen.text.terminal import printable

KIND = FindingKind(
    name="no-such-port",
    severity=Severity.ERROR,
    scope="device",
    what="A device is plugged into a port that the controller's board does not have.",
    why="The student at the boat finds no such socket and takes the next one.",
    example=Example(
        flagged="devices:\n  bowThruster: {kind: motor, port: bridge motor 9}\n",
        mended="devices:\n  bowThruster: {kind: motor, port: bridge motor 2}\n",
    ),
    repair="None by itself: write controller, port type and the label printed on the board; "
    "a built-in device has no label.",
)


def check(view: RobotView) -> Iterator[Finding]:
    """Yield a finding for each port that a known board does not have."""
    for use in written_uses(view):
        board = view.board(use.port.controller)
        if board is not None and not exists(view, use.port):
            yield _finding(view, board, use)
    for controller in view.manifest.controllers.values():
        for index, (port_type, label) in enumerate(controller.dead):
            port = Port(controller.name, port_type, label)
            if exists(view, port) is False:
                message = sentences(
                    f"{quoted(str(port))} is marked dead, but there is no such port: correct it.",
                    _ports_of(view.catalogue.boards[controller.board]),
                )
                place = controller.places.get(f"dead.{index}") or controller.places["dead"]
                yield KIND.finding(place, message, robot=view.manifest.robot)


def _finding(view: RobotView, board: Board, use: PortUse) -> Finding:
    reason, guess = _reason(view, board, use.port)
    return KIND.finding(
        use.place,
        sentences(f"{use.who} is plugged into {quoted(str(use.port))}, but {reason}"),
        found=str(use.port),
        expected=str(guess) if guess else None,
        robot=view.manifest.robot,
    )


def _reason(view: RobotView, board: Board, port: Port) -> tuple[str, Port | None]:
    """Return why there is no such port and what to do, and the port that is clearly meant."""
    if port.type in board.built_in:
        guess = replace(port, label=None)
        return f"that one is built in and has no label: write {quoted(str(guess))}.", guess
    if port.type not in board.ports:
        return _no_such_type(view, board, port)
    labels = board.ports[port.type]
    if port.label is None:
        told = "the label of the port is missing: write it as printed on the board, "
        return f"{told}{printable(port.type)} {listed(labels, last='or', most=12)}.", None
    label = next((one for one in labels if _same(one, port.label)), None)
    meant_label = replace(port, label=label) if label else None
    reason = _joined(
        f"{_board(port, board)} has no {printable(f'{port.type} {port.label}')}; "
        f"its {printable(port.type)} ports are {ranges(labels)}.",
        did_you_mean(str(meant_label) if meant_label else None)
        or free_ports(view, port.controller, [port.type]),
    )
    return reason, meant_label


def _no_such_type(view: RobotView, board: Board, port: Port) -> tuple[str, Port | None]:
    ports = meant(view, port)
    word = nearest(port.type, board.built_in if port.label is None else board.ports)
    reason = _joined(
        f"{_board(port, board)} has nothing called {quoted(port.type)}.",
        ask(ports) or did_you_mean(word) or _ports_of(board),
    )
    return reason, ports[0] if len(ports) == 1 else replace(port, type=word) if word else None


def _joined(*parts: str) -> str:
    return " ".join(filter(None, parts))


def _same(one: str, other: str) -> bool:
    """Whether two labels differ by case or leading zeros alone."""
    return one.casefold().lstrip("0") == other.casefold().lstrip("0") and one != other


def _board(port: Port, board: Board) -> str:
    return printable(f"{port.controller} (board {board.name})")


def _ports_of(board: Board) -> str:
    """Return a sentence with all that can be plugged in or is built in."""
    ports = [f"{name} {ranges(labels)}" for name, labels in board.ports.items()]
    text = f"The board has {printable('; '.join(ports))}" if ports else "The board has no ports"
    built_in = f"; built in: {listed(board.built_in)}" if board.built_in else ""
    return f"{text}{built_in}."
