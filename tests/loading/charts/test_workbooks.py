"""Workbooks as spreadsheets write them, made with openpyxl."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Iterable
from datetime import date
from pathlib import Path

import pytest

from namegen.errors import UnusableInput
from namegen.loading.charts.workbooks import sheets_of
from namegen.operations.chart import ReadChart, read

openpyxl = pytest.importorskip("openpyxl")

HEADINGS = ("Controller", "Port", "Name", "Kind")
HERON = (("bridge", "M1", "bowThruster", "motor"), ("bridge", 2.0, "netWinch", "motor"))
KINGFISHER = (("bridge", "M1", "cutter", "motor"), ("bridge", "S1", "rudder", "servo"))


def book(**sheets: Iterable[Iterable[object]]) -> openpyxl.Workbook:
    """Return a workbook with these sheets."""
    made = openpyxl.Workbook()
    made.remove(made.active)
    for title, rows in sheets.items():
        sheet = made.create_sheet(title)
        for row in rows:
            sheet.append(list(row))
    return made


def saved(made: openpyxl.Workbook) -> bytes:
    held = io.BytesIO()
    made.save(held)
    return held.getvalue()


def placed(made: openpyxl.Workbook, folder: Path, *wished: str) -> tuple[ReadChart, list[str]]:
    """Return what is read, and each device with its port."""
    made.save(folder / "boats.xlsx")
    found = read(folder / "boats.xlsx", wished, ())
    return found, [
        f"{robot.name} {one.device.name}: {', '.join(map(str, one.device.ports))}"
        for robot in found.chart.robots
        for one in robot.placed
    ]


def test_each_sheet_with_the_same_columns_is_a_robot(tmp_path: Path):
    made = book(
        Heron=[["the first of the club"], HEADINGS, *HERON],
        Kingfisher=[HEADINGS, *KINGFISHER, ("bridge", "M9", "", "motor")],
        Shopping=[["red wire", 3]],
    )
    found, devices = placed(made, tmp_path)
    assert devices == [
        "Heron bowThruster: bridge motor 1", "Heron netWinch: bridge motor 2",
        "Kingfisher cutter: bridge motor 1", "Kingfisher rudder: bridge servo 1",
    ]  # fmt: skip
    assert found.guess["robot"] == "the titles Heron, Kingfisher"
    assert found.others == ('on the sheet "Shopping"',)
    assert [one.place for one in found.chart.misfits] == ['line 4 of "Kingfisher"']
    assert [one.text for one in found.chart.asides] == ["the first of the club"]


def test_sheets_may_stand_for_controllers(tmp_path: Path):
    rows = [("Port", "Name", "Kind"), ("M1", "a", "motor")], [("Port", "Name", "Kind")]
    made = book(bridge=rows[0], stern=[*rows[1], ("M1", "b", "motor")])
    assert placed(made, tmp_path)[1] == ["boats a: bridge motor 1", "boats b: stern motor 1"]


def test_a_hidden_sheet_is_named_and_not_read(tmp_path: Path):
    old = [[*HEADINGS, "Notes"], ("stern", "M1", "x", "motor", "y")]
    made = book(Old=old, Now=[HEADINGS, *HERON])
    made["Old"].sheet_state = "hidden"
    found, devices = placed(made, tmp_path)
    assert devices == ["boats bowThruster: bridge motor 1", "boats netWinch: bridge motor 2"]
    assert found.others == ('on the hidden sheet "Old"',)


def test_merged_cells_hold_for_all_their_rows(tmp_path: Path):
    rows = [("Pond boats",), HEADINGS, *HERON, ("stern", "M1", "x", "motor")]
    made = book(Chart=[*rows, (None, "M2", "y", "motor"), (None, "M3", "z", "motor")])
    made["Chart"].merge_cells("A1:D1")
    made["Chart"].merge_cells("A5:A6")
    found, devices = placed(made, tmp_path)
    assert devices[2:] == ["boats x: stern motor 1", "boats y: stern motor 2"]
    assert [one.why for one in found.chart.misfits] == ["its controller is not sure"]
    assert found.chart.above == ("Pond boats",)


def test_what_a_spreadsheet_did_to_a_cell_is_told(tmp_path: Path):
    made = book(Chart=[HEADINGS, ("bridge", '="M"&1', "a", "motor"),
                       ("bridge", date(2026, 1, 2), "b", "encoder")])  # fmt: skip
    found, devices = placed(made, tmp_path)
    assert devices == []
    assert [one.why for one in found.chart.misfits] == [
        "it is a formula, and the file does not hold its value",
        'a spreadsheet has made a date of it, "2026-01-02"',
    ]


def test_a_formula_has_the_value_that_was_computed():
    packed = zipfile.ZipFile(io.BytesIO(saved(book(Chart=[("Name",), ("=1+1",)]))))
    changed = io.BytesIO()
    with zipfile.ZipFile(changed, "w") as out:
        for name in packed.namelist():
            data = packed.read(name)
            out.writestr(name, data.replace(b"<v></v>", b"<v>2</v>").replace(b"<v />", b"<v>2</v>"))
    assert [row.cells for row in sheets_of(changed.getvalue(), "x")[0].rows] == [("Name",), ("2",)]


def test_columns_in_which_nothing_stands_are_no_columns(tmp_path: Path):
    made = book(Chart=[HEADINGS, *HERON])
    made["Chart"].cell(row=40, column=60).value = " "
    found, _ = placed(made, tmp_path)
    assert found.unused == ()


@pytest.mark.parametrize("rows", [[["x"] * 1001] * 200, [["x"]] * 2001])
def test_what_is_too_much_is_refused_with_the_way_out(rows: list[list[str]]):
    with pytest.raises(UnusableInput, match="too much for a chart") as refused:
        sheets_of(saved(book(Chart=rows)), "x")
    assert "a workbook of its own" in str(refused.value)
