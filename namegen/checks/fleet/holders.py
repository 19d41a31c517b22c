"""Which robots have a device of one name, and what most of them say of it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Hashable, Iterable, Mapping, Sequence
from typing import TypeVar

from msgspec import Struct

from namegen.checks.wording import listed
from namegen.model.manifests import Device, Manifest
from namegen.model.places import Related
from namegen.model.views import FleetView

T = TypeVar("T", bound=Hashable)


class Holder(Struct, frozen=True):
    """One robot's device."""

    robot: Manifest
    device: Device

    def wired_like(self, other: Holder) -> bool:
        """Whether both have the same controllers, so that their ports can be compared."""
        mine, others = self.robot.controllers, other.robot.controllers
        used = {port.controller for port in (*self.device.ports, *other.device.ports)}
        return all(
            name in mine and name in others and mine[name].board == others[name].board
            for name in used
        )


def holders(view: FleetView) -> Mapping[str, Sequence[Holder]]:
    """Return the robots that have a device of each name, in the order of the robots."""
    found: dict[str, list[Holder]] = {}
    for robot in view.robots:
        for device in robot.devices.values():
            found.setdefault(device.name, []).append(Holder(robot, device))
    return found


def most_common(values: Iterable[T]) -> T:
    """Return the value that comes most often; of several, the one that comes first."""
    return Counter(values).most_common(1)[0][0]


def robots_of(held: Iterable[Holder]) -> str:
    """Return robots as a reader lists them."""
    return listed([one.robot.robot for one in held])


def named_at(one: Holder) -> Related:
    """Return where another robot names its device: one such place is enough to compare with."""
    return Related(one.device.place(), f"named here for {one.robot.robot}")
