"""A board has something built in that no device names."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.wiring import written_uses
from namegen.checks.wording import named, quoted, to_write
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.views import RobotView

KIND = FindingKind(
    name="built-in-unnamed",
    severity=Severity.NOTE,
    scope="robot",
    what="The board of a controller has built-in devices that the manifest gives no name.",
    why="Programs can look a built-in device up too; without a name here each program invents one.",
    example=Example(
        flagged="controllers:\n  bridge: {board: lookout}\n"
        "devices:\n  bowThruster: {kind: motor, port: bridge motor 1}\n",
        mended="controllers:\n  bridge: {board: lookout}\n"
        "devices:\n  bowThruster: {kind: motor, port: bridge motor 1}\n"
        "  heading: {kind: imu, port: bridge compass}\n",
    ),
    repair="None by itself: add a device for it, or leave it when no program needs it.",
)


def check(view: RobotView) -> Iterator[Finding]:
    """Yield one note for each controller with unnamed built-in devices."""
    used = {(use.port.controller, use.port.type) for use in written_uses(view)}
    for name, controller in view.manifest.controllers.items():
        board = view.board(name)
        unnamed = [
            label for label in (board.built_in if board else ()) if (name, label) not in used
        ]
        if board is None or not unnamed:
            continue
        kind = board.built_in[unnamed[0]]
        message = (
            f"{quoted(name)} has {named(unnamed)} built in, but no device names "
            f"{'it' if len(unnamed) == 1 else 'them'}. If a program needs it, add a device with "
            f"{to_write(f'kind: {kind}')} and {to_write(f'port: {name} {unnamed[0]}')}."
        )
        yield KIND.finding(controller.places[""], message, robot=view.manifest.robot)
