"""A device is of another kind than its part."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.wiring import variants
from namegen.checks.wording import a_device, named, quoted, sentences, to_write
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.places import Related
from namegen.model.views import RobotView

KIND = FindingKind(
    name="part-unfit",
    severity=Severity.ERROR,
    scope="device",
    what="A device is given one kind, and its part is of another kind.",
    why="One of the two is wrong: either the program asks for the wrong kind, "
    "or the wrong item is taken from the shelf.",
    example=Example(
        flagged="devices:\n  bowThruster: {kind: servo, port: bridge servo 1, part: thruster-b}\n",
        mended="devices:\n  bowThruster: {kind: motor, port: bridge motor 1, part: thruster-b}\n",
    ),
    repair="None by itself: correct the kind or the part. "
    "The kind may be left out when the part decides it.",
)


def check(view: RobotView) -> Iterator[Finding]:
    """Yield a finding for each device whose kind is not its part's."""
    seen: set[tuple[str, str]] = set()
    for device in variants(view):
        part = view.catalogue.parts.get(device.part or "")
        if part is None or not part.kind or not device.kind or part.kind == device.kind:
            continue
        if (device.name, part.name) in seen:
            continue
        seen.add((device.name, part.name))
        others = [
            other.name for other in view.catalogue.parts.values() if other.kind == device.kind
        ]
        message = sentences(
            f"{quoted(device.name)} is {a_device(device.kind)}, but its part "
            f"{quoted(part.name)} is {a_device(part.kind)}.",
            f"Write {to_write(f'kind: {part.kind}')}, or another part.",
            f"Parts of kind {device.kind}: {named(others)}." if others else "",
        )
        place = part.places.get("kind") or part.places.get("")
        yield KIND.finding(
            device.place("part"),
            message,
            found=part.name,
            robot=view.manifest.robot,
            related=[Related(place, f"{quoted(part.name)} is described here")] if place else (),
        )
