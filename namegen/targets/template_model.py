"""The data that a template sees, version 1: one robot, or all robots of a workspace.

Every text that a person typed is `Unescaped`; a template pipes it through an
escape. Plain strings are what namegen itself spelled: identifiers of the
target's language, addresses, the sheet mark. `namegen.targets.guide` tells
template authors about each field.
"""

from __future__ import annotations

from functools import cached_property
from typing import Protocol

from msgspec import Struct
from msgspec.structs import fields

from namegen.targets.unescaped import Unescaped

VERSION = 1
"""Raised when a field goes away or changes its meaning; a new field does not raise it."""


class Port(Struct, frozen=True):
    """One connection point. ``label`` is empty for a built-in device's.

    ``devices`` and ``uplink_of``, the controllers connected here, are filled
    where a port is reached through its controller.
    """

    controller: Unescaped
    type: Unescaped
    label: Unescaped
    text: Unescaped
    dead: bool
    uplink_of: tuple[Unescaped, ...]
    devices: tuple[Device, ...]


class PortGroup(Struct, frozen=True):
    """The ports of one type of a controller, in the order of their labels on the board."""

    type: Unescaped
    ports: tuple[Port, ...]


class Number(Struct, frozen=True):
    """A number that follows from a device's figures. ``name`` is in snake_case with its unit.

    ``text`` is the value with a decimal point and all its digits, which is a
    number in every language; ``says`` and ``formula`` are namegen's own words.
    """

    name: str
    constant: str
    value: float
    text: str
    says: str
    formula: str


class Alias(Struct, frozen=True):
    """A former name of a device, with the constant that it had in the language."""

    name: Unescaped
    constant: str


class Device(Struct, frozen=True):
    """One device as it is wired in the setup that it was reached through."""

    name: Unescaped
    spelling: Unescaped
    kind: Unescaped
    kind_type: str
    constant: str
    field: str
    port: Unescaped
    ports: tuple[Port, ...]
    controller: Unescaped
    label: Unescaped
    part: Unescaped
    address: str
    address_number: int | None
    does: Unescaped
    expect: Unescaped
    note: Unescaped
    reversed: bool
    optional: bool
    undecided: bool
    built_in: bool
    selected: bool
    formerly: tuple[Unescaped, ...]
    aliases: tuple[Alias, ...]
    numbers: tuple[Number, ...]


class Kind(Struct, frozen=True):
    """A kind of which the robot has devices."""

    name: Unescaped
    type_name: str
    devices: tuple[Device, ...]
    renamed: bool


class BuiltIn(Struct, frozen=True):
    """A device that is part of a board: nothing to plug in, only to check."""

    label: Unescaped
    kind: Unescaped
    devices: tuple[Device, ...]


class Controller(Struct, frozen=True):
    """A controller with its ports as the selected setup uses them."""

    name: Unescaped
    board: Unescaped
    uplink: Unescaped
    address: str
    address_number: int | None
    groups: tuple[PortGroup, ...]
    built_in: tuple[BuiltIn, ...]


class Difference(Struct, frozen=True):
    """What to do about one device to get from the selected setup to another one.

    ``action`` is ``unplug``, ``plug in``, ``move`` or ``change part``.
    """

    device: Device
    action: str
    before: Unescaped
    after: Unescaped


class Setup(Struct, frozen=True):
    """One setup; a robot without setups has a single one without a name."""

    name: Unescaped
    selected: bool
    devices: tuple[Device, ...]
    differences: tuple[Difference, ...]


class Parts(Protocol):
    """Works out the parts of a robot that not every template asks for."""

    def setups(self) -> tuple[Setup, ...]:
        """Return the setups."""

    def controllers(self) -> tuple[Controller, ...]:
        """Return the controllers with their ports."""


class Robot(Struct, frozen=True, dict=True):
    """One robot."""

    name: Unescaped
    type_name: str
    title: Unescaped
    revision: Unescaped
    manifest: Unescaped
    mark: str
    selected: Unescaped
    kinds: tuple[Kind, ...]
    devices: tuple[Device, ...]
    undecided: tuple[Device, ...]
    elsewhere: tuple[Device, ...]
    cautions: tuple[Unescaped, ...]
    _parts: Parts

    @cached_property
    def setups(self) -> tuple[Setup, ...]:
        """The setups, in the order of the manifest."""
        return self._parts.setups()

    @cached_property
    def controllers(self) -> tuple[Controller, ...]:
        """The controllers, in the order of the manifest."""
        return self._parts.controllers()


def readable(data: type) -> tuple[str, ...]:
    """Return the names that a template may read from one class of this module, in order."""
    names = [field.name for field in fields(data)]
    names += [name for name, value in vars(data).items() if isinstance(value, cached_property)]
    return tuple(name for name in names if not name.startswith("_"))


CLASSES = (
    Port,
    PortGroup,
    Number,
    Alias,
    Device,
    Kind,
    BuiltIn,
    Controller,
    Difference,
    Setup,
    Robot,
)
