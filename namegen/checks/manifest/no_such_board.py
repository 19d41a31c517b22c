"""A controller is of a board that the catalogue does not describe."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.hints import did_you_mean, nearest
from namegen.checks.wording import listed, named, quoted, sentences
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.views import RobotView
from namegen.text.terminal import printable

KIND = FindingKind(
    name="no-such-board",
    severity=Severity.ERROR,
    scope="robot",
    what="A controller names a board that the catalogue does not describe, "
    "or there is no catalogue at all (then this is one warning).",
    why="Without the board nobody can tell which ports exist, so none of them is checked.",
    example=Example(
        flagged="controllers:\n  bridge: {board: harbor}\n",
        mended="controllers:\n  bridge: {board: harbour}\n",
    ),
    repair="None by itself: write the board's name as in the catalogue, "
    "or describe the board there.",
)


def check(view: RobotView) -> Iterator[Finding]:
    """Yield a finding for each unknown board; without a catalogue a single warning."""
    controllers = view.manifest.controllers
    if view.catalogue.path is None:
        if controllers:
            yield _no_catalogue(view)
        return
    boards = view.catalogue.boards
    for controller in controllers.values():
        if not controller.board or controller.board in boards:
            continue
        guess = nearest(controller.board, boards)
        message = sentences(
            f"Controller {quoted(controller.name)} is of the board {quoted(controller.board)}, "
            f"which {printable(view.catalogue.path)} does not describe, "
            "so its ports cannot be checked.",
            did_you_mean(guess)
            or (f"Boards there: {named(boards)}." if boards else "")
            or "Describe it there under `boards`.",
        )
        yield KIND.finding(
            controller.places.get("board") or controller.places[""],
            message,
            found=controller.board,
            expected=guess,
            robot=view.manifest.robot,
        )


def _no_catalogue(view: RobotView) -> Finding:
    controllers = view.manifest.controllers
    message = (
        f"There is no catalogue, so nothing is known about the boards of {listed(controllers)}: "
        "whether ports and parts exist is not checked. Describe the boards in a file "
        "catalogue.yaml and name it in namegen.yaml: `catalogue: catalogue.yaml`."
    )
    first = next(iter(controllers.values()))
    place = view.manifest.places.get("controllers") or first.places[""]
    return KIND.finding(place, message, robot=view.manifest.robot, severity=Severity.WARNING)
