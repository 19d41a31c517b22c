"""Bytes of a chart -> tables of cells, one for each way that they can be read."""

from __future__ import annotations

import codecs
import csv
import io
import re
from collections.abc import Iterable, Sequence

from msgspec import Struct

from namegen.errors import UnusableInput

LARGEST = 4 << 20
"""Largest chart that is read, in bytes."""
MOST_ROWS = 2_000
_MOST_LINES = 50_000
DELIMITERS = {",": "commas", ";": "semicolons", "\t": "tabs", "|": "bars"}
_FORMULA = tuple("=+-@\t\r\n'\uff1d\uff0b\uff0d\uff20")
_DIRECTIVE = re.compile(r"\Asep=[^\r\n]")
"""A first line by which some spreadsheets say the delimiter. Common practice, no source."""
_RULE = re.compile(r"[-=_:]*")
_MARKS = (
    (codecs.BOM_UTF32_LE, "utf-32"),
    (codecs.BOM_UTF32_BE, "utf-32"),
    (codecs.BOM_UTF8, "utf-8-sig"),
    (codecs.BOM_UTF16_LE, "utf-16"),
    (codecs.BOM_UTF16_BE, "utf-16"),
)


class Row(Struct, frozen=True):
    """The cells of one row; ``line`` is where it begins, from 1.

    ``sheet`` is the sheet's title where several are read together.
    """

    line: int
    cells: tuple[str, ...]
    sheet: str = ""

    @property
    def place(self) -> str:
        """Where the row stands, in words."""
        return place_of(self.line, self.sheet)

    @property
    def filled(self) -> list[int]:
        """The indexes of the cells that hold something."""
        return [at for at, cell in enumerate(self.cells) if cell.strip()]

    def cell(self, index: int | None) -> str:
        """Return a cell without the blanks around it; the empty text where there is none."""
        return self.whole(index).strip()

    def whole(self, index: int | None) -> str:
        """Return a cell as it is written."""
        return self.cells[index] if index is not None and index < len(self.cells) else ""

    def __str__(self) -> str:
        return " | ".join(" ".join(cell.split()) for cell in self.cells if cell.strip())


class Table(Struct, frozen=True):
    """Rows that hold something, and how they were found: ``separated by commas``.

    ``title`` is a sheet's own, and ``hidden`` whether a workbook does not show it.
    """

    rows: tuple[Row, ...]
    how: str
    title: str = ""
    hidden: bool = False


def place_of(line: int, sheet: str = "") -> str:
    """Return where a row stands, in words."""
    return f'line {line} of "{sheet}"' if sheet else f"line {line}"


def tables_of(data: bytes, where: str) -> list[Table]:
    """Return the tables that the text of a chart may hold, one for each delimiter.

    UTF-8 and UTF-16 are recognised, with or without a byte order mark; other
    text is taken for Windows-1252, the usual one of spreadsheets.

    Raises:
        UnusableInput: it is too long, no text, or no table.
    """
    text = _DIRECTIVE.sub("", _decoded(data, where))
    found = [
        Table(rows, f"separated by {words}")
        for sign, words in DELIMITERS.items()
        if (rows := _rows(text, sign, where)) is not None
    ]
    if not found:
        raise UnusableInput(
            "this cannot be read as a table",
            where=where,
            remedy="look for a quote that is never closed; save the chart as CSV once more",
        )
    return found


def table(
    rows: Iterable[Sequence[str]], how: str, *, title: str = "", hidden: bool = False
) -> Table:
    """Return the rows that hold something, numbered from 1."""
    kept = (Row(line, tuple(cells)) for line, cells in enumerate(rows, 1))
    held = tuple(row for row in kept if holds_something(row.cells))
    return Table(held, how, title, hidden)


def holds_something(cells: Sequence[str]) -> bool:
    """Whether a row says anything: it is neither empty nor a line drawn of signs."""
    return not all(_RULE.fullmatch(cell.strip()) for cell in cells)


def unprotected(cell: str) -> str:
    """Return a cell without the apostrophe that keeps a spreadsheet from computing it.

    >>> unprotected("'=1+1"), unprotected("''tis"), unprotected("'tis")
    ('=1+1', "'tis", "'tis")
    """
    return cell[1:] if cell.startswith("'") and cell[1:].startswith(_FORMULA) else cell


def check_size(data: bytes, where: str) -> None:
    """Refuse a chart that is too long.

    Raises:
        UnusableInput: it is.
    """
    if len(data) > LARGEST:
        raise UnusableInput(
            f"this chart has {len(data):,} bytes; at most {LARGEST:,} are read",
            where=where,
            remedy="leave pictures and other tables out of it",
        )


def _rows(text: str, delimiter: str, where: str) -> tuple[Row, ...] | None:
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter)
    rows: list[Row] = []
    line = 1
    try:
        for cells in reader:
            if holds_something(cells):
                rows.append(Row(line, tuple(map(unprotected, cells))))
            if len(rows) > MOST_ROWS or reader.line_num > _MOST_LINES:
                raise UnusableInput(
                    f"this chart has more than {MOST_ROWS:,} rows",
                    where=where,
                    remedy="leave other tables out of it",
                )
            line = reader.line_num + 1
    except csv.Error:
        return None
    return tuple(rows)


def _decoded(data: bytes, where: str) -> str:
    check_size(data, where)
    encodings = [name for mark, name in _MARKS if data.startswith(mark)][:1]
    if not encodings and b"\0" in data[:200]:
        encodings = ["utf-16-be" if data[0] == 0 else "utf-16-le"]
    for encoding in encodings or ["utf-8", "cp1252"]:
        try:
            text = data.decode(encoding)
        except UnicodeDecodeError:
            continue
        if "\0" not in text:
            return text
    raise UnusableInput(
        "this is no text",
        where=where,
        remedy="save the chart as CSV (UTF-8), or give it as an .xlsx file",
    )
