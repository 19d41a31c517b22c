"""Short ways to read a text, and the documents of the demo."""

from __future__ import annotations

from collections.abc import Callable, Mapping

import pytest

from namegen.errors import UnusableInput
from namegen.loading.catalogue import NO_CATALOGUE, read_catalogue
from namegen.loading.loaded import Loaded
from namegen.loading.manifest import read_manifest
from namegen.model.boards import Catalogue
from namegen.model.findings import Fault
from namegen.model.manifests import Manifest
from namegen.model.places import Place

MANIFEST = """\
robot: heron
title: Heron, the pond skimmer
revision: 2026 spring                    # free text for people
includes: [../shared/hull.yaml]          # same shape; merged first
battery: {volts: 12.8, fuse_amps: 15, wire_awg: 14}

controllers:
  bridge:
    board: harbour
  stern:
    board: harbour
    uplink: bridge serial 1
    dead: [servo 2]                      # broken port

devices:
  bowThruster:
    kind: motor
    port: bridge motor 1
    part: thruster-b
    does: Pushes the bow sideways
    expect: Bow moves to the right
    reversed: true
    formerly: [frontThruster]
  hatchServo:
    kind: servo
    port: stern servo 4
    optional: true
  rangeBow:
    kind: distance
    port: bridge i2c 1
    address: 0x3A
  heading:
    kind: imu
    port: bridge compass
  spareLamp:
    kind: lamp
    port: undecided

setups:
  harvest: everything
  tank-test: {without: [netWinch], change: {rudder: {port: stern servo 1}}}
selected: harvest
"""
HULL = """\
devices:
  rudder: {kind: servo, port: bridge servo 1, note: starboard}
  netWinch: {kind: motor, port: stern motor 2}
"""
CATALOGUE = """\
boards:
  harbour:
    ports: {motor: 1-3, servo: 1-5, digital: 1-6, analog: [A, B, C], i2c: 1-2, serial: 1-2}
    built_in: {compass: imu}
    fuse_amps: 15
    port_amps: {motor: 7}
    port_volts: {digital: 3.3}
port_types:
  lin: {shared: true}
kinds:
  distance: {port: i2c, address: 0x3A}
parts:
  thruster-b: {kind: motor, volts: 12, rated_amps: 2.2, stall_amps: 6.0, gear: 27, \
encoder_cycles: 12, decoding: 4, encoder_on: motor}
rules:
  allowed_parts: [thruster-b]
  at_most: {motor: 5, servo: 7}
"""
WORKSPACE = """\
robots: [robots/*.yaml]
catalogue: catalogue.yaml
names: {style: camelCase, longest: 24}
lookups:
  - {call: motor, kind: motor}
  - {call: fitted, on: boat, name_at: 0, kind_at: 1, kinds: {Motor: motor, Servo: servo}}
code:
  - {path: code/heron, robots: [heron]}
  - {path: code/common, robots: [heron, kingfisher]}
build:
  - target: python-constants
    to: "code/{robot}/devices.py"
  - target: java-constants
    to: "code/{robot}/{Robot}Devices.java"
    robots: [heron]
    with: {package: club.boats}
templates: my-templates
"""
FILES = {"robots/heron.yaml": MANIFEST, "shared/hull.yaml": HULL}

Read = Callable[..., Loaded[Manifest]]


@pytest.fixture(scope="session")
def documents() -> dict[str, str]:
    return {"manifest": MANIFEST, "hull": HULL, "catalogue": CATALOGUE, "workspace": WORKSPACE}


@pytest.fixture(scope="session")
def catalogue() -> Catalogue:
    value = read_catalogue(CATALOGUE.encode(), "catalogue.yaml").value
    assert value is not None
    return value


@pytest.fixture
def read() -> Read:
    """Read one manifest from a text or from several files; no catalogue unless given."""

    def reading(
        text: str | bytes | Mapping[str, str | bytes],
        path: str = "robots/heron.yaml",
        catalogue: Catalogue = NO_CATALOGUE,
    ) -> Loaded[Manifest]:
        files = dict(text) if isinstance(text, Mapping) else {path: text}

        def data(name: str) -> bytes:
            if name not in files:
                raise UnusableInput("cannot be read: no such file", where=name)
            found = files[name]
            return found.encode() if isinstance(found, str) else found

        return read_manifest(path, data, catalogue)

    return reading


@pytest.fixture
def device(read: Read) -> Callable[[str], Loaded[Manifest]]:
    """Read a manifest with one device ``bow``, given its fields line by line."""

    def reading(fields: str) -> Loaded[Manifest]:
        lines = "".join(f"    {line}\n" for line in fields.splitlines())
        return read(f"robot: heron\ndevices:\n  bow:\n{lines}")

    return reading


@pytest.fixture
def heron(read: Read, catalogue: Catalogue) -> Loaded[Manifest]:
    return read(FILES, catalogue=catalogue)


@pytest.fixture
def shown() -> Callable[[Place], str]:
    """Return the text of the demo's documents that a place marks."""
    texts = {**FILES, "catalogue.yaml": CATALOGUE, "namegen.yaml": WORKSPACE}

    def text(place: Place) -> str:
        assert place.line == place.end_line
        line = texts[place.path].splitlines()[place.line - 1]
        return line[place.column - 1 : place.end_column - 1]

    return text


@pytest.fixture
def only() -> Callable[[Loaded[object]], Fault]:
    """Return the one fault of a reading."""

    def fault(loaded: Loaded[object]) -> Fault:
        assert len(loaded.faults) == 1, loaded.faults
        return loaded.faults[0]

    return fault
