"""The rows of a chart under the headings and titles that they stand below."""

from __future__ import annotations

import re
from collections.abc import Mapping

from msgspec import Struct, field

from namegen.loading.charts.chart import Aside
from namegen.loading.charts.columns import Columns, field_called, headings_again
from namegen.loading.charts.tables import Row, Table

_TOTAL = re.compile(r"(grand |sub-?)?totals?\b|(sum|count)\b|in total\b", re.IGNORECASE)
_TITLED = ("robot", "controller")
_PORTS = ("port", "label", "type")


class Section(Struct):
    """Rows below one row of headings, and below one title where the chart has such.

    ``says`` are titles that say what they name, ``Robot: heron``; ``title`` is a
    bare one, of which only the whole chart may tell what it names.
    """

    columns: Columns
    says: Mapping[str, str] = field(default_factory=dict)
    title: str = ""
    rows: list[Row] = field(default_factory=list)


class Sections(Struct, frozen=True):
    """A table as it is divided, what stands above its headings, and the rows put aside."""

    sections: tuple[Section, ...]
    above: tuple[str, ...]
    asides: tuple[Aside, ...]


def sections_of(table: Table, columns: Columns, wished: Mapping[str, str]) -> Sections:
    """Return the rows below the headings, by section; headings again and totals are put aside.

    A row with a single cell is a title where headings follow it, and also
    elsewhere where the rows below the headings begin with one.
    """
    return _Division(table, columns, wished).sections()


def said_by(row: Row) -> tuple[str, str] | None:
    """Return field and text of a title that says what it names, or None.

    >>> said_by(Row(1, ("Robot: heron",))), said_by(Row(1, ("Board", "bridge")))
    (('robot', 'heron'), ('controller', 'bridge'))
    """
    cells = [row.cell(at) for at in row.filled]
    word, sign, rest = " : ".join(cells).partition(":") if len(cells) < 3 else ("", "", "")
    named = rest.strip(" :")
    found = field_called(word)
    return (found, named) if sign and named and found in _TITLED else None


class _Division:
    def __init__(self, table: Table, columns: Columns, wished: Mapping[str, str]) -> None:
        self._columns = columns
        self._wished = wished
        line = columns.headings.line
        self._above = tuple(row for row in table.rows if row.line < line)
        self._rows = tuple(row for row in table.rows if row.line > line)
        self._asides: list[Aside] = []
        for row in self._above:
            if row.sheet:  # one of several: its titles are no word about all of them
                self._aside(row, "above the headings")
        lone = [row for row in self._rows if self._lone(row)]
        begins = bool(lone) and lone[0] is self._rows[0] and not self._heads(1)
        self._everywhere = begins and (len(lone) > 1 or lone[0].filled != [columns["name"]])

    def sections(self) -> Sections:
        """Return the division; each row is in it once."""
        said = dict(filter(None, map(said_by, self._above)))
        section = Section(self._columns, said)
        found = [section]
        for at, row in enumerate(self._rows):
            begun = self._begun(at, row, section)
            if begun is not None:
                section = begun
                found.append(section)
            elif not self._put_aside(row, section):
                section.rows.append(row)
        if any(one.title for one in found) and self._above and self._lone(self._above[-1]):
            found[0].title = self._above[-1].cell(self._above[-1].filled[0])
        kept = tuple(one for one in found if one.rows)
        alone = [row for row in self._above if not row.sheet]
        return Sections(kept, tuple(map(str, alone)), tuple(self._asides))

    def _begun(self, at: int, row: Row, section: Section) -> Section | None:
        """Return the section that a row begins, or None where it begins none."""
        columns = section.columns
        again = headings_again(row, columns, self._wished)
        if again:
            self._aside(row, "the headings once more")
            return Section(again, section.says, section.title)
        said = said_by(row)
        if said:
            name, text = said
            self._aside(row, f"the {name} of the rows below")
            return Section(columns, {"robot": section.says.get("robot", ""), name: text})
        if self._lone(row) and (self._everywhere or self._heads(at + 1)):
            self._aside(row, "a title of the rows below")
            return Section(columns, section.says, row.cell(row.filled[0]))
        return None

    def _put_aside(self, row: Row, section: Section) -> bool:
        first = row.cell(row.filled[0])
        whole = all(row.cell(section.columns[name]) for name in ("name", "kind", "port"))
        if whole or not _TOTAL.match(first):
            return False
        self._aside(row, "totals")
        return True

    def _heads(self, at: int) -> bool:
        """Whether a row holds headings again."""
        row = self._rows[at] if at < len(self._rows) else None
        return row is not None and headings_again(row, self._columns, self._wished) is not None

    def _lone(self, row: Row) -> bool:
        """Whether a row may be a title: one cell, and no port that nothing is plugged into."""
        if len(row.filled) != 1:
            return False
        at = row.filled[0]
        in_ports = at in {self._columns[name] for name in _PORTS}
        return not (in_ports and any(map(str.isdigit, row.cell(at))))

    def _aside(self, row: Row, why: str) -> None:
        self._asides.append(Aside(row.place, str(row), why))
