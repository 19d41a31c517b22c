"""The catalogue: boards, port types, device kinds and parts, shared by robots."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct, field

from namegen.model.places import Place

Places = Mapping[str, Place]
"""Field name -> place of its value; the empty name is the place of the entry's own key."""


class PortType(Struct, frozen=True):
    """A sort of port. On a shared one several devices may be plugged in."""

    name: str
    shared: bool = False


class Board(Struct, frozen=True):
    """A type of controller: which ports it has, under the labels printed on it."""

    name: str
    ports: Mapping[str, tuple[str, ...]]
    built_in: Mapping[str, str] = field(default_factory=dict)
    """Label of a built-in device -> its kind."""
    built_in_addresses: Mapping[str, tuple[str, int]] = field(default_factory=dict)
    """Built-in label -> (bus label on this board, address it occupies there)."""
    fuse_amps: float | None = None
    port_amps: Mapping[str, float] = field(default_factory=dict)
    port_volts: Mapping[str, float] = field(default_factory=dict)
    places: Places = field(default_factory=dict)


class Kind(Struct, frozen=True):
    """What a device is for a program, and the port types it can be plugged into.

    An empty ``ports`` means any. ``address`` is the usual bus address.
    """

    name: str
    ports: tuple[str, ...] = ()
    address: int | None = None
    places: Places = field(default_factory=dict)


class Part(Struct, frozen=True):
    """A bought item. Figures are the maker's; every one may be absent."""

    name: str
    kind: str | None = None
    ports: tuple[str, ...] = ()
    volts: float | None = None
    rated_amps: float | None = None
    stall_amps: float | None = None
    address: int | None = None
    gear: float | None = None
    encoder_cycles: float | None = None
    decoding: int | None = None
    encoder_on: str | None = None
    """``motor`` or ``output``: the shaft that the encoder sits on."""
    no_load_rpm: float | None = None
    """Speed without load at ``volts``, at the output shaft, in turns per minute."""
    pulse_us: tuple[float, float] | None = None
    """Shortest and longest control pulse of a servo in microseconds."""
    degrees: float | None = None
    """Travel of a servo over the whole pulse range in degrees."""
    places: Places = field(default_factory=dict)


class Rules(Struct, frozen=True):
    """What a season's rule book permits; ``None`` permits every part."""

    allowed_parts: tuple[str, ...] | None = None
    at_most: Mapping[str, int] = field(default_factory=dict)
    places: Places = field(default_factory=dict)


class Catalogue(Struct, frozen=True):
    """All that the robots of a workspace share. ``path`` is None when there is none."""

    path: str | None
    boards: Mapping[str, Board]
    port_types: Mapping[str, PortType]
    kinds: Mapping[str, Kind]
    parts: Mapping[str, Part]
    rules: Rules = field(default_factory=Rules)


PORT_TYPES: Mapping[str, PortType] = {
    name: PortType(name, shared=name in {"i2c", "can"})
    for name in ("motor", "servo", "digital", "analog", "i2c", "serial", "can", "encoder")
}
"""The port types that need no declaration. Several devices share a bus (I2C, CAN)."""

KINDS: Mapping[str, Kind] = {
    kind.name: kind
    for kind in (
        Kind("motor", ("motor", "can")),
        Kind("servo", ("servo",)),
        Kind("switch", ("digital",)),
        Kind("lamp", ("digital", "servo")),
        Kind("relay", ("digital",)),
        Kind("encoder", ("encoder", "digital")),
        Kind("level", ("analog", "digital")),
        Kind("temperature", ("analog", "digital", "i2c")),
        Kind("distance", ("i2c", "analog", "digital")),
        Kind("light", ("i2c", "analog")),
        Kind("imu", ("i2c", "serial")),
        Kind("position", ("serial", "i2c")),
    )
}
"""The kinds that need no declaration; a catalogue may redefine each. Common practice, no source."""
