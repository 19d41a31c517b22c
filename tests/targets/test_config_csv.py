"""The CSV configuration, read by Python's csv."""

from __future__ import annotations

import csv
import io

from namegen.model.manifests import Device
from targets.boats import device, robot


def rows_of(text: str) -> list[dict[str, str]]:
    """Return the rows as a person gets them who takes one leading apostrophe away."""
    rows = csv.DictReader(io.StringIO(text, newline=""), strict=True)
    return [{name: cell.removeprefix("'") for name, cell in row.items()} for row in rows]


def as_written(setup: str, selected: bool, one: Device) -> dict[str, str]:
    return {
        "setup": setup,
        "selected": str(selected).lower(),
        "name": one.name,
        "kind": one.kind,
        "port": ", ".join(map(str, one.ports)) or "undecided",
        "address": "" if one.address is None else f"0x{one.address:02X}",
        "part": one.part or "",
        "reversed": str(one.reversed).lower(),
        "optional": str(one.optional).lower(),
        "does": one.does,
        "expect": one.expect,
        "note": one.note,
        "formerly": ", ".join(one.formerly),
    }


def test_every_value_comes_back(make, hostile_robots):
    for manifest in hostile_robots:
        wanted = [
            as_written(name or "", name == manifest.selected, one)
            for name in (list(manifest.setups) or [None])
            for one in manifest.devices_in(name)
        ]
        assert rows_of(make("config-csv", manifest)) == wanted


def test_no_cell_is_a_formula(make):
    """Leading characters as OWASP's page on CSV injection lists them (from memory)."""
    starts = ["=", "+", "-", "@", "\t", "\r", "'="]
    rows = [device(f"{start}1+1", "motor", note=f"{start}cmd") for start in starts]
    cells = csv.reader(io.StringIO(make("config-csv", robot(*rows)), newline=""))
    for row in cells:
        assert not any(cell.startswith(tuple(starts[:6])) for cell in row)


def test_the_selected_setup_is_marked(make):
    rows = rows_of(make("config-csv"))
    assert {row["setup"] for row in rows if row["selected"] == "true"} == {"harvest"}
    moved = {row["setup"]: row["port"] for row in rows if row["name"] == "rudder"}
    assert moved == {"harvest": "stern servo 3", "tank-test": "stern servo 1"}
