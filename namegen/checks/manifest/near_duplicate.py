"""Two device names that people take for one another."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.misreading import misread
from namegen.checks.wording import quoted
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.manifests import Device
from namegen.model.places import Related
from namegen.model.views import RobotView
from namegen.text.differences import spell_out
from namegen.text.lookalikes import look_alike, skeleton
from namegen.text.words import convert

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
    for earlier, later in _near(list(view.manifest.devices.values())):
        clash = any(one.constant(earlier) == one.constant(later) for one in view.schemes)
        how = "" if clash else _difference(earlier.name, later.name)
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


def _near(devices: list[Device]) -> Iterator[tuple[Device, Device]]:
    """Yield the pairs that may be one edit apart, each once, in the order of the manifest.

    Two texts are one edit apart only if they share a text that is one letter
    shorter, so that no pair needs to be compared that shares none.
    """
    holders: dict[str, list[int]] = {}
    pairs: set[tuple[int, int]] = set()
    for index, device in enumerate(devices):
        look = skeleton(device.name).casefold()
        for key in {look, *(look[:at] + look[at + 1 :] for at in range(len(look)))}:
            others = holders.get(key)
            if others is None:
                holders[key] = [index]
            else:
                pairs.update((other, index) for other in others)
                others.append(index)
    for one, other in sorted(pairs):
        yield devices[one], devices[other]


def _difference(earlier: str, later: str) -> str:
    """Return how two names differ when people would misread one for the other."""
    if earlier.casefold() == later.casefold():
        return "only capitals differ"
    if look_alike(earlier.casefold(), later.casefold()) or look_alike(earlier, later):
        return f"they look alike ({spell_out(later, earlier)})"
    if convert(earlier, "snake_case") == convert(later, "snake_case"):
        return "only capitals and the signs between words differ"
    return spell_out(later, earlier) if misread(earlier, later) else ""
