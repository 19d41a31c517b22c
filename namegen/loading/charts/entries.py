"""The rows that may describe devices, each with what the chart says for it elsewhere."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence

from msgspec import Struct

from namegen.loading.charts.columns import Columns
from namegen.loading.charts.kinds import kind_of
from namegen.loading.charts.ports import QUOTES, Hint, Reading, read_ports, type_of
from namegen.loading.charts.sections import Section
from namegen.loading.charts.tables import Row
from namegen.model.boards import KINDS

_MERGED = ("controller", "type")
_NO_QUOTES = str.maketrans("", "", QUOTES)


class Entry(Struct, frozen=True):
    """A row, and the texts that hold for it because they stand above it: field -> text."""

    row: Row
    columns: Columns
    above: Mapping[str, str]

    def cell(self, field: str) -> str:
        """Return what the row says for a field, or what stands above it; else the empty text."""
        return self.row.cell(self.columns[field]) or self.above.get(field, "")

    def ports(self, kind: str | None, controllers: Sequence[str] | Mapping[str, str]) -> Reading:
        """Return the ports of a device of a kind; ``controllers`` are known, in small letters."""
        known = KINDS.get(kind or "")
        types = known.ports if known else ()
        said = self.cell("type")
        hint = Hint(
            controller=one_word(self.cell("controller")),
            type=type_of(said) or "",
            label=self.cell("label"),
            types=(kind,) if kind and kind in types else types,
            controllers=controllers,
            kind=kind or "",
        )
        if said and not hint.type:
            return Reading(doubt=f'"{said}" is no port type that is known')
        return read_ports(self.cell("port"), hint)

    def remarks(self) -> list[str]:
        """Return the cells that no field of a device claims, with their headings."""
        columns, cells = self.columns, self.row.cells
        found = [(heading, at) for heading, at in columns.unused.items() if self.row.cell(at)]
        named = [
            f"{heading}: {self.row.cell(at)}" if columns.headings.cell(at) else self.row.cell(at)
            for heading, at in found
        ]
        beyond = (cell.strip() for cell in cells[len(columns.headings.cells) :])
        return [*named, *filter(None, beyond)]


def entries_of(sections: Iterable[Section], titled: str) -> list[Entry]:
    """Return the rows as entries; ``titled`` is the field that the sections' titles fill, or empty.

    A robot holds on until the next. A controller or port type does so where its
    column looks like merged cells: each is written once, with empty cells below.
    """
    found: list[Entry] = []
    for section in sections:
        says = dict(section.says)
        if section.title and (titled or kind_of(section.title)):
            says[titled or "kind"] = section.title
        merged = [name for name in _MERGED if _looks_merged(section, name)]
        carried: dict[str, str] = {}
        for row in section.rows:
            for name in ("robot", *merged):
                said = row.cell(section.columns[name])
                if said:
                    carried[name] = said
            found.append(Entry(row, section.columns, {**says, **carried}))
    return found


def one_word(text: str) -> str:
    """Return a controller's name without blanks and quotes, as ports are written."""
    return "-".join(text.translate(_NO_QUOTES).split())


def _looks_merged(section: Section, name: str) -> bool:
    at = section.columns[name]
    cells = [row.cell(at) for row in section.rows] if at is not None else []
    uses = Counter(cell.casefold() for cell in cells if cell)
    return bool(cells) and bool(cells[0]) and max(uses.values()) == 1 and len(uses) < len(cells)
