"""Which column of a chart holds what, guessed from its headings."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence

from msgspec import Struct

from namegen.errors import UnusableInput
from namegen.loading.charts.tables import Row, Table
from namegen.text.likeness import nearest, suggest
from namegen.text.words import split

FIELDS: Mapping[str, tuple[str, ...]] = {
    "name": ("name", "device name", "called", "device", "configured as", "identifier"),
    "port": ("port", "plugged into", "plugged in", "where", "connected to", "connection",
             "wired to", "pin", "pins", "bus"),
    "kind": ("kind", "type", "what", "device type", "sort", "category"),
    "type": ("port type", "type of port", "port kind", "interface"),
    "label": ("port number", "port no", "number", "no", "label", "port label", "channel", "socket"),
    "controller": ("controller", "board", "control board", "module", "box", "control box"),
    "robot": ("robot", "bot", "machine", "vehicle", "boat"),
    "part": ("part", "model", "part number", "product", "component"),
    "address": ("address", "bus address", "i2c address", "can id", "id"),
    "does": ("does", "purpose", "function", "what it does", "description", "used for"),
    "expect": ("expect", "expected", "test", "what you see", "at the test"),
    "note": ("note", "notes", "remark", "remarks", "comment", "comments"),
    "optional": ("optional", "may be missing"),
    "reversed": ("reversed", "reverse", "inverted", "direction reversed"),
    "formerly": ("formerly", "old name", "old names", "former name"),
}  # fmt: skip
"""Field -> general words for it, the likeliest first. Common practice, no source."""

Known = Callable[[str], "str | None"]
_HEADINGS_WITHIN = 30
_FIELD_OF = {phrase: field for field, phrases in FIELDS.items() for phrase in phrases}
_WIRING = ("port", "label", "type", "controller", "kind")
_COUNTS = frozenset({"no", "number"})
_EXACT, _NEAR, _WITHIN = 3, 2, 1


class Columns(Struct, frozen=True):
    """The row of headings, and the column of each field that was found.

    ``unused`` are the columns that no field claims: heading -> index.
    """

    headings: Row
    index: Mapping[str, int]
    unused: Mapping[str, int]

    def __getitem__(self, field: str) -> int | None:
        return self.index.get(field)

    @property
    def guess(self) -> dict[str, str]:
        """Field -> the heading of its column."""
        return {field: self.headings.cell(index) for field, index in self.index.items()}


def field_called(word: str) -> str | None:
    """Return the field that has exactly this word among its general words."""
    return _FIELD_OF.get(" ".join(split(word)).casefold())


def wishes(texts: Iterable[str]) -> dict[str, str]:
    """Return field -> heading from ``port=Plugged in,name=Called``.

    Raises:
        UnusableInput: it is not written so, or names no field of a chart.
    """
    found: dict[str, str] = {}
    for pair in (pair for text in texts for pair in text.split(",")):
        field, sign, heading = (part.strip() for part in pair.partition("="))
        if not sign or not heading:
            raise UnusableInput(
                f'"{pair}" does not say which column is meant',
                remedy='write it as --columns "port=Plugged in,name=Called"',
            )
        if field not in FIELDS:
            best = nearest(field, FIELDS)
            meant = f'did you mean "{best}"? ' if best else ""
            raise UnusableInput(
                f'"{field}" is no field of a chart', remedy=f"{meant}there are: {', '.join(FIELDS)}"
            )
        found[field] = heading
    return found


def columns_of(
    tables: Sequence[Table], wished: Mapping[str, str], where: str
) -> tuple[Table, Columns]:
    """Return the table and the row in it whose headings are understood best.

    Raises:
        UnusableInput: no row has a column of names, or a wished heading is nowhere.
    """
    best: tuple[tuple[int, int], Table, Columns] | None = None
    for table in tables:
        columns = _best(table, wished)
        score = (len(columns.index), len(columns.headings.cells)) if columns else (0, 0)
        if columns and (best is None or score > best[0]):
            best = score, table, columns
    if best is None:
        raise UnusableInput("this chart holds nothing", where=where, remedy="fill it in first")
    _, table, columns = best
    beside = {field_called(row.cell(0)) for row in table.rows}
    if not wished and len(columns.index) < 2 and {"name", "port"} <= beside:
        raise UnusableInput(
            "the headings stand in the first column",
            where=where,
            remedy="they belong in a row of their own: transpose the table in the spreadsheet",
        )
    for field, heading in wished.items():
        if field not in columns.index:
            _refuse(f'no heading is "{heading}"', columns, where)
    if "name" not in columns.index or len(columns.index) < 2:
        _refuse("no row of headings with names and ports is understood", columns, where)
    return table, columns


def charts_like(
    tables: Sequence[Table], columns: Columns, wished: Mapping[str, str]
) -> list[tuple[Table, Columns]]:
    """Return the tables that have the same sorts of columns, each with its own."""
    needed = set(columns.index) & {"name", *_WIRING}
    found = [(table, best) for table in tables if (best := _best(table, wished))]
    return [(table, best) for table, best in found if needed <= set(best.index)]


def headings_again(row: Row, columns: Columns, wished: Mapping[str, str]) -> Columns | None:
    """Return the columns that a row below the headings gives anew, or None: it is no headings."""
    if row.cells == columns.headings.cells:
        return columns
    found = _guess(row, wished)
    exact = [name for name, text in found.guess.items() if field_called(text) == name]
    sure = "name" in exact and (len(exact) > 2 or len(exact) == len(row.filled) > 1)
    same = [at for at in row.filled if row.cell(at) == columns.headings.cell(at)]
    return found if sure or (columns["name"] in same and len(same) > 1) else None


def by_values(columns: Columns, rows: Sequence[Row], known: Mapping[str, Known]) -> Columns:
    """Return columns with those added in which every cell is a known word of a missing field.

    ``known`` is field -> function that returns None of a text that is no word of it.
    """
    index, unused = dict(columns.index), dict(columns.unused)
    for field, is_known in known.items():
        if field in index:
            continue
        for heading, at in unused.items():
            cells = [row.cell(at) for row in rows if row.cell(at)]
            if len(cells) > 1 and all(is_known(cell) for cell in cells):
                index[field] = unused.pop(heading)
                break
    ordered = {field: index[field] for field in FIELDS if field in index}
    return Columns(columns.headings, ordered, unused)


def _best(table: Table, wished: Mapping[str, str]) -> Columns | None:
    """Return what the row says whose headings are understood best; the first of several."""
    guesses = [_guess(row, wished) for row in table.rows[:_HEADINGS_WITHIN]]
    return max(guesses, key=lambda one: (len(one.index), len(one.headings.cells)), default=None)


def _refuse(what: str, columns: Columns, where: str) -> None:
    remedy = (
        'say which columns are meant: --columns "name=HEADING,port=HEADING"; '
        f"line {columns.headings.line} is nearest: {str(columns.headings)[:200]}. A chart without "
        "headings needs a row of them above, such as Name, Port, Kind"
    )
    if "port" in columns.index and "name" not in columns.index and len(columns.unused) > 1:
        own = next(iter(columns.unused))
        remedy += (
            f'. Where each robot has a column of names, read one at a time: --columns "name={own}"'
        )
    raise UnusableInput(what, where=where, remedy=remedy)


def _guess(row: Row, wished: Mapping[str, str]) -> Columns:
    """Return what a row says as headings: wishes first, then the surest guess for each field."""
    texts = [" ".join(cell.split()).casefold() for cell in row.cells]
    index = {
        field: texts.index(wanted)
        for field, heading in wished.items()
        if (wanted := " ".join(heading.split()).casefold()) in texts
    }
    guesses = sorted(
        (-sure, rank, at, field)
        for at, text in enumerate(texts)
        if at not in index.values() and (guess := _field_of(text))
        for sure, rank, field in [guess]
    )
    for _, _, at, field in guesses:
        if field not in index and field not in wished and at not in index.values():
            index[field] = at
    if "label" not in wished:
        _settle_number(index, texts)
    used = set(index.values())
    unused = {
        row.cell(at) or f"column {at + 1}": at for at in range(len(row.cells)) if at not in used
    }
    return Columns(row, {field: index[field] for field in FIELDS if field in index}, unused)


def _settle_number(index: dict[str, int], texts: Sequence[str]) -> None:
    """Take a column of labels for that of ports where there is none, and a row's number for none.

    A first column called No or Number beside one of ports counts the rows.
    """
    if "label" not in index:
        return
    if "port" not in index:
        index["port"] = index.pop("label")
    elif index["label"] == 0 and " ".join(split(texts[0])) in _COUNTS:
        del index["label"]


def _field_of(heading: str) -> tuple[int, int, str] | None:
    """Return how sure it is (more is surer), the rank of the word, and the field; or None."""
    phrase = " ".join(split(heading)).casefold()
    if len(heading) > 60 or not phrase:
        return None
    sure, found = _EXACT, phrase if phrase in _FIELD_OF else None
    if found is None:
        sure, found = _NEAR, suggest(phrase, tuple(_FIELD_OF)).best if len(phrase) > 3 else None
    if found is None:
        within = [known for known in _FIELD_OF if f" {known} " in f" {phrase} "]
        sure, found = _WITHIN, max(within, key=len, default=None)
    if found is None:
        return None
    field = _FIELD_OF[found]
    return sure, FIELDS[field].index(found), field
