"""Two devices answer to one address on one bus."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.manifest.buses import Node, nodes, upstream
from namegen.checks.wiring import is_dead, setups_of
from namegen.checks.wording import address, in_setups, named, quoted, sentences
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.manifests import Port
from namegen.model.places import Related
from namegen.model.views import RobotView

KIND = FindingKind(
    name="address-taken",
    severity=Severity.ERROR,
    scope="robot",
    what="Two devices of one setup have the same address on the same bus, or on a bus and "
    "its branch behind a multiplexer.",
    why="Both answer at once, so both readings are garbage, and which one fails changes "
    "from day to day.",
    example=Example(
        flagged="devices:\n  rangeBow: {kind: distance, port: bridge i2c 1, address: 0x3A}\n"
        "  rangeStern: {kind: distance, port: bridge i2c 1, address: 0x3A}\n",
        mended="devices:\n  rangeBow: {kind: distance, port: bridge i2c 1, address: 0x3A}\n"
        "  rangeStern: {kind: distance, port: bridge i2c 2, address: 0x3A}\n",
    ),
    repair="None by itself: plug one of the two into another bus, or set another address on it.",
)


def check(view: RobotView) -> Iterator[Finding]:
    """Yield one finding for each pair that meets on a bus in some setup."""
    seen: dict[tuple[str, str], tuple[Node, Node, list[str | None]]] = {}
    for setup in setups_of(view):
        for earlier, later in _meetings(view, list(nodes(view, setup))):
            pair = (earlier.who, later.who)
            seen.setdefault(pair, (earlier, later, []))[2].append(setup)
    for earlier, later, setups in seen.values():
        everywhere = len(setups) == len(setups_of(view))
        where = "" if everywhere else in_setups(setups)
        yield _finding(view, earlier, later, where)


def _meetings(view: RobotView, all_nodes: list[Node]) -> Iterator[tuple[Node, Node]]:
    by_address: dict[int, list[Node]] = {}
    for node in all_nodes:
        if node.address is None:
            continue
        for earlier in by_address.setdefault(node.address, []):
            if node.place is not None and _meet(view, earlier.bus, node.bus):
                yield earlier, node
                break
        by_address[node.address].append(node)


def _meet(view: RobotView, one: Port, other: Port) -> bool:
    return one in upstream(view, other) or other in upstream(view, one)


def _finding(view: RobotView, earlier: Node, later: Node, where: str) -> Finding:
    assert later.place is not None and later.address is not None
    branch = "" if earlier.bus == later.bus else f", a branch of {quoted(str(earlier.bus))}"
    free = _free_buses(view, later)
    mover = "one of them" if earlier.device else later.who
    move = f"plug {mover} into {named(free, last='or')}, or " if free else ""
    message = sentences(
        f"{earlier.who} and {later.who} both answer to address {address(later.address)} on "
        f"{quoted(str(later.bus))}{branch}{where}.",
        sentences(f"{move}set another address on {mover}, if the maker provides for it."),
        "" if free else "No other bus of this robot has the address free.",
    )
    related = [Related(earlier.place, f"{earlier.who} is here")] if earlier.place else []
    return KIND.finding(
        later.place,
        message,
        found=address(later.address),
        robot=view.manifest.robot,
        related=related,
    )


def _free_buses(view: RobotView, node: Node) -> list[str]:
    """Return the buses, on which nothing answers to the node's address in any setup."""
    taken = [
        other.bus
        for setup in setups_of(view)
        for other in nodes(view, setup)
        if other.address == node.address
    ]
    found = []
    for name in view.manifest.controllers:
        board = view.board(name)
        for label in board.ports.get(node.bus.type, ()) if board else ():
            bus = Port(name, node.bus.type, label)
            if not is_dead(view, bus) and not any(_meet(view, bus, other) for other in taken):
                found.append(str(bus))
    return found[:4]
