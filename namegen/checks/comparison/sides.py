"""Saying what the two sides of a comparison have, and where it stands."""

from __future__ import annotations

from namegen.checks.comparison.matching import CONTROLLER
from namegen.checks.wording import listed, quoted
from namegen.model.findings import Finding, FindingKind, Severity
from namegen.model.manifests import Device
from namegen.model.places import Place, Related
from namegen.model.views import ComparisonView, Pair


def differing(
    kind: FindingKind, view: ComparisonView, pair: Pair, field: str, message: str
) -> Finding:
    """Return a finding at a field of the later side's device, with the earlier side's beside it."""
    related = Related(pair.before.place(field), f"in {view.before.label}")
    return found_at(kind, view, pair.after, pair.after.place(field), message, (related,))


def found_at(
    kind: FindingKind,
    view: ComparisonView,
    device: Device,
    place: Place,
    message: str,
    related: tuple[Related, ...] = (),
) -> Finding:
    """Return a finding about one device. What may be absent is a note when it is."""
    manifest = view.after.manifest or view.before.manifest
    optional = device.optional and kind.name == "missing"
    return kind.finding(
        place,
        message,
        found=device.name,
        robot=manifest.robot if manifest else None,
        related=related,
        severity=Severity.NOTE if optional else severity(kind, view),
    )


def severity(kind: FindingKind, view: ComparisonView) -> Severity:
    """Return the kind's severity; between two manifests a difference is no error by itself."""
    error = kind.severity is Severity.ERROR
    return Severity.WARNING if error and view.two_manifests else kind.severity


def thing(device: Device) -> str:
    """Return a device's name in quotes; of a controller, that it is one."""
    return f"controller {quoted(device.name)}" if device.kind == CONTROLLER else quoted(device.name)


def things(devices: list[Device]) -> str:
    """Return names as a reader lists them."""
    return listed([thing(device) for device in devices])


def plugged(device: Device) -> str:
    """Return where a device is plugged in, as the end of a sentence."""
    return f"at {listed(map(str, device.ports))}" if device.ports else "at a port that is undecided"


def by_machine(view: ComparisonView, advice: str) -> str:
    """Return advice, after a blank, where one side was read off a machine."""
    return "" if view.two_manifests else f" {advice}"


def by_hand(view: ComparisonView, advice: str) -> str:
    """Return advice about wires and kinds, which only a person can read off a machine."""
    if view.before.printed or view.after.printed:
        advice = (
            "If a program printed this list, it was built from another manifest: build it anew, "
            f"load it and read off again. If a person wrote it: {advice[:1].lower()}{advice[1:]}"
        )
    return by_machine(view, advice)
