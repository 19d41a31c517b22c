"""A device shares a bus but nobody wrote down its address."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.manifest.buses import Node, nodes
from namegen.checks.wiring import setups_of
from namegen.checks.wording import listed, quoted, sentences
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.manifests import Port
from namegen.model.views import RobotView

KIND = FindingKind(
    name="address-missing",
    severity=Severity.WARNING,
    scope="device",
    what="Several devices are on one I2C or CAN bus, and one of them has no address: neither "
    "itself, nor its part, nor its kind.",
    why="Nobody can tell whether it answers to the same address as its neighbour.",
    example=Example(
        flagged="devices:\n  rangeBow: {kind: distance, port: bridge i2c 1}\n"
        "  hullTemp: {kind: temperature, port: bridge i2c 1, address: 0x48}\n",
        mended="devices:\n  rangeBow: {kind: distance, port: bridge i2c 1, address: 0x3A}\n"
        "  hullTemp: {kind: temperature, port: bridge i2c 1, address: 0x48}\n",
    ),
    repair="None by itself: write the address from the maker's data, at the device "
    "or once at the part.",
)


def check(view: RobotView) -> Iterator[Finding]:
    """Yield one finding for each device or multiplexer without an address on a shared bus."""
    seen: set[str] = set()
    for setup in setups_of(view):
        buses: dict[Port, list[Node]] = {}
        for node in nodes(view, setup):
            buses.setdefault(node.bus, []).append(node)
        for bus, members in buses.items():
            for node in members:
                if node.address is None and len(members) > 1 and node.who not in seen:
                    seen.add(node.who)
                    yield _finding(view, bus, node, [one for one in members if one is not node])


def _finding(view: RobotView, bus: Port, node: Node, others: list[Node]) -> Finding:
    assert node.place is not None
    message = sentences(
        f"{node.who} shares the bus {quoted(str(bus))} with {listed(one.who for one in others)}, "
        "but its address is not written down.",
        "Look it up in the maker's data and add it here, such as `address: 0x3A`"
        + (", or once at its part in the catalogue." if node.device else "."),
    )
    return KIND.finding(node.place, message, robot=view.manifest.robot)
