"""An as-found list as one side of a comparison, in the words of the manifest on the other."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from pathlib import Path

from msgspec.structs import replace

from namegen.loading.as_found import read_as_found
from namegen.loading.charts.kinds import kind_of
from namegen.model.manifests import Device, Manifest
from namegen.model.views import Side
from namegen.operations.files import unreadable


def found_side(file: Path, name: str, manifest: Manifest) -> Side:
    """Return a list as a side, with ports and kinds spelt as the manifest spells them.

    What a program printed is known only where it is not what the manifest says: that
    program was built from another one, or a person wrote the list after all.

    Raises:
        UnusableInput: the list cannot be used.
    """
    try:
        found = read_as_found(file.read_bytes(), name)
    except OSError as error:
        raise unreadable(name, error) from error
    wired = _wirings(manifest)
    devices = tuple(_spelt(found.devices, wired))
    known = found.known
    if found.printed:
        known = frozenset(field for field in known if _contradicts(field, devices, wired))
    return Side(name, devices, known, printed=found.printed)


def _wirings(manifest: Manifest) -> Sequence[Device]:
    """Return the devices as the manifest has them, and as each setup wires them."""
    wired = [one for setup in manifest.setups for one in manifest.devices_in(setup)]
    return [*manifest.devices.values(), *wired]


def _spelt(found: Iterable[Device], wired: Sequence[Device]) -> Iterable[Device]:
    """Yield the devices with ports and kinds as the manifest calls them."""
    ports = {str(port).casefold(): port for one in wired for port in one.ports}
    kinds = {one.kind for one in wired}
    small = {kind.casefold(): kind for kind in kinds}
    for one in found:
        kind = one.kind
        if kind and kind not in kinds:
            kind = small.get(kind.casefold()) or kind_of(kind) or kind
        spelt = tuple(ports.get(str(port).casefold(), port) for port in one.ports)
        yield replace(one, ports=spelt, kind=kind)


def _contradicts(field: str, devices: Iterable[Device], wired: Sequence[Device]) -> bool:
    """Whether a list says something of a device that the manifest says in no setup."""
    names = {one.name for one in wired}
    said = {(one.name, _value(one, field)) for one in wired}
    told = [(one.name, _value(one, field)) for one in devices if one.name in names]
    return any(value and (name, value) not in said for name, value in told)


def _value(device: Device, field: str) -> object:
    return {"port": device.ports, "kind": device.kind, "address": device.address}[field]
