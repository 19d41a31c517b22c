"""Machines that the bindings start on, and what every language must say there, word for word."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from msgspec.structs import replace

from namegen.model.manifests import Change, Manifest, Setup
from namegen.model.sheet_mark import sheet_mark
from targets.boats import HERON, port

ALL = tuple(HERON.devices)
BOATS: Mapping[str, Manifest] = {
    "Harvest": HERON,
    "Tank": replace(HERON, selected="tank-test"),
    "Choice": replace(
        HERON,
        setups={
            "harvest": Setup("harvest"),
            "day-out": Setup("day-out", without=("hatchServo",)),
            "moved": Setup("moved", change={"rudder": Change(ports=(port("stern servo 1"),))}),
            "parade": Setup("parade", without=("hatchServo", "hullTemp")),
            "bare": Setup("bare", only=("hatchServo", "spareLamp")),
            "tow": Setup("tow", without=("netWinch",)),
            "race": Setup("race", without=("netWinch",)),
        },
    ),
}
"""The boat with its selected setup; another setup selected; setups that differ in little."""


@dataclass(frozen=True)
class Machine:
    """A machine without some devices, what a boat's bindings say there, and whether they start."""

    boat: str
    away: tuple[str, ...]
    said: str
    starts: bool = True

    @property
    def fitted(self) -> tuple[str, ...]:
        """The devices that the machine has."""
        return tuple(name for name in ALL if name not in self.away)

    @property
    def told(self) -> str:
        """Warnings and message as they are printed."""
        boat = BOATS[self.boat]
        head = f"heron, setup {boat.selected}, sheet mark {sheet_mark(boat)}"
        return self.said.replace("HEAD", head)


HATCH = """\
HEAD: absent, as these may be:
  hatchServo (servo): should be at stern servo 4
"""
BETTER = "HEAD: nothing that must be there is missing, yet another setup fits better.\n"
CHECK = "Check the plugs, and the names in the machine's configuration.\n"
MACHINES = {
    "all": Machine("Harvest", (), ""),
    "an optional one absent": Machine("Harvest", ("hatchServo",), HATCH),
    "an undecided one absent": Machine(
        "Harvest",
        ("spareLamp",),
        "HEAD: absent, as these may be:\n  spareLamp (lamp): its port is undecided\n",
    ),
    "two missing": Machine(
        "Harvest",
        ("hatchServo", "rudder", "bumpBow"),
        f"{HATCH}HEAD: 2 devices were not found.\n"
        "  rudder (servo): should be at stern servo 3\n"
        f"  bumpBow (switch): should be at bridge digital 2\n{CHECK}",
        starts=False,
    ),
    "one missing, as another setup has it": Machine(
        "Harvest",
        ("netWinch",),
        "HEAD: 1 device was not found.\n  netWinch (motor): should be at bridge motor 3\n"
        "This fits tank-test; select harvest on the machine, or change `selected` in "
        "robots/heron.yaml.\n",
        starts=False,
    ),
    "one missing, and one that only another setup has": Machine(
        "Tank",
        ("rudder",),
        f"HEAD: 1 device was not found.\n  rudder (servo): should be at stern servo 1\n{CHECK}",
        starts=False,
    ),
    "all that another setup has": Machine(
        "Tank",
        (),
        f"{BETTER}This fits harvest; select tank-test on the machine, or change `selected` in "
        "robots/heron.yaml.\n",
    ),
    "no more than the setup has": Machine("Tank", ("netWinch",), ""),
    "an optional one that another setup is without": Machine(
        "Choice",
        ("hatchServo",),
        f"{HATCH}{BETTER}This fits day-out; select harvest on the machine, or change `selected` "
        "in robots/heron.yaml.\n",
    ),
    "one missing, as one of several setups has it": Machine(
        "Choice",
        ("hatchServo", "hullTemp"),
        f"{HATCH}HEAD: 1 device was not found.\n"
        "  hullTemp (temperature): should be at bridge i2c 1\n"
        "This fits parade; select harvest on the machine, or change `selected` in "
        "robots/heron.yaml.\n",
        starts=False,
    ),
    "one missing, as two setups have it": Machine(
        "Choice",
        ("netWinch",),
        "HEAD: 1 device was not found.\n  netWinch (motor): should be at bridge motor 3\n"
        "This fits tow or race; select harvest on the machine, or change `selected` in "
        "robots/heron.yaml.\n",
        starts=False,
    ),
    "setups that differ in a port alone": Machine("Choice", (), ""),
    "nothing": Machine(
        "Choice",
        ALL,
        f"{HATCH}  spareLamp (lamp): its port is undecided\nHEAD: 8 devices were not found.\n"
        "  bowThruster (motor): should be at bridge motor 1\n"
        "  sternThruster (motor): should be at stern motor 1\n"
        "  netWinch (motor): should be at bridge motor 3\n"
        "  rudder (servo): should be at stern servo 3\n"
        "  bilgeLevel (level): should be at bridge analog B\n"
        "  bumpBow (switch): should be at bridge digital 2\n"
        "  hullTemp (temperature): should be at bridge i2c 1\n"
        f"  heading (imu): should be at bridge compass\n{CHECK}",
        starts=False,
    ),
}


def arguments() -> list[str]:
    """Return what a program is given: ``Harvest=bowThruster,rudder``, one text a machine."""
    return [f"{one.boat}={','.join(one.fitted)}" for one in MACHINES.values()]


def transcript() -> str:
    """Return what that program must print: warnings and message, fields and the list as found."""
    return "".join(map(_of_one, MACHINES.values()))


def _of_one(machine: Machine) -> str:
    lines = [f"= {machine.boat}\n", machine.told]
    if machine.starts:
        hatch = "there" if "hatchServo" in machine.fitted else "absent"
        lines.append(f"bow there, hatch {hatch}, {len(ALL)} look-ups\n")
    lines.append("name,kind,port,found\n")
    wired = {one.name: one for one in BOATS[machine.boat].devices_in()}
    for name, one in BOATS[machine.boat].devices.items():
        where = ", ".join(map(str, wired.get(name, one).ports))
        lines.append(f"{name},{one.kind},{where},{'yes' if name in machine.fitted else 'no'}\n")
    return "".join(lines)


def told_where_nothing_is(boat: Manifest) -> str:
    """Return what any boat's bindings say on an empty machine, warning first."""
    setup = f", setup {boat.selected}" if boat.selected else ""
    head = f"{boat.robot}{setup}, sheet mark {sheet_mark(boat)}"
    rows: dict[bool, list[str]] = {True: [], False: []}
    for one in boat.devices_in():
        where = f"should be at {', '.join(map(str, one.ports))}"
        line = f"  {one.name} ({one.kind}): {where if one.ports else 'its port is undecided'}"
        rows[one.optional or not one.ports].append(line)
    absent, missing = rows[True], rows[False]
    said = [f"{head}: absent, as these may be:", *absent] if absent else []
    if missing:
        count = "1 device was" if len(missing) == 1 else f"{len(missing)} devices were"
        said += [f"{head}: {count} not found.", *missing, CHECK.rstrip()]
    return "\n".join(said)


def as_found_rows(boat: Manifest) -> list[list[str]]:
    """Return the cells of the list as found on a machine that has all devices of a boat.

    A cell that a spreadsheet would take for a formula bears an apostrophe in front.
    """
    wired = {one.name: one for one in boat.devices_in()}
    rows = [["name", "kind", "port", "found"]]
    for name, one in boat.devices.items():
        where = ", ".join(map(str, wired.get(name, one).ports))
        rows.append([*map(shielded, (name, one.kind, where)), "yes"])
    return rows


def shielded(cell: str) -> str:
    """Return a cell as OWASP's page on CSV injection demands it, apostrophes doubled too."""
    return f"'{cell}" if cell.startswith(tuple("=+-@\t\r\n'\uff1d\uff0b\uff0d\uff20")) else cell
