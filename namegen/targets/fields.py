"""Fields: the identifiers of devices in generated code that has one field for each."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.model.findings import Fault
from namegen.model.identifiers import NamingScheme
from namegen.model.manifests import Device, Manifest
from namegen.model.places import Place, Related
from namegen.text.words import convert


def unfit_fields(manifest: Manifest, scheme: NamingScheme, target: str) -> Iterator[Fault]:
    """Yield each device whose field would not compile, or would hide something.

    A field is at fault when it is no identifier, a word that ``scheme``
    reserves (with the words that the target's own code uses), or the field of
    an earlier device. Constants are in another case, so a device named
    ``class`` is sound as the constant ``CLASS``; the manifest's checks judge
    those.
    """
    owners: dict[str, Device] = {}
    for device in manifest.devices.values():
        field = scheme.field_name(device)
        twin = owners.setdefault(field, device)
        kind, why = _fault(field, scheme)
        if twin is not device:
            kind, why = "identifier-clash", f'which is the field of "{twin.name}" too'
        if not kind:
            continue
        message = (
            f'Target {target}: "{device.name}" would be the field "{field}", {why}. Give the '
            "device another identifier, such as "
            f"`identifiers: {{{scheme.language}: {_proposal(device, scheme)}}}`."
        )
        related = Related(_place(twin, manifest, ""), f'"{twin.name}" is named here')
        yield Fault(
            kind,
            message,
            _place(device, manifest, scheme.language),
            found=device.name,
            related=(related,) if twin is not device else (),
        )


def _fault(field: str, scheme: NamingScheme) -> tuple[str, str]:
    """Return the kind of finding and the rest of its sentence; both empty for a sound field."""
    if not scheme.valid(field):
        return "name-unsafe", f"which is no identifier of {scheme.language}"
    if field in scheme.reserved:
        return "reserved-word", f"which cannot be used: it is {scheme.reserved[field]}"
    return "", ""


def _place(device: Device, manifest: Manifest, language: str) -> Place:
    found = device.places.get(f"identifiers.{language}") or device.places.get("")
    return found or Place(manifest.path)


def _proposal(device: Device, scheme: NamingScheme) -> str:
    return convert(f"{device.kind} {device.name}", scheme.constant_case)
