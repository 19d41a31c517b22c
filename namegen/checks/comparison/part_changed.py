"""``part-changed``: another part, or another board, was built in."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.comparison.matching import CONTROLLER
from namegen.checks.comparison.sides import differing, thing
from namegen.checks.wording import quoted
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.views import ComparisonView

KIND = FindingKind(
    name="part-changed",
    severity=Severity.NOTE,
    scope="robot",
    what="A device is another part of the catalogue, or a controller another board.",
    why="Currents, gears and the numbers that follow from them are others.",
    example=Example(
        flagged="devices:\n  netWinch: {kind: motor, port: bridge motor 3, part: winch-x}\n",
        mended="devices:\n  netWinch: {kind: motor, port: bridge motor 3, part: winch-m}\n",
    ),
    repair="None: it tells what changed. Build again, and look the currents over.",
)


def check(view: ComparisonView) -> Iterator[Finding]:
    """Yield each device whose part, and each controller whose board, differs."""
    for pair in view.pairs if view.both_say("part") else ():
        old, new = pair.before.part, pair.after.part
        if old != new:
            what = "board" if pair.after.kind == CONTROLLER else "part"
            message = (
                f"{thing(pair.after)} is {_part(new, what)} in {view.after.label} and "
                f"{_part(old, what)} in {view.before.label}."
            )
            yield differing(KIND, view, pair, "part", message)


def _part(name: str | None, what: str) -> str:
    return f"{what} {quoted(name)}" if name else f"no {what} of the catalogue"
