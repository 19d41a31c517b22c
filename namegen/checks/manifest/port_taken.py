"""Two things are plugged into one port."""

from __future__ import annotations

from collections.abc import Iterator
from collections.abc import Set as AbstractSet

from namegen.checks.wiring import PortUse, exists, free_ports, is_shared, setups_of, uses_in
from namegen.checks.wording import in_setups, quoted, sentences
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.manifests import Port
from namegen.model.places import Related
from namegen.model.views import RobotView

KIND = FindingKind(
    name="port-taken",
    severity=Severity.ERROR,
    scope="robot",
    what="Two devices of one setup, or a device and a controller's uplink, are plugged into "
    "one port. Ports of a shared type (a bus) may hold several.",
    why="Only one of them can be there; the other one's name will move the wrong machine.",
    example=Example(
        flagged="devices:\n  bowThruster: {kind: motor, port: bridge motor 1}\n"
        "  netWinch: {kind: motor, port: bridge motor 1}\n",
        mended="devices:\n  bowThruster: {kind: motor, port: bridge motor 1}\n"
        "  netWinch: {kind: motor, port: bridge motor 2}\n",
    ),
    repair="None by itself: only a person at the boat sees which of the two is plugged in. "
    "The message names free ports.",
)

Pair = tuple[Port, str, str]


def check(view: RobotView) -> Iterator[Finding]:
    """Yield one finding for each pair that shares a port in some setup.

    The first user keeps the port; each later one is a finding at its own place.
    A port that does not exist is left to ``no-such-port``.
    """
    pairs: dict[Pair, tuple[PortUse, PortUse]] = {}
    setups: dict[Pair, list[str | None]] = {}
    for setup in setups_of(view):
        first: dict[Port, PortUse] = {}
        for use in uses_in(view, setup):
            if use.port not in first:
                first[use.port] = use
            elif _exclusive(view, use.port):
                pair = (use.port, first[use.port].name, use.name)
                pairs.setdefault(pair, (first[use.port], use))
                setups.setdefault(pair, []).append(setup)
    for pair, (earlier, later) in pairs.items():
        everywhere = len(setups[pair]) == len(setups_of(view))
        yield _finding(view, earlier, later, set() if everywhere else set(setups[pair]))


def _exclusive(view: RobotView, port: Port) -> bool:
    known = port.controller in view.manifest.controllers and port.type in view.catalogue.port_types
    if exists(view, port) is None:
        return known and not is_shared(view, port)
    return exists(view, port) is True and not is_shared(view, port)


def _finding(
    view: RobotView, earlier: PortUse, later: PortUse, setups: AbstractSet[str | None]
) -> Finding:
    port = later.port
    where = in_setups(sorted(setups, key=str))
    if earlier.device and later.device and earlier.name == later.name:
        message = f"{later.who} lists the port {quoted(str(port))} twice{where}. List it once."
    elif port.label is None:
        message = (
            f"{earlier.who} and {later.who} are both names for the built-in "
            f"{quoted(str(port))}{where}. Keep one; write the other under its `formerly`."
        )
    else:
        message = sentences(
            f"{quoted(str(port))} is taken twice{where}: by {earlier.who} and by {later.who}.",
            "Look which of the two is plugged in there, and give the other a port of its own.",
            free_ports(view, port.controller, [port.type]),
        )
    return KIND.finding(
        later.place,
        message,
        found=str(port),
        robot=view.manifest.robot,
        related=[Related(earlier.place, f"{earlier.who} is plugged in here")],
    )
