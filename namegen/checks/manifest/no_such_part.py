"""A device is said to be a part that the catalogue does not have."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.hints import did_you_mean, nearest
from namegen.checks.wiring import variants
from namegen.checks.wording import listed, quoted, sentences
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.views import RobotView
from namegen.text.terminal import printable

KIND = FindingKind(
    name="no-such-part",
    severity=Severity.ERROR,
    scope="device",
    what="A device names a part that the catalogue does not have.",
    why="Kind, currents and the numbers for programs come from the part; "
    "without it they are missing.",
    example=Example(
        flagged="devices:\n  bowThruster: {kind: motor, port: bridge motor 1, part: truster-b}\n",
        mended="devices:\n  bowThruster: {kind: motor, port: bridge motor 1, part: thruster-b}\n",
    ),
    repair="None by itself: write the part's name as in the catalogue, or add the part there.",
)


def check(view: RobotView) -> Iterator[Finding]:
    """Yield a finding for each device of an unknown part; silent without a catalogue."""
    path, parts = view.catalogue.path, view.catalogue.parts
    if path is None:
        return
    seen: set[tuple[str, str]] = set()
    for device in variants(view):
        part = device.part
        if part is None or part in parts or (device.name, part) in seen:
            continue
        seen.add((device.name, part))
        guess = nearest(part, parts)
        known = f"Write one of its parts ({listed(parts)}), or add" if parts else "Add"
        message = sentences(
            f"{quoted(device.name)} is said to be the part {quoted(part)}, "
            f"which {printable(path)} does not have.",
            did_you_mean(guess) or f"{known} this one there under `parts`.",
        )
        yield KIND.finding(
            device.place("part"), message, found=part, expected=guess, robot=view.manifest.robot
        )
