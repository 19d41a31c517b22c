"""The robots of a chart -> the text of their catalogue."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence

from namegen.loading.charts.chart import ChartRobot
from namegen.loading.charts.manifest_text import board_of, ports_of
from namegen.loading.edits import spelled
from namegen.model.boards import KINDS, PORT_TYPES

Labels = dict[str, dict[str, None]]


def catalogue_text(robots: Sequence[ChartRobot], chart: str) -> str:
    """Return a catalogue with a board for each controller, and the kinds and parts in use."""
    lines = [
        f"# Read from {chart}: the labels below are those that the chart uses.",
        "# CHECK THEM against the boards, and add the ports that nothing is plugged into:",
        "# `motor: 1-3` is 1, 2, 3, and `motor: 0-2` is 0, 1, 2.",
        *_boards(robots),
    ]
    types = [name for name in _types(robots) if name not in PORT_TYPES]
    lines += ["", "port_types:", *(f"  {spelled(name)}: {{}}" for name in types)] if types else []
    devices = [placed.device for robot in robots for placed in robot.placed]
    new = dict.fromkeys(device.kind for device in devices if device.kind not in KINDS)
    lines += ["", "kinds:", *(f"  {spelled(kind)}: {{}}" for kind in new)] if new else []
    changed = (
        change.part
        for robot in robots
        for setup in robot.setups.values()
        for change in setup.change.values()
    )
    parts = dict.fromkeys(part for part in [*(d.part for d in devices), *changed] if part)
    if parts:
        lines += ["", "# Add the makers' figures: volts, rated_amps, stall_amps, ...", "parts:"]
        lines += [f"  {spelled(part)}: {{}}" for part in parts]
    return "\n".join(lines) + "\n"


def _boards(robots: Iterable[ChartRobot]) -> Iterator[str]:
    boards: dict[str, tuple[Labels, dict[str, str]]] = {}
    for robot in robots:
        for port in (*ports_of(robot), *robot.free):
            labels, _ = boards.setdefault(port.controller, ({}, {}))
            if port.label is not None:
                labels.setdefault(port.type, {})[port.label] = None
        for placed in robot.placed:
            for port in placed.device.ports:
                if port.label is None:
                    boards[port.controller][1].setdefault(port.type, placed.device.kind)
    yield "boards:" if boards else "boards: {}"
    for controller, (ports, built_in) in boards.items():
        yield f"  {spelled(board_of(controller))}:"
        yield "    ports:" if ports else "    ports: {}"
        for kind, found in ports.items():
            listed = ", ".join(spelled(label) for label in sorted(found, key=_natural))
            yield f"      {spelled(kind)}: [{listed}]"
        if built_in:
            yield "    built_in:"
            for label, kind in built_in.items():
                yield f"      {spelled(label)}: {spelled(kind)}"


def _types(robots: Iterable[ChartRobot]) -> Iterator[str]:
    ports = (port for robot in robots for port in (*ports_of(robot), *robot.free))
    seen = (port.type for port in ports if port.label is not None)
    yield from dict.fromkeys(seen)


def _natural(label: str) -> list[tuple[int, str]]:
    """Order labels as people count: 2 before 10, and the empty sort key nowhere."""
    return [
        (int(piece), "") if piece.isdecimal() else (-1, piece)
        for piece in re.split(r"(\d+)", label)
        if piece
    ]
