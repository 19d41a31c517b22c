"""The boat that the targets are tried on: heron, with controllers bridge and stern."""

from __future__ import annotations

from msgspec.structs import replace

from namegen.model.boards import KINDS, PORT_TYPES, Board, Catalogue, Part
from namegen.model.manifests import Battery, Change, Controller, Device, Manifest, Port, Setup

HARBOUR = Board(
    name="harbour",
    ports={
        "motor": ("1", "2", "3"),
        "servo": ("1", "2", "3", "4", "5"),
        "digital": ("1", "2", "3", "4", "5", "6"),
        "analog": ("A", "B", "C"),
        "i2c": ("1", "2"),
        "serial": ("1", "2"),
    },
    built_in={"compass": "imu"},
)
THRUSTER = Part(
    "thruster-b",
    "motor",
    volts=12.0,
    gear=13.0,
    encoder_cycles=9.0,
    decoding=2,
    encoder_on="motor",
    no_load_rpm=410.0,
)
HINGE = Part("hinge-q", "servo", pulse_us=(780.0, 2140.0), degrees=146.0)
CATALOGUE = Catalogue(
    path="catalogue.yaml",
    boards={"harbour": HARBOUR},
    port_types=PORT_TYPES,
    kinds=KINDS,
    parts={part.name: part for part in (THRUSTER, HINGE)},
)


def port(text: str) -> Port:
    """Return the port that a text such as ``bridge motor 1`` means."""
    return Port(*text.split())


def device(name: str, kind: str, where: str = "", **fields: object) -> Device:
    """Return a device; ``where`` holds its ports, with commas between."""
    ports = tuple(port(one) for one in where.split(",")) if where else ()
    return replace(Device(name, kind, ports), **fields)


def robot(*devices: Device, name: str = "heron", **fields: object) -> Manifest:
    """Return a manifest of the controllers bridge and stern with these devices."""
    manifest = Manifest(
        path=f"robots/{name}.yaml",
        robot=name,
        controllers={
            "bridge": Controller("bridge", "harbour"),
            "stern": Controller(
                "stern", "harbour", uplink=port("bridge serial 1"), dead=(("servo", "2"),)
            ),
        },
        devices={one.name: one for one in devices},
    )
    return replace(manifest, **fields)


HERON = robot(
    device(
        "bowThruster",
        "motor",
        "bridge motor 1",
        part="thruster-b",
        does="Pushes the bow sideways",
        expect="Bow moves to the right",
        reversed=True,
        formerly=("frontThruster",),
        travel_mm=180.0,
    ),
    device("sternThruster", "motor", "stern motor 1", does="Pushes the stern sideways"),
    device("netWinch", "motor", "bridge motor 3", does="Hauls the net in", expect="Drum turns"),
    device(
        "rudder",
        "servo",
        "stern servo 3",
        part="hinge-q",
        does="Steers",
        expect="Rudder swings to port",
    ),
    device(
        "hatchServo",
        "servo",
        "stern servo 4",
        optional=True,
        does="Opens the hatch over the basket, so that what the net brought in slides out",
        note="Grease the hinge",
    ),
    device("bilgeLevel", "level", "bridge analog B", does="Tells water in the hull"),
    device("bumpBow", "switch", "bridge digital 2", expect="Lamp changes when pressed"),
    device("hullTemp", "temperature", "bridge i2c 1", address=0x3A),
    device("heading", "imu", "bridge compass", does="Tells where the bow points"),
    device("spareLamp", "lamp"),
    title="Heron, the pond skimmer",
    revision="2026 spring",
    battery=Battery(volts=11.1),
    setups={
        "harvest": Setup("harvest"),
        "tank-test": Setup(
            "tank-test",
            without=("netWinch",),
            change={"rudder": Change(ports=(port("stern servo 1"),))},
        ),
    },
    selected="harvest",
)
