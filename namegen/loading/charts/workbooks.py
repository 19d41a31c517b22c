"""Charts in .xlsx workbooks, read by openpyxl, which the extra ``xlsx`` brings."""

from __future__ import annotations

import io
import zipfile

from namegen.errors import UnusableInput
from namegen.loading.charts.tables import MOST_ROWS, Table, check_size, table

_MOST_UNPACKED = 64 << 20
_MOST_COLUMNS = 100


def sheets_of(data: bytes, where: str) -> list[Table]:
    """Return each sheet of a workbook as a table, with the values that formulas last had.

    Raises:
        UnusableInput: openpyxl is missing, or the file is no workbook that it can read.
    """
    try:
        import openpyxl
    except ImportError as error:
        raise UnusableInput(
            "reading .xlsx needs openpyxl, which is not installed",
            where=where,
            remedy="install it with `pip install 'namegen[xlsx]'`, or save the chart as CSV",
        ) from error
    check_size(data, where)
    try:
        _check_unpacked(data)
        book = openpyxl.load_workbook(io.BytesIO(data), read_only=True, data_only=True)
        return [
            table(
                [
                    [_text(value) for value in row]
                    for row in sheet.iter_rows(
                        values_only=True, max_row=MOST_ROWS, max_col=_MOST_COLUMNS
                    )
                ],
                f'on the sheet "{sheet.title}"',
            )
            for sheet in book.worksheets
        ]
    except Exception as error:  # openpyxl lets many kinds through from damaged files
        raise UnusableInput(
            "this cannot be read as a workbook",
            where=where,
            remedy="open it in a spreadsheet and save it as CSV",
        ) from error


def _check_unpacked(data: bytes) -> None:
    with zipfile.ZipFile(io.BytesIO(data)) as packed:
        if sum(entry.file_size for entry in packed.infolist()) > _MOST_UNPACKED:
            raise ValueError("too large when unpacked")


def _text(value: object) -> str:
    if value is None:
        return ""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, float) and value.is_integer():
        return str(int(value))
    return str(value)
