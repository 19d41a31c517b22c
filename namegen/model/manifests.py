"""One robot's manifest: controllers, devices, setups."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct, field
from msgspec.structs import replace

from namegen.model.boards import Places
from namegen.model.places import Place


class Port(Struct, frozen=True, order=True):
    """One connection point: ``bridge motor 1``; a built-in device has no label."""

    controller: str
    type: str
    label: str | None = None

    def __str__(self) -> str:
        words = (self.controller, self.type, self.label)
        return " ".join(word for word in words if word is not None)


class Controller(Struct, frozen=True):
    """A board of this robot that devices are plugged into."""

    name: str
    board: str
    uplink: Port | None = None
    address: int | None = None
    dead: tuple[tuple[str, str], ...] = ()
    """Broken ports as (port type, label)."""
    places: Places = field(default_factory=dict)


class Acceptance(Struct, frozen=True):
    """The user's word that findings of one kind are right as they are, and why."""

    kind: str
    reason: str
    device: str | None = None
    places: Places = field(default_factory=dict)


class Device(Struct, frozen=True):
    """One thing with a name that programs look up.

    ``ports`` is empty while the port is undecided. Lengths are in millimetres.
    """

    name: str
    kind: str
    ports: tuple[Port, ...] = ()
    part: str | None = None
    address: int | None = None
    does: str = ""
    expect: str = ""
    note: str = ""
    reversed: bool = False
    optional: bool = False
    formerly: tuple[str, ...] = ()
    identifiers: Mapping[str, str] = field(default_factory=dict)
    """Language -> the identifier that this device shall have there."""
    travel_mm: float | None = None
    """What one turn of the output shaft moves, in millimetres (a wheel's circumference)."""
    places: Places = field(default_factory=dict)

    @property
    def undecided(self) -> bool:
        """Whether it is not yet settled where this device is plugged in."""
        return not self.ports

    def place(self, name: str = "") -> Place:
        """Return where field ``name`` was written, or else where the device's name stands."""
        return self.places.get(name) or self.places[""]


class Change(Struct, frozen=True):
    """What a setup changes about one device; None leaves the manifest's value."""

    ports: tuple[Port, ...] | None = None
    part: str | None = None
    places: Places = field(default_factory=dict)


class Setup(Struct, frozen=True):
    """A named selection of devices. ``only`` None means everything but ``without``."""

    name: str
    only: tuple[str, ...] | None = None
    without: tuple[str, ...] = ()
    change: Mapping[str, Change] = field(default_factory=dict)
    places: Places = field(default_factory=dict)

    def has(self, device: str) -> bool:
        """Whether the device belongs to this setup."""
        if device in self.without:
            return False
        return self.only is None or device in self.only

    def applied_to(self, device: Device) -> Device:
        """Return the device as it is wired in this setup."""
        change = self.change.get(device.name)
        if change is None:
            return device
        places = {**device.places, **{k: v for k, v in change.places.items() if k}}
        return replace(
            device,
            ports=device.ports if change.ports is None else change.ports,
            part=device.part if change.part is None else change.part,
            places=places,
        )


class Battery(Struct, frozen=True):
    """What feeds the robot; ``fuse_amps`` is the main fuse, ``wire_awg`` its thinnest wire."""

    volts: float | None = None
    fuse_amps: float | None = None
    wire_awg: int | None = None
    places: Places = field(default_factory=dict)


class Manifest(Struct, frozen=True):
    """What one robot has. Device names are unique and keep the order of the file."""

    path: str
    robot: str
    controllers: Mapping[str, Controller]
    devices: Mapping[str, Device]
    title: str = ""
    revision: str = ""
    battery: Battery | None = None
    setups: Mapping[str, Setup] = field(default_factory=dict)
    selected: str | None = None
    """The setup to select on the machine; None when the manifest has no setups."""
    accepts: tuple[Acceptance, ...] = ()
    sources: tuple[str, ...] = ()
    """Paths of every file that went into it, the robot's own last."""
    places: Places = field(default_factory=dict)

    def place(self, name: str = "") -> Place:
        """Return where field ``name`` of the manifest was written, or else its first line."""
        return self.places.get(name) or Place(self.path)

    def devices_in(self, setup: str | None = None) -> tuple[Device, ...]:
        """Return the devices of a setup (None: the selected one) as they are wired there."""
        chosen = self.setups.get(setup or self.selected or "")
        if chosen is None:
            return tuple(self.devices.values())
        return tuple(
            chosen.applied_to(device) for device in self.devices.values() if chosen.has(device.name)
        )

    @property
    def retired(self) -> Mapping[str, tuple[Device, ...]]:
        """Return each former name with the devices that had it."""
        owners: dict[str, tuple[Device, ...]] = {}
        for device in self.devices.values():
            for name in device.formerly:
                owners[name] = (*owners.get(name, ()), device)
        return owners
