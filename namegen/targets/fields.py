"""Fields: the identifiers of devices in generated code that has one field for each."""

from __future__ import annotations

from collections.abc import Iterable

from namegen.errors import UnusableTarget
from namegen.model.identifiers import NamingScheme
from namegen.model.manifests import Device, Manifest
from namegen.text.words import convert


def check_fields(manifests: Iterable[Manifest], scheme: NamingScheme, target: str) -> None:
    """Refuse devices whose field would not compile, or would hide something.

    ``scheme`` reserves also the words that the target's own code uses.

    Constants are in another case, so a device named ``class`` is sound as the
    constant ``CLASS``; the manifest's checks judge those.

    Raises:
        UnusableTarget: a field is no identifier, a reserved word, or the field
            of two devices.
    """
    for manifest in manifests:
        owners: dict[str, Device] = {}
        for device in manifest.devices.values():
            field = scheme.field_name(device)
            why = _fault(field, scheme)
            if field in owners:
                why = f'which is the field of "{owners[field].name}" too'
            if why:
                place = device.places.get(f"identifiers.{scheme.language}") or device.places.get("")
                raise UnusableTarget(
                    f'target {target}: "{device.name}" would be the field "{field}", {why}',
                    where=str(place or manifest.path),
                    remedy="Give the device another identifier, such as `identifiers: "
                    f"{{{scheme.language}: {_proposal(device, scheme)}}}`.",
                )
            owners[field] = device


def _fault(field: str, scheme: NamingScheme) -> str:
    if not scheme.valid(field):
        return f"which is no identifier of {scheme.language}"
    if field in scheme.reserved:
        return f"which cannot be used: it is {scheme.reserved[field]}"
    return ""


def _proposal(device: Device, scheme: NamingScheme) -> str:
    return convert(f"{device.kind} {device.name}", scheme.constant_case)
