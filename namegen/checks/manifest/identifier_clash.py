"""Two devices that would have one identifier in generated code."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.manifest.own_identifiers import remedy, usable
from namegen.checks.wording import listed, quoted
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.identifiers import NamingScheme
from namegen.model.manifests import Device
from namegen.model.places import Related
from namegen.model.views import RobotView

KIND = FindingKind(
    name="identifier-clash",
    severity=Severity.ERROR,
    scope="robot",
    what="Two devices give the same identifier in a language that is generated.",
    why="Nothing is renumbered to make generated code compile: an identifier that depended on "
    "a neighbour would move to another machine when a row is added.",
    example=Example(
        flagged="devices:\n  bowLamp1: {kind: lamp, port: bridge digital 1}\n"
        "  bowLAMP1: {kind: lamp, port: bridge digital 2}\n",
        mended="devices:\n  bowLamp1: {kind: lamp, port: bridge digital 1}\n"
        "  sternLamp1: {kind: lamp, port: bridge digital 2}\n",
    ),
    repair="None by itself: rename one of the two, or give one an identifier of its own.",
)


def check(view: RobotView) -> Iterator[Finding]:
    """Yield one finding for each pair, whatever the number of languages it clashes in."""
    pairs: dict[tuple[str, str], tuple[Device, Device, list[NamingScheme]]] = {}
    for scheme in view.schemes:
        first: dict[str, Device] = {}
        for device in view.manifest.devices.values():
            identifier = scheme.constant(device)
            if not usable(scheme, identifier):
                continue
            earlier = first.setdefault(identifier, device)
            if earlier is not device:
                pair = (earlier.name, device.name)
                pairs.setdefault(pair, (earlier, device, []))[2].append(scheme)
    for earlier, later, schemes in pairs.values():
        message = (
            f"{quoted(earlier.name)} and {quoted(later.name)} would both be "
            f"{schemes[0].constant(later)} in {listed(one.language for one in schemes)}. "
            f"Rename one of them, or give this one an identifier of its own, such as "
            f"{remedy(later, schemes)}."
        )
        yield KIND.finding(
            later.place(),
            message,
            found=later.name,
            robot=view.manifest.robot,
            related=[Related(earlier.place(), f"{quoted(earlier.name)} is named here")],
        )
    yield from _kinds(view)


def _kinds(view: RobotView) -> Iterator[Finding]:
    """Judge the kinds in use, which become type names."""
    seen: set[tuple[str, str]] = set()
    for scheme in view.schemes:
        first: dict[str, Device] = {}
        for device in view.manifest.devices.values():
            name = scheme.type_name(device.kind)
            earlier = first.setdefault(name, device)
            pair = (earlier.kind, device.kind)
            if name and earlier.kind != device.kind and pair not in seen:
                seen.add(pair)
                message = (
                    f"The kinds {quoted(earlier.kind)} and {quoted(device.kind)} would both be "
                    f"the type {name} in {scheme.language}. Keep one of them, here and in the "
                    "catalogue."
                )
                yield KIND.finding(
                    device.place("kind"),
                    message,
                    found=device.kind,
                    robot=view.manifest.robot,
                    related=[Related(earlier.place("kind"), "the other kind is used here")],
                )
