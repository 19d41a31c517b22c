"""Charts in .xlsx workbooks, read by openpyxl, which the extra ``xlsx`` brings."""

from __future__ import annotations

import io
import re
import warnings
import zipfile
from datetime import datetime, time
from typing import TYPE_CHECKING

from namegen.errors import UnusableInput
from namegen.loading.charts.tables import MOST_ROWS, Table, check_size, table

if TYPE_CHECKING:
    from openpyxl.workbook import Workbook

_MOST_UNPACKED = 2 << 20
_MOST_STYLES = 256 << 10
_MOST_CELLS = 200_000
_MOST_MERGED = 5_000
"""What openpyxl and this module get through in a second; the bytes take a hundredfold of memory."""
_FORMULA = re.compile(rb"<(?:\w+:)?f[\s>/]")
_HIDDEN = {True: "", False: "hidden "}
_MERGED = re.compile(
    rb'<(?:\w+:)?mergeCell\s[^>]*?ref="([A-Z]{1,3}[0-9]{1,7}:[A-Z]{1,3}[0-9]{1,7})"'
)

Cells = list[list[str]]


def sheets_of(data: bytes, where: str) -> list[Table]:
    """Return each sheet of a workbook as a table, with the values that formulas last had.

    Each cell of a merged range has the range's value. A formula that was never
    computed stands as it is written, so that it is not lost.

    Raises:
        UnusableInput: openpyxl is missing, or the file is no workbook that it can
            read, or holds too much for a chart.
    """
    _need_openpyxl(where)
    check_size(data, where)
    try:
        with warnings.catch_warnings():  # what openpyxl leaves out of a sheet is no part of a chart
            warnings.simplefilter("ignore")
            found = _sheets(data, where)
        if not found:
            raise UnusableInput("this workbook has no sheet", where=where, remedy="add the chart")
        return found
    except UnusableInput:
        raise
    except Exception as error:  # openpyxl lets many kinds through from damaged files
        raise UnusableInput(
            "this cannot be read as a workbook",
            where=where,
            remedy="open it in a spreadsheet and save it as CSV",
        ) from error


def _need_openpyxl(where: str) -> None:
    try:
        import openpyxl  # noqa: F401
    except ImportError as error:
        raise UnusableInput(
            "reading .xlsx needs openpyxl, which is not installed",
            where=where,
            remedy="install it with `pip install 'namegen[xlsx]'`, or save the chart as CSV",
        ) from error


def _sheets(data: bytes, where: str) -> list[Table]:
    with zipfile.ZipFile(io.BytesIO(data)) as packed:
        sizes = {part.filename: part.file_size for part in packed.infolist()}
        read = [size for name, size in sizes.items() if not name.startswith("xl/media")]
        if sum(read) > _MOST_UNPACKED or sizes.get("xl/styles.xml", 0) > _MOST_STYLES:
            raise _too_much(where)
        values = _opened(data, computed=True)
        # The path is no public name of openpyxl; a test reads merged cells.
        pages = [packed.read(sheet._worksheet_path) for sheet in values.worksheets]  # type: ignore[attr-defined]
    found = _cells(values, where)
    if any(map(_FORMULA.search, pages)):
        written = _cells(_opened(data, computed=False), where)
        for cells, formulas in zip(found, written, strict=True):
            _add_uncomputed(cells, formulas)
    for cells, page in zip(found, pages, strict=True):
        merged = _MERGED.findall(page)
        if len(merged) > _MOST_MERGED:
            raise _too_much(where)
        for span in merged:
            _fill_merged(cells, span.decode("ascii"))
    return [
        table(
            _cut(cells),
            f'on the {_HIDDEN[shown]}sheet "{sheet.title}"',
            title=sheet.title,
            hidden=not shown,
        )
        for cells, sheet in zip(found, values.worksheets, strict=True)
        for shown in [sheet.sheet_state == "visible"]
    ]


def _opened(data: bytes, *, computed: bool) -> Workbook:
    """Open a workbook for reading only: the other way takes ten times the memory."""
    import openpyxl

    return openpyxl.load_workbook(io.BytesIO(data), read_only=True, data_only=computed)


def _cells(book: Workbook, where: str) -> list[Cells]:
    """Return the texts of all sheets; a sheet's own word about its size is not trusted."""
    found: list[Cells] = []
    seen = 0
    for sheet in book.worksheets:
        sheet.reset_dimensions()
        cells: Cells = []
        for row in sheet.iter_rows(values_only=True):
            seen += len(row) or 1
            cells.append([_text(value) for value in row])
            if seen > _MOST_CELLS or len(cells) > MOST_ROWS:
                raise _too_much(where)
        found.append(cells)
    return found


def _too_much(where: str) -> UnusableInput:
    return UnusableInput(
        f"this workbook holds too much for a chart: at most {MOST_ROWS:,} rows and "
        f"{_MOST_CELLS:,} cells are read",
        where=where,
        remedy="copy the sheet with the chart into a workbook of its own",
    )


def _add_uncomputed(cells: Cells, formulas: Cells) -> None:
    """Put formulas in place of values that were never computed."""
    for row, written in zip(cells, formulas, strict=True):
        for at, (value, formula) in enumerate(zip(row, written, strict=True)):
            if not value and formula.startswith("="):
                row[at] = formula


def _fill_merged(cells: Cells, span: str) -> None:
    """Give each cell of a merged range the value of its first one, down a column alone.

    A range across columns is a title: there its value stands once.
    """
    from openpyxl.utils import range_boundaries

    left, top, right, bottom = range_boundaries(span)
    if not (left and top and bottom) or left != right or top > len(cells):
        return
    at, first = left - 1, cells[top - 1]
    if at >= len(first):
        return
    for row in cells[top:bottom]:
        row.extend([""] * (left - len(row)))
        row[at] = row[at] or first[at]


def _cut(cells: Cells) -> Cells:
    """Return rows of one length, without the columns at the end in which nothing stands."""
    filled = (at for row in cells for at, text in enumerate(row) if text.strip())
    width = max(filled, default=-1) + 1
    return [[*row[:width], *[""] * (width - len(row))] for row in cells]


def _text(value: object) -> str:
    if value is None:
        return ""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, float) and value.is_integer():
        return str(int(value))
    if isinstance(value, datetime) and value.time() == time():
        return str(value.date())
    return str(value)
