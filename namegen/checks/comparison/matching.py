"""Which device of one side is which of the other, and how its name changed."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence

from msgspec.structs import replace

from namegen.checks.near_names import difference
from namegen.model.manifests import Device, Manifest
from namegen.model.views import ComparisonView, Pair, Side
from namegen.text.likeness import Candidate, suggest
from namegen.text.lookalikes import skeleton

CONTROLLER = "controller"
"""The kind under which controllers are compared as if they were devices."""

_FIELDS = {"board": "part", "uplink": "port"}

Sure = Callable[[Device, Device], bool]


def matched(before: Side, after: Side) -> ComparisonView:
    """Pair the devices of both sides: by name, former name, likeness of the name, then by port.

    Each pair must be the only one that its evidence allows; what is left over is
    missing or extra. Controllers are compared only where both sides are manifests.
    """
    two_manifests = before.manifest is not None and after.manifest is not None
    sides = [_controllers(side.manifest) if two_manifests else () for side in (before, after)]
    controllers = _Match(*sides)
    names = {pair.before.name: pair.after.name for pair in controllers.pairs}
    devices = _Match([_as_called(device, names) for device in before.devices], after.devices)
    return ComparisonView(
        before,
        after,
        pairs=(*controllers.pairs, *devices.pairs),
        missing=(*controllers.left, *devices.left),
        extra=(*controllers.right, *devices.right),
    )


class _Match:
    """The pairs of two sets of devices; ``left`` and ``right`` are what has no partner."""

    def __init__(self, left: Iterable[Device], right: Iterable[Device]) -> None:
        self.left, self.right = list(left), list(right)
        order = {id(device): number for number, device in enumerate(self.left)}
        found: list[Pair] = []
        for sure in (_same_name, _former, _near, self._likely, _same_port):
            found += self._taken(sure)
        self.pairs = sorted(found, key=lambda pair: order[id(pair.before)])

    def _taken(self, sure: Sure) -> list[Pair]:
        """Take out the devices that this evidence pairs, each with one other and no more."""
        near = [(one, other) for one in self.left for other in self.right if sure(one, other)]
        found = [
            Pair(one, other)
            for one, other in near
            if sum(one is a for a, _ in near) == 1 and sum(other is b for _, b in near) == 1
        ]
        self.left = [one for one in self.left if all(one is not pair.before for pair in found)]
        self.right = [one for one in self.right if all(one is not pair.after for pair in found)]
        return found

    def _likely(self, one: Device, other: Device) -> bool:
        """Whether one name was surely meant by the other."""
        names = [Candidate(device.name, device.kind or None) for device in self.left]
        return suggest(other.name, names, other.kind or None).best == one.name


def how_renamed(pair: Pair) -> str | None:
    """Return the kind of finding that a pair's names make, or None where they are the same."""
    old, new = pair.before.name, pair.after.name
    if old == new:
        return None
    if old.casefold() == new.casefold():
        return "letter-case"
    if skeleton(old).casefold() == skeleton(new).casefold():
        return "look-alike"
    if _former(pair.before, pair.after) or not _near_or_likely(pair):
        return "renamed"
    return "misspelt"


def _near_or_likely(pair: Pair) -> bool:
    old, new = pair.before.name, pair.after.name
    return bool(difference(old, new)) or suggest(new, [old]).best == old


def _same_name(one: Device, other: Device) -> bool:
    return one.name == other.name


def _former(one: Device, other: Device) -> bool:
    return one.name in other.formerly or other.name in one.formerly


def _near(one: Device, other: Device) -> bool:
    return _may_be_one(one, other) and bool(difference(one.name, other.name))


def _same_port(one: Device, other: Device) -> bool:
    same = one.ports == other.ports and one.address == other.address
    return _may_be_one(one, other) and bool(one.ports) and same


def _may_be_one(one: Device, other: Device) -> bool:
    """Whether kind and part allow it; a side that does not say them allows everything."""
    kinds = not one.kind or not other.kind or one.kind == other.kind
    return kinds and (one.part is None or other.part is None or one.part == other.part)


def _controllers(manifest: Manifest | None) -> Sequence[Device]:
    """Return the controllers as devices: plugged in by their uplink, the board as the part."""
    return [
        Device(
            one.name,
            CONTROLLER,
            ports=() if one.uplink is None else (one.uplink,),
            part=one.board,
            address=one.address,
            places={_FIELDS.get(name, name): place for name, place in one.places.items()},
        )
        for one in (manifest.controllers.values() if manifest else ())
    ]


def _as_called(device: Device, names: Mapping[str, str]) -> Device:
    """Return the device with its controllers called as the other side calls them."""
    ports = tuple(
        replace(port, controller=names.get(port.controller, port.controller))
        for port in device.ports
    )
    return device if ports == device.ports else replace(device, ports=ports)
