"""As-found lists: what somebody read off a machine, or a start-up module printed, as CSV."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct

from namegen.errors import UnusableInput
from namegen.loading.charts.cells import address, flag, nothing
from namegen.loading.charts.columns import field_called
from namegen.loading.charts.configuration import is_configuration
from namegen.loading.charts.ports import Hint, Reading, read_ports, type_of
from namegen.loading.charts.tables import Row, Table, check_size, tables_of
from namegen.model.manifests import Device, Port
from namegen.model.places import Place
from namegen.text.likeness import nearest
from namegen.text.positions import split_lines

COLUMNS = ("name", "kind", "port", "address", "found")
"""Titles that a list has as a program prints it; of a chart's other words for them each will do."""
WIRING = ("controller", "type", "label")
"""Fields of a chart that say a port in columns of their own."""
_FOUND = frozenset({"found", "present", "there", "detected"})
"""Words for the column that says whether a device is there. Common practice, no source."""


class AsFound(Struct, frozen=True):
    """The devices that were found, and the fields that the list says of them.

    Devices that the list names as not found are left out. A list with a column
    ``found`` may be ``printed`` by a program, which has kinds and ports from its own
    manifest: by themselves they prove nothing about the machine.
    """

    devices: tuple[Device, ...]
    known: frozenset[str]
    printed: bool = False


class _Titles(Struct, frozen=True):
    """The row of titles: the column of each field that counts, and the titles of all others."""

    row: Row
    index: Mapping[str, int]
    unknown: tuple[str, ...]


def read_as_found(data: bytes, path: str) -> AsFound:
    """Return what an as-found list says. What stands before the row of titles is passed over.

    Raises:
        UnusableInput: it is no table, has no column of names, or a cell says nothing
            that is known; says the line and what may stand there.
    """
    check_size(data, path)
    found = [(table, titles) for table in tables_of(data, path) if (titles := _titles(table, path))]
    if not found:
        raise UnusableInput(
            "this list has no column `name`",
            where=path,
            remedy=f"the first row holds the titles, some of: {', '.join(COLUMNS)}; as in "
            "`name,kind,port`",
        )
    table, titles = max(found, key=lambda one: (len(one[1].index), len(one[1].row.cells)))
    _check(table, titles, path)
    lines = split_lines(data.decode("utf-8-sig", errors="replace"))
    below = table.rows[table.rows.index(titles.row) + 1 :]
    devices = tuple(_devices(below, titles.index, lines, path))
    known = {"port" if field in WIRING else field for field in titles.index}
    return AsFound(devices, frozenset(known - {"name", "found"}), "found" in titles.index)


def _titles(table: Table, path: str) -> _Titles | None:
    """Return the row of titles; a program may have said other things before."""
    named = [row for row in table.rows if "name" in map(_field, row.cells)]
    literal = [row for row in named if "name" in (cell.strip().casefold() for cell in row.cells)]
    if not named:
        return None
    row = (
        literal[0]
        if literal
        else max(named, key=lambda one: sum(map(bool, map(_field, one.cells))))
    )
    index: dict[str, int] = {}
    unknown = []
    for at in row.filled:
        field = _field(row.cell(at))
        if field == "label" and at == 0:
            continue  # it counts the rows
        if field in index:
            raise UnusableInput(
                f"`{row.cell(index[field])}` and `{row.cell(at)}` are both the {field}",
                where=f"{path}:{row.line}",
                remedy="take one of the two columns out",
            )
        if field in (*COLUMNS, *WIRING):
            index[field] = at
        elif not field:
            unknown.append(row.cell(at))
    return _Titles(row, index, tuple(unknown))


def _field(title: str) -> str:
    """Return the field that a title means, or the empty text; remarks are fields of a chart too."""
    word = " ".join(title.split()).casefold()
    return "found" if word in _FOUND else field_called(word) or "" if word else ""


def _check(table: Table, titles: _Titles, path: str) -> None:
    if is_configuration(table):
        raise UnusableInput(
            "this is a configuration that namegen wrote, and no list read off a machine",
            where=path,
            remedy="to tick it off by hand, keep the rows of one setup and the columns name, kind, "
            "port and address",
        )
    robots = dict.fromkeys(
        row.cell(at)
        for at, title in enumerate(titles.row.cells)
        if _field(title) == "robot"
        for row in table.rows[table.rows.index(titles.row) + 1 :]
        if row.cell(at)
    )
    if len(robots) > 1:
        raise UnusableInput(
            f"this list is of several robots: {', '.join(robots)}",
            where=path,
            remedy="keep the rows of one of them in a list of its own",
        )
    for title in titles.unknown:
        near = nearest(title.casefold(), COLUMNS)
        raise UnusableInput(
            f"column `{title}` is not known",
            where=f"{path}:{titles.row.line}",
            remedy=(f"did you mean `{near}`? " if near else "")
            + f"the columns are: {', '.join(COLUMNS)}; take others out, or call them `note`",
        )


def _devices(
    rows: Sequence[Row], titles: Mapping[str, int], lines: list[str], path: str
) -> Iterator[Device]:
    seen: dict[str, int] = {}
    for row in rows:
        cells = {title: row.cell(at) for title, at in titles.items()}
        name, where = row.whole(titles["name"]), f"{path}:{row.line}"
        if not name.strip():
            raise UnusableInput("this row has no name", where=where, remedy="write one")
        if name in seen:
            raise UnusableInput(
                f'"{name}" stands in line {seen[name]} too',
                where=where,
                remedy="a machine has each name once; take one of the rows out",
            )
        seen[name] = row.line
        if _found(cells.get("found", ""), where):
            yield _device(name, cells, _place(path, row, name, lines), where)


def _device(name: str, cells: dict[str, str], place: Place, where: str) -> Device:
    typed = cells.get("address", "")
    if typed and address(typed) is None:
        raise UnusableInput(
            f"`{typed}` is no address", where=where, remedy="write it as `0x3A` or `58`"
        )
    wired = _wired(cells, where)
    return Device(
        name,
        "" if nothing(cells.get("kind", "")) else cells["kind"],
        wired.ports,
        address=address(typed) if typed else wired.address,
        places={"": place},
    )


def _wired(cells: Mapping[str, str], where: str) -> Reading:
    """Return what the cells say of the port: exactly as a manifest does, or as a chart may."""
    cell = cells.get("port", "")
    apart = any(cells.get(field) for field in WIRING)
    texts = [text.split() for text in cell.split(",") if not nothing(text)]
    if not apart and texts in ([], [["undecided"]]):
        return Reading()
    as_typed = Reading(tuple(Port(*words) for words in texts if len(words) in {2, 3}))
    if not apart and all(_plain(words) and len(words) == 3 for words in texts):
        return as_typed
    kind = type_of(cells.get("type", "")) or ""
    reading = read_ports(cell, Hint(cells.get("controller", ""), kind, cells.get("label", "")))
    if not reading.doubt and all(port.controller for port in reading.ports):
        return reading
    if not apart and all(_plain(words) and len(words) in {2, 3} for words in texts):
        return as_typed  # built in, as `bridge compass`
    raise UnusableInput(
        f"`{cell}` is no port" + (f": {reading.doubt}" if reading.doubt else ""),
        where=where,
        remedy="write controller, type and label, as `bridge motor 1`; several with commas",
    )


def _plain(words: Sequence[str]) -> bool:
    """Whether a port may read as in a manifest; `bridge 1` lacks its type, and is not built in."""
    return not words[0].endswith((":", "/", ">", "=")) and not (
        len(words) == 2 and (words[1].isdecimal() or type_of(words[0]) is not None)
    )


def _found(cell: str, where: str) -> bool:
    found = True if not cell else flag(cell)
    if found is None:
        raise UnusableInput(
            f"`{cell}` says neither yes nor no", where=where, remedy="write `yes` or `no`"
        )
    return found


def _place(path: str, row: Row, name: str, lines: list[str]) -> Place:
    """Return where the name stands in its line, or the whole line where it is written otherwise."""
    line = lines[row.line - 1] if row.line <= len(lines) else ""
    at = line.find(name)
    start, end = (at, at + len(name)) if at >= 0 else (0, len(line))
    return Place(path, row.line, start + 1, row.line, end + 1)
