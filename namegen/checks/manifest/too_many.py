"""More devices of a kind than the rules allow."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.wiring import setups_of
from namegen.checks.wording import in_setups, listed, quoted
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.manifests import Device
from namegen.model.places import Related
from namegen.model.views import RobotView

KIND = FindingKind(
    name="too-many",
    severity=Severity.WARNING,
    scope="robot",
    what='A setup has more devices of one kind than the catalogue\'s rules allow ("at_most").',
    why="The robot may be refused at the inspection. Names and outputs are right all the same, "
    "so this is a warning.",
    example=Example(
        flagged="devices:\n  bowLamp: {kind: lamp, port: bridge digital 1}\n"
        "  sternLamp: {kind: lamp, port: bridge digital 2}\n"
        "  cabinLamp: {kind: lamp, port: bridge digital 3}\n",
        mended="devices:\n  bowLamp: {kind: lamp, port: bridge digital 1}\n"
        "  sternLamp: {kind: lamp, port: bridge digital 2}\n",
    ),
    repair="None by itself: take devices out, or leave them out of a setup; "
    "or correct at_most in the catalogue.",
)


def check(view: RobotView) -> Iterator[Finding]:
    """Yield one finding for each kind that is over its limit, for the fullest setup."""
    rules = view.catalogue.rules
    for kind, most in rules.at_most.items():
        fullest: tuple[str | None, list[Device]] = (None, [])
        for setup in setups_of(view):
            devices = [one for one in view.manifest.devices_in(setup) if one.kind == kind]
            if len(devices) > len(fullest[1]):
                fullest = (setup, devices)
        setup, devices = fullest
        if len(devices) <= most:
            continue
        extra = len(devices) - most
        message = (
            f"{len(devices)} devices of kind {quoted(kind)}{in_setups([setup])}, but the rules "
            f"allow {most}: {listed((one.name for one in devices), most=12)}. "
            f"Take {extra} of them out."
        )
        place = rules.places.get(f"at_most.{kind}") or rules.places.get("at_most")
        yield KIND.finding(
            devices[most].place(),
            message,
            found=devices[most].name,
            robot=view.manifest.robot,
            related=[Related(place, "the limit is set here")] if place else (),
        )
