"""Buses and the addresses on them: who answers where, behind multiplexers too."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from namegen.checks.wiring import exists
from namegen.checks.wording import quoted
from namegen.model.addresses import ADDRESSED, address_of
from namegen.model.manifests import Device, Port
from namegen.model.places import Place
from namegen.model.views import RobotView


class Node(Struct, frozen=True):
    """Something that answers on a bus. ``place`` is None for what is built into a board."""

    who: str
    bus: Port
    address: int | None
    place: Place | None
    device: Device | None = None


def node_of(view: RobotView, device: Device, bus: Port) -> Node:
    """Return a device as it answers on one of its ports."""
    place = device.places.get("address") or device.place("port")
    return Node(quoted(device.name), bus, address_of(device, view.catalogue), place, device)


def nodes(view: RobotView, setup: str | None) -> Iterator[Node]:
    """Yield all that answers on an addressed bus in a setup: devices last."""
    for name, controller in view.manifest.controllers.items():
        board = view.board(name)
        if board is not None:
            for label, (bus, address) in board.built_in_addresses.items():
                who = f"the {quoted(label)} built into {quoted(name)}"
                yield Node(who, Port(name, "i2c", bus), address, None)
        uplink = controller.uplink
        if uplink is not None and uplink.type in ADDRESSED:
            place = controller.places.get("address") or controller.places[""]
            yield Node(f"the controller {quoted(name)}", uplink, controller.address, place)
    for device in view.manifest.devices_in(setup):
        for port in device.ports:
            if port.type in ADDRESSED and exists(view, port) is not False:
                yield node_of(view, device, port)


def upstream(view: RobotView, bus: Port) -> list[Port]:
    """Return the bus and those that it is a branch of, nearest first.

    The I2C ports of a board that itself hangs on an I2C port are branches of
    that port: what answers there answers on each branch too.
    """
    found = [bus]
    while True:
        controller = view.manifest.controllers.get(found[-1].controller)
        uplink = controller.uplink if controller else None
        if uplink is None or uplink.type != bus.type or uplink in found:
            return found
        found.append(uplink)
