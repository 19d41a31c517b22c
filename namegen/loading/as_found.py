"""As-found lists: what somebody read off a machine, or a start-up module printed, as CSV."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct

from namegen.errors import UnusableInput
from namegen.loading.charts.cells import address, flag, nothing
from namegen.loading.charts.tables import Row, Table, check_size, tables_of
from namegen.model.manifests import Device, Port
from namegen.model.places import Place
from namegen.text.positions import split_lines

COLUMNS = ("name", "kind", "port", "address", "found")
"""Titles that the first row may have; ``name`` must be among them."""


class AsFound(Struct, frozen=True):
    """The devices that were found, and the fields that were read off the machine.

    Devices that the list names as not found are left out. A list with a column
    ``found`` was made by a program, which has kinds and ports from its own manifest:
    they prove nothing about the machine.
    """

    devices: tuple[Device, ...]
    known: frozenset[str]


def read_as_found(data: bytes, path: str) -> AsFound:
    """Return what an as-found list says. What stands before the row of titles is passed over.

    Raises:
        UnusableInput: it is no table, has no column ``name``, or a cell says nothing
            that is known; says the line and what may stand there.
    """
    check_size(data, path)
    tables = [table for table in tables_of(data, path) if "name" in _titles(table)]
    if not tables:
        raise UnusableInput(
            "this list has no column `name`",
            where=path,
            remedy=f"the first row holds the titles, some of: {', '.join(COLUMNS)}; as in "
            "`name,kind,port`",
        )
    table = max(tables, key=lambda one: len(_titles(one)))
    titles, rows = _titles(table), _below_titles(table)
    unknown = [title for title in titles if title not in COLUMNS]
    if unknown:
        raise UnusableInput(
            f"column `{unknown[0]}` is not known",
            where=f"{path}:{rows[0].line}",
            remedy=f"the columns are: {', '.join(COLUMNS)}; take others out",
        )
    lines = split_lines(data.decode("utf-8-sig", errors="replace"))
    devices = tuple(_devices(rows[1:], titles, lines, path))
    return AsFound(devices, frozenset() if "found" in titles else frozenset(titles) - {"name"})


def _below_titles(table: Table) -> Sequence[Row]:
    """Return the row of titles and what follows; a program may have said other things before."""
    for at, row in enumerate(table.rows):
        if "name" in (cell.strip().casefold() for cell in row.cells):
            return table.rows[at:]
    return ()


def _titles(table: Table) -> list[str]:
    rows = _below_titles(table)
    return [cell.strip().casefold() for cell in rows[0].cells if cell.strip()] if rows else []


def _devices(
    rows: Sequence[Row], titles: list[str], lines: list[str], path: str
) -> Iterator[Device]:
    seen: dict[str, int] = {}
    for row in rows:
        cells = {title: row.cell(at) for at, title in enumerate(titles)}
        name, where = row.whole(titles.index("name")), f"{path}:{row.line}"
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
    return Device(
        name,
        "" if nothing(cells.get("kind", "")) else cells["kind"],
        _ports(cells.get("port", ""), where),
        address=address(typed),
        places={"": place},
    )


def _ports(cell: str, where: str) -> tuple[Port, ...]:
    texts = [text.split() for text in cell.split(",") if not nothing(text)]
    if texts in ([], [["undecided"]]):
        return ()
    if not all(len(words) in {2, 3} for words in texts):
        raise UnusableInput(
            f"`{cell}` is no port",
            where=where,
            remedy="write controller, type and label, as `bridge motor 1`; several with commas",
        )
    return tuple(Port(*words) for words in texts)


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
