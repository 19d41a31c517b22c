"""The sheet mark: four characters that stand for what a person must wire and type."""

from __future__ import annotations

import hashlib
import json

from namegen.model.manifests import Device, Manifest

ALPHABET = "23456789ACDEFGHJKMNPRTUVWXY"
"""Characters that are not mistaken for one another on paper: no 0/O/Q, 1/I/L, B/8, S/5, Z/2."""


def sheet_mark(manifest: Manifest) -> str:
    """Return the mark of a manifest, to which `addressed` gives what the catalogue adds.

    It depends on controllers, ports, names, kinds, addresses and setups alone;
    not on order, titles, comments, notes or parts that change no connector.
    Two manifests that differ share a mark by chance once in 531,441.
    """
    wired = {
        "robot": manifest.robot,
        "controllers": sorted(
            [c.name, c.board, str(c.uplink or ""), c.address] for c in manifest.controllers.values()
        ),
        "devices": sorted(_wiring(device) for device in manifest.devices.values()),
        "setups": sorted(
            [name, sorted(_wiring(device) for device in manifest.devices_in(name))]
            for name in manifest.setups
        ),
        "selected": manifest.selected,
    }
    text = json.dumps(wired, ensure_ascii=True, separators=(",", ":"), sort_keys=True)
    number = int.from_bytes(hashlib.sha256(text.encode("ascii")).digest()[:8], "big")
    mark = ""
    for _ in range(4):
        number, index = divmod(number, len(ALPHABET))
        mark += ALPHABET[index]
    return mark


def _wiring(device: Device) -> list[object]:
    """Return what of a device a person wires and types, in a form that sorts."""
    address = "" if device.address is None else f"{device.address:#x}"
    return [device.name, device.kind, [str(port) for port in device.ports], address]
