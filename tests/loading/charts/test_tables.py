"""Encodings and delimiters of charts."""

from __future__ import annotations

import pytest

from namegen.errors import UnusableInput
from namegen.loading.charts.columns import columns_of
from namegen.loading.charts.tables import LARGEST, tables_of, unprotected
from namegen.targets.escapes.csv import cell

TEXT = "Name;Port;Notes\nécluse;bridge motor 1;côté\n"


@pytest.mark.parametrize(
    "encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "utf-32", "cp1252"]
)
@pytest.mark.parametrize("delimiter", [",", ";", "\t"])
def test_encodings_and_delimiters(encoding: str, delimiter: str):
    data = TEXT.replace(";", delimiter).encode(encoding)
    table, _ = columns_of(tables_of(data, "chart.csv"), {}, "chart.csv")
    assert table.rows[1].cells == ("écluse", "bridge motor 1", "côté")


def test_commas_in_the_texts_do_not_make_commas_the_delimiter():
    data = b"Name;Port;Notes\na;bridge motor 1;red, blue, green, white\nb;bridge motor 2;x, y, z\n"
    table, _ = columns_of(tables_of(data, "chart.csv"), {}, "chart.csv")
    assert table.how == "separated by semicolons"


def test_a_quoted_cell_holds_line_breaks_and_lines_are_counted_on():
    data = b'Name,Port,Notes\r\na,bridge motor 1,"one\r\ntwo"\r\nb,bridge motor 2,\r\n'
    rows = tables_of(data, "chart.csv")[0].rows
    assert [row.line for row in rows] == [1, 2, 4]
    assert rows[1].cells[2] == "one\r\ntwo"


@pytest.mark.parametrize("data", [b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR" * 20, b"a\0\0\0b" * 50])
def test_what_is_no_text_is_refused(data: bytes):
    with pytest.raises(UnusableInput, match="no text"):
        tables_of(data, "chart.csv")


def test_a_chart_that_is_too_long_is_refused():
    with pytest.raises(UnusableInput, match="at most"):
        tables_of(b"x" * (LARGEST + 1), "chart.csv")


@pytest.mark.parametrize(
    "text", ["=1+1", "+1", "-1", "@x", "'", "''", "'=", "'tis", "plain", "\tx", "\uff1dx", ""]
)
def test_the_protection_of_formula_cells_is_undone(text: str):
    assert unprotected(cell(text).strip('"')) == text
