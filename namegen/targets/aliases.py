"""Aliases: identifiers of former names, so that code written before a rename still compiles."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping

from namegen.model.identifiers import NamingScheme
from namegen.model.manifests import Device, Manifest


def former_constants(
    manifest: Manifest, scheme: NamingScheme
) -> Mapping[str, tuple[tuple[str, str], ...]]:
    """Return, by device, each former name with its constant, newest first.

    A constant that a device has today, or that two devices had, is left out: an
    alias must never mean another machine. So is one that is no identifier of
    the language, since no code can hold it.
    """
    former = {
        device.name: _own(device, scheme) for device in manifest.devices.values() if device.formerly
    }
    if not former:
        return {}
    owners = Counter(scheme.constant(device) for device in manifest.devices.values())
    owners.update(constant for own in former.values() for constant in own)
    return {
        name: tuple((was, constant) for constant, was in own.items() if owners[constant] == 1)
        for name, own in former.items()
    }


def _own(device: Device, scheme: NamingScheme) -> dict[str, str]:
    """Return the usable constants of one device's former names, each with the newest such name."""
    found: dict[str, str] = {}
    for name in device.formerly:
        constant = scheme.spelled(name)
        if scheme.valid(constant) and constant not in scheme.reserved:
            found.setdefault(constant, name)
    return found
