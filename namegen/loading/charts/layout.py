"""How a chart is laid out: its tables, columns, sections and titles, down to single rows."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from msgspec import Struct
from msgspec.structs import replace

from namegen.loading.charts.chart import Aside
from namegen.loading.charts.columns import Columns, by_values, charts_like, columns_of
from namegen.loading.charts.entries import Entry, entries_of
from namegen.loading.charts.kinds import kind_of
from namegen.loading.charts.ports import type_of
from namegen.loading.charts.sections import Section, Sections, sections_of
from namegen.loading.charts.tables import Table
from namegen.loading.charts.titles import WISH, named_by_titles, titled, wished_title


class Layout(Struct, frozen=True):
    """The rows that may describe devices, and all that was understood beside them.

    ``guess`` is field -> heading, ``unused`` are the headings of columns that no
    field claims, ``others`` the tables that were not read.
    """

    how: str
    entries: tuple[Entry, ...]
    guess: Mapping[str, str]
    unused: tuple[str, ...]
    above: tuple[str, ...]
    asides: tuple[Aside, ...]
    others: tuple[str, ...]


def layout_of(
    tables: Sequence[Table], wished: Mapping[str, str], where: str, *, sheets: bool
) -> Layout:
    """Return the layout of a chart.

    Args:
        tables: the sheets of a workbook, or one text read in several ways.
        wished: field -> heading, or `titles.WISH`.
        where: the chart, for messages.
        sheets: whether the tables are sheets, all of which may be charts.

    Raises:
        UnusableInput: no headings are understood, or a wished heading is nowhere.
    """
    meant = wished_title(wished)
    headings = {field: text for field, text in wished.items() if field != meant}
    shown = [table for table in tables if not table.hidden and table.rows] or tables
    chosen, columns = columns_of(shown, headings, where)
    charts = charts_like(shown, columns, headings) if sheets else [(chosen, columns)]
    charts = [(table, _with_values(table, own)) for table, own in charts]
    parts = [sections_of(_named(one, len(charts)), own, headings) for one, own in charts]
    sections = _by_sheet(parts, charts)
    names = meant or named_by_titles(sections)
    entries = tuple(entries_of(titled(sections), names))
    guess = _guess(sections, columns)
    if names and any(one.title for one in sections):
        guess[names] = " + ".join(filter(None, (guess.get(names), _titles(sections))))
    read = [table for table, _ in charts]
    return Layout(
        how=" and ".join(table.how for table in read),
        entries=entries,
        guess=guess,
        unused=_unused(entries),
        above=tuple(text for part in parts for text in part.above),
        asides=tuple(aside for part in parts for aside in part.asides),
        others=tuple(one.how for one in tables if sheets and one.rows and one not in read),
    )


def _with_values(table: Table, columns: Columns) -> Columns:
    """Return columns with those whose headings say nothing and whose cells do."""
    below = [row for row in table.rows if row.line > columns.headings.line]
    return by_values(columns, below, {"type": type_of, "kind": kind_of})


def _named(table: Table, charts: int) -> Table:
    """Return a table whose rows say their sheet, where several are read."""
    if charts < 2:
        return table
    return replace(table, rows=tuple(replace(row, sheet=table.title) for row in table.rows))


def _by_sheet(parts: Sequence[Sections], charts: Sequence[tuple[Table, Columns]]) -> list[Section]:
    """Return all sections; where several sheets are read, those without a title have the sheet's.

    Titles inside the sheets go on to say what they say; the sheets' names then
    stand for the robots.
    """
    if len(charts) < 2:
        return [section for part in parts for section in part.sections]
    found: list[Section] = []
    for part, (table, _) in zip(parts, charts, strict=True):
        inner = named_by_titles(part.sections)
        for section in part.sections:
            says = {**section.says, **({inner: section.title} if inner and section.title else {})}
            found.append(replace(section, says=says, title=table.title))
    return found


def _guess(sections: Sequence[Section], columns: Columns) -> dict[str, str]:
    """Return field -> heading; the headings of sections that call it otherwise too."""
    found: dict[str, dict[str, None]] = {field: {} for field in columns.index}
    for section in sections:
        for field, heading in section.columns.guess.items():
            found.setdefault(field, {})[heading] = None
    return {field: ", ".join(headings) for field, headings in found.items() if headings}


def _titles(sections: Sequence[Section]) -> str:
    listed = dict.fromkeys(one.title for one in sections if one.title)
    return f"the {WISH} {', '.join(listed)}"


def _unused(entries: Sequence[Entry]) -> tuple[str, ...]:
    """Return the headings that no field claims, of columns in which something stands."""
    seen = (
        heading
        for entry in entries
        for heading, at in entry.columns.unused.items()
        if entry.row.cell(at)
    )
    return tuple(dict.fromkeys(seen))
