"""The words that the messages about code share, beside those of all messages."""

from __future__ import annotations

from collections.abc import Iterable

from namegen.checks import wording
from namegen.model.manifests import Device

_LONGEST = 80


def quoted(text: str) -> str:
    """Return a text of the code in double quotes, cut in the middle when it is too long a name."""
    if len(text) > _LONGEST:
        text = f"{text[: _LONGEST - 20]}...{text[-15:]}"
    return wording.quoted(text)


def a(kind: str) -> str:
    """Return a device of a kind: ``a motor``, ``an encoder``, ``a device of kind distance``."""
    return wording.a_device(kind)


def plugged(device: Device) -> str:
    """Return where a device is plugged in, to tell it from its like: ``on bridge motor 1``."""
    if device.undecided:
        return "port undecided"
    return f"on {wording.listed(map(str, device.ports))}"


def with_ports(devices: Iterable[Device]) -> str:
    """Return a list of devices with the place of each: the way to tell them apart on the robot."""
    return wording.listed([f"{quoted(device.name)} ({plugged(device)})" for device in devices])
