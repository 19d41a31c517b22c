"""Proposing an identifier of its own for a device, where its name gives none that will do."""

from __future__ import annotations

from namegen.checks.wording import to_write
from namegen.model.identifiers import NamingScheme
from namegen.model.manifests import Device
from namegen.text.words import convert


def usable(scheme: NamingScheme, identifier: str) -> bool:
    """Whether the language takes the identifier: valid in form and not reserved."""
    return scheme.valid(identifier) and identifier not in scheme.reserved


def remedy(device: Device, schemes: list[NamingScheme]) -> str:
    """Return the line that gives a device identifiers of its own: ``identifiers: {java: ...}``.

    The kind is put before the name, since a name fails most often by beginning
    with a digit or being a reserved word.
    """
    entries = []
    for scheme in schemes:
        proposal = convert(f"{device.kind} {device.name}", scheme.constant_case)
        if not usable(scheme, proposal):
            proposal = convert(f"the {device.kind}", scheme.constant_case)
        entries.append(f"{scheme.language}: {proposal}")
    return to_write(f"identifiers: {{{', '.join(entries)}}}")
