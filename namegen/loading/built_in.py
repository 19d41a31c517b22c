"""Devices that are part of a board: what they are, and the bus address that they occupy."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from namegen.loading import wordings
from namegen.loading.nodes import FieldNode, GroupNode, Node
from namegen.loading.shapes.catalogue import BuiltInShape
from namegen.model.findings import Fault
from namegen.model.places import Place

Ports = Mapping[str, Sequence[str]]
"""Port type -> labels."""


def kind_place(board: Node, label: str) -> Place:
    """Return where the kind of a built-in device stands."""
    found = _entry(board, label)
    kind = found.value.value("kind") if isinstance(found.value, GroupNode) else found.value
    return (kind or found.key).place


def occupied(
    board: Node, label: str, shape: BuiltInShape, ports: Ports
) -> tuple[str, int] | Fault | None:
    """Return the label of the bus and the address there, None without, or what is wrong."""
    key, value = _entry(board, label)
    if isinstance(value, GroupNode) and value.spoilt:
        return None
    if shape.bus is None and shape.address is None:
        return None
    if shape.bus is None or shape.address is None:
        field = "bus" if shape.bus is None else "address"
        example = f"i2c {next(iter(ports.get('i2c', ())), '1')}" if field == "bus" else "0x28"
        message = wordings.missing_field(
            f"`{label}` has no `{field}`", f"{field}: {example}", value
        )
        return Fault("missing-field", message, key.place, expected=field)
    assert isinstance(value, GroupNode)
    place = value.fields["bus"].value.place
    bus, port_label = shape.bus
    if bus != "i2c":
        message = "Only addresses on I2C buses are compared. Leave `bus` and `address` out."
        return Fault("wrong-value", message, place, bus)
    if port_label not in ports.get(bus, ()):
        there = ", ".join(f"`{bus} {one}`" for one in ports.get(bus, ()))
        remedy = f"It has {there}." if there else "List its I2C ports below `ports` first."
        message = f"This board has no port `{bus} {port_label}`. {remedy}"
        return Fault("wrong-value", message, place, f"{bus} {port_label}")
    return port_label, shape.address


def _entry(board: Node, label: str) -> FieldNode:
    group = board.value("built_in") if isinstance(board, GroupNode) else None
    assert isinstance(group, GroupNode)
    return group.fields[label]
