"""Fleet: the robots side by side, and where those that should be alike are not."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from msgspec import Struct

from namegen import checks
from namegen.checks.manifest import idle_acceptance
from namegen.model.findings import Finding
from namegen.model.manifests import Device, Manifest
from namegen.model.reports import Report
from namegen.model.sheet_mark import sheet_mark
from namegen.model.views import FleetView
from namegen.operations.verify import sort
from namegen.operations.workspace import Workspace

LACKING = "-"
"""Stands in the table where a robot has no such device, or no setups."""


class Fleet(Struct, frozen=True):
    """The robots, what each has of every device, and the findings between them.

    Each row has a title and a cell a robot.
    """

    robots: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    report: Report


def fleet(workspace: Workspace, robots: Sequence[str] = ()) -> Fleet:
    """Hold the named robots (none: all) against each other.

    What is wrong in one manifest by itself is for `verify` to say; only what could
    not be read at all, or bears another robot's name, is told here too, because the
    robot is missing from the table.

    Raises:
        UnusableInput: a robot is not known.
    """
    names = Counter(manifest.robot for manifest in workspace.manifests)
    twins = [manifest.path for manifest in workspace.manifests if names[manifest.robot] > 1]
    untold = (*workspace.broken, *twins)
    chosen = [one for one in workspace.chosen(robots) if one.path not in twins]
    findings = [*workspace.faults, *_between(chosen, all_here=not (robots or untold))]
    for path in untold:
        findings += workspace.faults_of[path]
    files = {*untold, *(source for manifest in chosen for source in manifest.sources)}
    return Fleet(
        tuple(manifest.robot for manifest in chosen),
        tuple(_rows(chosen)),
        Report(sort(findings), files=len(files)),
    )


def _between(chosen: Sequence[Manifest], *, all_here: bool) -> Iterator[Finding]:
    """Yield the findings between robots that the robot's own manifest does not accept.

    Whether an acceptance has done its work is known only when all robots are there.
    """
    found = [one for check in checks.fleet_checks() for one in check(FleetView(chosen))]
    for manifest in chosen:
        mine = [finding for finding in found if finding.robot == manifest.robot]
        yield from (one for one in mine if not checks.accepted(one, manifest))
        if all_here:
            yield from idle_acceptance.idle(mine, manifest, "fleet")


def _rows(chosen: Sequence[Manifest]) -> Iterator[tuple[str, ...]]:
    yield ("sheet mark", *map(sheet_mark, chosen))
    yield ("setup", *(manifest.selected or LACKING for manifest in chosen))
    for name in dict.fromkeys(name for manifest in chosen for name in manifest.devices):
        yield (name, *(_cell(manifest.devices.get(name)) for manifest in chosen))


def _cell(device: Device | None) -> str:
    if device is None:
        return LACKING
    return ", ".join(map(str, device.ports)) or "undecided"
