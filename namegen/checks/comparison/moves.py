"""Plugs that sit elsewhere, sorted by what the hand did: moved one, swapped two, rotated more."""

from __future__ import annotations

from collections.abc import Sequence

from namegen.model.manifests import Device, Port
from namegen.model.views import ComparisonView, Pair, Side


def moves(view: ComparisonView) -> list[list[Pair]]:
    """Return the devices whose ports differ, those that took each other's places together.

    A list of one is a plug that moved to a port that no other of them left in exchange.
    """
    moved = [
        pair
        for pair in view.pairs
        if view.both_say("port")
        and pair.before.ports != pair.after.ports
        and not (_unread(view.before, pair.before) or _unread(view.after, pair.after))
    ]
    left: dict[tuple[Port, ...], Pair] = {}
    for pair in moved:
        if pair.before.ports:
            left.setdefault(pair.before.ports, pair)
    found: list[list[Pair]] = []
    told: set[str] = set()
    for pair in moved:
        if pair.before.name not in told:
            ring = _ring(pair, left)
            told.update(one.before.name for one in ring)
            found.append(ring)
    return found


def _unread(side: Side, device: Device) -> bool:
    """Whether a list leaves the cell empty: nobody looked where the device is plugged in."""
    return side.manifest is None and not device.ports


def _ring(first: Pair, left: dict[tuple[Port, ...], Pair]) -> list[Pair]:
    """Return the devices that each took the next one's place, back to the first; or it alone."""
    ring = [first]
    while (after := left.get(ring[-1].after.ports)) is not None:
        if after is first:
            return ring
        if after in ring:
            break
        ring.append(after)
    return [first]


def of_length(view: ComparisonView, least: int, most: int | None = None) -> Sequence[list[Pair]]:
    """Return the moves of so many devices."""
    return [
        ring for ring in moves(view) if least <= len(ring) and (most is None or len(ring) <= most)
    ]
