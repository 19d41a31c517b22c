"""A part that this season's rules do not allow."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.wiring import variants
from namegen.checks.wording import named, quoted, sentences
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.places import Related
from namegen.model.views import RobotView

KIND = FindingKind(
    name="part-not-allowed",
    severity=Severity.WARNING,
    scope="device",
    what='A device is a part that the catalogue\'s rules do not list under "allowed_parts".',
    why="The robot may be refused at the inspection. Names and outputs are right all the same, "
    "so this is a warning, which a boat for practice may accept.",
    example=Example(
        flagged="devices:\n  bowThruster: {port: bridge motor 1, part: thruster-old}\n",
        mended="devices:\n  bowThruster: {port: bridge motor 1, part: thruster-b}\n",
    ),
    repair="None by itself: take an allowed part, or add the part to allowed_parts "
    "when the rule book permits it.",
)


def check(view: RobotView) -> Iterator[Finding]:
    """Yield a finding for each device of a known part that is not allowed."""
    rules = view.catalogue.rules
    if rules.allowed_parts is None:
        return
    seen: set[tuple[str, str]] = set()
    for device in variants(view):
        part = view.catalogue.parts.get(device.part or "")
        if part is None or part.name in rules.allowed_parts or (device.name, part.name) in seen:
            continue
        seen.add((device.name, part.name))
        others = [
            other.name
            for other in view.catalogue.parts.values()
            if other.kind == part.kind and other.name in rules.allowed_parts
        ]
        message = sentences(
            f"The rules do not allow the part {quoted(part.name)} of {quoted(device.name)}.",
            f"Allowed instead: {named(others, 'or')}." if others else "",
            "If the rule book permits it, add it to `allowed_parts` in the catalogue.",
        )
        place = rules.places.get("allowed_parts")
        yield KIND.finding(
            device.place("part"),
            message,
            found=part.name,
            robot=view.manifest.robot,
            related=[Related(place, "the allowed parts are listed here")] if place else (),
        )
