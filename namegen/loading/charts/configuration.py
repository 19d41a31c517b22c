"""A chart that the target ``config-csv`` wrote: every cell means exactly what stands in it."""

from __future__ import annotations

from graphlib import CycleError, TopologicalSorter

from msgspec.structs import replace

from namegen.loading.charts.cells import address, several
from namegen.loading.charts.chart import ChartRobot, Misfit, Placed
from namegen.loading.charts.tables import Row, Table
from namegen.model.manifests import Change, Device, Port, Setup

HEADINGS = (
    *("setup", "selected", "name", "kind", "port", "address", "part"),
    *("reversed", "optional", "does", "expect", "note", "formerly"),
)
_FLAGS = {"true": True, "false": False}


def is_configuration(table: Table) -> bool:
    """Whether the first row has the headings that ``config-csv`` writes."""
    return bool(table.rows) and table.rows[0].cells == HEADINGS


def read_configuration(table: Table, robot: str) -> ChartRobot:
    """Return the robot with its setups.

    A device's port is the one in the selected setup, and what another setup has
    instead becomes a change there. A comma with a blank inside a former name, and
    a device or setup that has no row, are not in the file and cannot come back.
    """
    misfits: list[Misfit] = []
    seen: dict[str, dict[str, Placed]] = {}
    selected = None
    for row in table.rows[1:]:
        placed = _placed(row)
        setup = row.whole(0)
        if isinstance(placed, Misfit):
            misfits.append(placed)
        elif placed.device.name in seen.get(setup, {}):
            misfits.append(_twice(row, seen[setup][placed.device.name].line))
        else:
            seen.setdefault(setup, {})[placed.device.name] = placed
            selected = setup if row.whole(1) == "true" else selected
    chosen = selected if selected is not None else next(iter(seen), "")
    merged = {name: _merged(name, chosen, seen) for name in _order(seen)}
    setups = (
        {name: _setup(name, has, merged) for name, has in seen.items()} if set(seen) - {""} else {}
    )
    return ChartRobot(
        robot,
        tuple(merged.values()),
        tuple(misfits),
        setups=setups,
        selected=chosen if setups else None,
    )


def _placed(row: Row) -> Placed | Misfit:
    cells = dict(zip(HEADINGS, row.cells, strict=False))
    ports = [tuple(port.split()) for port in cells.get("port", "").split(", ")]
    undecided = ports == [("undecided",)]
    flags = [_FLAGS.get(cells.get(field, "")) for field in ("reversed", "optional")]
    number = cells.get("address", "")
    wrong = (
        "it has not one cell for each heading"
        if len(row.cells) != len(HEADINGS)
        else "it has no name"
        if not cells["name"]
        else "its port is not controller, port type and label"
        if not undecided and any(len(words) not in {2, 3} for words in ports)
        else "`reversed` and `optional` are not true or false"
        if None in flags
        else "its address is no number"
        if number and address(number) is None
        else ""
    )
    if wrong:
        return Misfit(row.line, str(row), wrong, "mend this row, then read the chart again")
    device = Device(
        name=cells["name"],
        kind=cells["kind"],
        ports=() if undecided else tuple(Port(*words) for words in ports),
        part=cells["part"] or None,
        address=address(number),
        does=cells["does"],
        expect=cells["expect"],
        note=cells["note"],
        reversed=bool(flags[0]),
        optional=bool(flags[1]),
        formerly=several(cells["formerly"]),
    )
    return Placed(device, row.line)


def _twice(row: Row, line: int) -> Misfit:
    why = f"its name stands in line {line} already, for the same setup"
    return Misfit(row.line, str(row), why, "give each device its own name")


def _order(seen: dict[str, dict[str, Placed]]) -> list[str]:
    """Return all names in an order that agrees with the order in every setup, if there is one."""
    sorter: TopologicalSorter[str] = TopologicalSorter()
    for has in seen.values():
        names = list(has)
        for before, name in zip([None, *names], names, strict=False):
            sorter.add(name, *([] if before is None else [before]))
    try:
        return list(sorter.static_order())
    except CycleError:
        return list(dict.fromkeys(name for has in seen.values() for name in has))


def _merged(name: str, chosen: str, seen: dict[str, dict[str, Placed]]) -> Placed:
    rows = [has[name] for has in seen.values() if name in has]
    best = seen.get(chosen, {}).get(name) or rows[0]
    # A setup can give a part, but not take it away.
    part = None if any(row.device.part is None for row in rows) else best.device.part
    alike = replace(best.device, part=part)
    remarks = tuple(
        f"line {row.line} says otherwise, which no setup can: {row.device.kind}"
        for row in rows
        if replace(row.device, ports=alike.ports, part=part) != alike
    )
    return Placed(alike, best.line, remarks)


def _setup(name: str, has: dict[str, Placed], merged: dict[str, Placed]) -> Setup:
    change = {}
    for device, placed in has.items():
        now, base = placed.device, merged[device].device
        ports = now.ports if now.ports != base.ports else None
        part = now.part if now.part != base.part else None
        if ports is not None or part is not None:
            change[device] = Change(ports, part)
    return Setup(name, without=tuple(one for one in merged if one not in has), change=change)
