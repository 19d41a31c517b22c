"""Bus addresses that a manifest leaves to the catalogue: of a part, or usual for a kind."""

from __future__ import annotations

from msgspec.structs import replace

from namegen.model.boards import Catalogue
from namegen.model.manifests import Device, Manifest

ADDRESSED = frozenset({"i2c", "can"})
"""Port types on which every device is told apart by its address (on CAN, its id)."""


def address_of(device: Device, catalogue: Catalogue) -> int | None:
    """Return the device's own address, or else its part's, or else the usual one of its kind.

    Where a device is on no bus, only its own counts.
    """
    if device.address is not None or not any(port.type in ADDRESSED for port in device.ports):
        return device.address
    part = catalogue.parts.get(device.part or "")
    if part is not None and part.address is not None:
        return part.address
    kind = catalogue.kinds.get(device.kind)
    return kind.address if kind is not None else None


def addressed(manifest: Manifest, catalogue: Catalogue) -> Manifest:
    """Return the manifest with every address that the catalogue gives; itself if that is none."""
    given = {device.name: address_of(device, catalogue) for device in manifest.devices.values()}
    if all(device.address == given[device.name] for device in manifest.devices.values()):
        return manifest
    devices = {
        name: device if device.address == given[name] else replace(device, address=given[name])
        for name, device in manifest.devices.items()
    }
    return replace(manifest, devices=devices)
