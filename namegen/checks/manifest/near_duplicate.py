"""Two device names that people take for one another."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.near_names import difference, near
from namegen.checks.wording import quoted
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.places import Related
from namegen.model.views import RobotView

KIND = FindingKind(
    name="near-duplicate",
    severity=Severity.WARNING,
    scope="robot",
    what="Two device names differ only by case, by letters that look alike (0/O, 1/l/I), or by "
    "one slip of the finger. A series (lamp1, lamp2) and opposites (left, right) are fine.",
    why="Whoever types one of them will sooner or later type the other, and both exist: "
    "no look-up fails, another machine moves.",
    example=Example(
        flagged="devices:\n  rudder: {kind: servo, port: bridge servo 1}\n"
        "  ruder: {kind: servo, port: bridge servo 2}\n",
        mended="devices:\n  rudder: {kind: servo, port: bridge servo 1}\n"
        "  sailTrim: {kind: servo, port: bridge servo 2}\n",
    ),
    repair="None by itself: rename one of the two so that it differs by a whole word.",
)


def check(view: RobotView) -> Iterator[Finding]:
    """Yield one finding for each pair of names that are too near, at the later one.

    A pair that gives one identifier is left to ``identifier-clash``.
    """
    for earlier, later in near(list(view.manifest.devices.values())):
        clash = any(one.constant(earlier) == one.constant(later) for one in view.schemes)
        how = "" if clash else difference(earlier.name, later.name)
        if how:
            message = (
                f"{quoted(earlier.name)} and {quoted(later.name)} are easily taken for one "
                f"another: {how}. Rename one of them so that it differs by a whole word."
            )
            yield KIND.finding(
                later.place(),
                message,
                found=later.name,
                robot=view.manifest.robot,
                related=[Related(earlier.place(), f"{quoted(earlier.name)} is named here")],
            )
