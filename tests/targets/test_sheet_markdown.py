"""The setup sheet, read with markdown-it, which follows CommonMark and its table extension."""

from __future__ import annotations

import itertools

from msgspec.structs import replace

from namegen.model.sheet_mark import sheet_mark
from namegen.targets.escapes.plain import line
from targets.boats import CATALOGUE, HERON, device, robot
from targets.sheets import Sheet, read


def table(sheet: Sheet, heading: str) -> list[list[str]]:
    (found,) = [rows for above, rows in sheet.tables if above == heading]
    return found[1:]


def test_hostile_text_makes_no_markup_and_no_cell(make, hostile_robots):
    for manifest in hostile_robots:
        text = make("sheet-markdown", manifest)
        sheet = read(text)
        assert sheet.strangers == [], text
        for heading, rows in sheet.tables:
            widths = {len(row) for row in rows}
            assert len(widths) == 1, (heading, rows)
        raw_cells = [row for row in text.splitlines() if row.startswith("|")]
        heads = [row for row in raw_cells if row.startswith("| ---")]
        below = itertools.groupby(text.splitlines(), key=lambda row: row.startswith("|"))
        for rows in (list(group) for is_table, group in below if is_table):
            assert {row.count("|") for row in rows} == {rows[0].count("|")}
        assert len(raw_cells) == sum(len(rows) for _, rows in sheet.tables) + len(heads)


def test_hostile_names_are_shown_in_full(make, hostile_robots):
    for manifest in hostile_robots:
        chosen = manifest.devices_in()
        if chosen:
            rows = table(read(make("sheet-markdown", manifest)), "Test each device")
            assert [row[0] for row in rows] == [line(one.name) for one in chosen]
            assert [row[2] for row in rows] == [line(one.does) for one in chosen]


def test_every_device_of_the_setup_is_somewhere_to_be_plugged_in(make, hostile_robots):
    for manifest in hostile_robots:
        sheet = read(make("sheet-markdown", manifest))
        places = [rows for heading, rows in sheet.tables if not heading.startswith("To change")]
        cells = [cell for rows in places[:-1] for row in rows[1:] for cell in row]
        for one in manifest.devices_in():
            listed = {port for port in one.ports if port.controller in manifest.controllers}
            times = len(listed) + (len(listed) < len(set(one.ports)) or not one.ports)
            assert cells.count(line(one.name)) >= times


def empty(sheet: Sheet, controller: str) -> list[str]:
    return [text for heading, text in sheet.items if heading == f"Leave empty on {controller}"]


def test_ports_with_something_in_them_stand_in_the_order_of_the_labels(make):
    rows = table(read(make("sheet-markdown")), "servo ports of stern")
    assert [(row[0], row[1], row[6]) for row in rows] == [
        ("servo 3", "servo", "Steers"),
        (
            "servo 4",
            "servo (may be absent)",
            "Opens the hatch over the basket, so that what the net brought in slides out"
            " (Grease the hinge)",
        ),
    ]


def test_empty_and_dead_ports_are_one_line_for_each_type(make):
    sheet = read(make("sheet-markdown"))
    assert empty(sheet, "stern") == [
        "motor: 2, 3",
        "servo: 1, 5; dead: 2",
        "digital: 1, 2, 3, 4, 5, 6",
        "analog: A, B, C",
        "i2c: 1, 2",
        "serial: 1, 2",
    ]
    assert "**dead: 2**" in make("sheet-markdown")
    # Nothing goes into these, so they have no table.
    assert not [name for _, name in sheet.headings if name == "digital ports of stern"]


def test_each_port_is_in_a_table_or_in_a_line_and_once(make):
    crowded = robot(*(device(f"m{at}", "motor", f"bridge motor {at}") for at in (1, 2, 3)))
    for manifest in (HERON, crowded, robot()):
        sheet = read(make("sheet-markdown", manifest))
        for name, controller in manifest.controllers.items():
            left = dict(text.split(": ", 1) for text in empty(sheet, name))
            for port_type, labels in CATALOGUE.boards[controller.board].ports.items():
                heading = f"{port_type} ports of {name}"
                rows = [row for above, rows in sheet.tables if above == heading for row in rows]
                told = left.get(port_type, "").replace("; dead: ", ", ").removeprefix("dead: ")
                listed = [row[0].removeprefix(f"{port_type} ") for row in rows[1:]]
                assert sorted([*listed, *filter(None, told.split(", "))]) == sorted(labels)


def test_a_device_that_does_nothing_special_is_named_by_its_kind_once(make):
    plain = robot(device("rudder", "servo", "stern servo 3"))
    (row,) = table(read(make("sheet-markdown", plain)), "servo ports of stern")
    assert row == ["servo 3", "servo", "", "rudder", "small letters only", "", ""]


def test_an_uplink_is_not_an_empty_port(make):
    sheet = read(make("sheet-markdown"))
    assert [row[1] for row in table(sheet, "serial ports of bridge")] == ["Controller stern"]
    assert "serial: 2" in empty(sheet, "bridge")


def test_a_device_in_a_dead_port_is_called_out(make):
    sheet = read(make("sheet-markdown", robot(device("rudder", "servo", "stern servo 2"))))
    assert table(sheet, "servo ports of stern")[0][1] == "servo PORT IS DEAD"


def test_cautions_come_first_then_what_to_select_and_the_mark(make):
    text = make("sheet-markdown")
    sheet = read(text)
    assert [name for level, name in sheet.headings if level == 2] == [
        "Before you start",
        "Select and compare",
        "Plug in and type",
        "Port not yet decided",
        "To change over to tank-test",
        "Test each device",
        "Numbers for programs",
    ]
    assert "Setup to select: `harvest`" in text
    assert f"Sheet mark: **{sheet_mark(HERON)}**" in text


def test_cautions_defer_to_others_and_unplug_the_battery(make):
    before = make("sheet-markdown").partition("## Select")[0]
    assert "Unplug the battery before you plug or unplug anything" in before
    assert "supervising adult say comes before this sheet" in before


def test_capitals_are_called_out_beside_the_name(make):
    assert "| `bowThruster` | capital T |" in make("sheet-markdown")


def test_built_in_devices_are_only_to_be_checked(make):
    sheet = read(make("sheet-markdown"))
    (heading,) = [name for _, name in sheet.headings if name.startswith("Built into bridge")]
    assert heading == "Built into bridge: nothing to plug in, check only"
    assert table(sheet, heading) == [["compass", "imu", "heading", "small letters only"]]


def test_other_setups_say_what_changes(make):
    rows = table(read(make("sheet-markdown")), "To change over to tank-test")
    assert rows == [
        ["unplug", "netWinch", "bridge motor 3", ""],
        ["move", "rudder", "stern servo 3", "stern servo 1"],
    ]
    back = replace(HERON, selected="tank-test")
    rows = table(read(make("sheet-markdown", back)), "To change over to harvest")
    assert rows == [
        ["plug in", "netWinch", "", "bridge motor 3"],
        ["move", "rudder", "stern servo 1", "stern servo 3"],
    ]


def test_two_devices_on_a_bus_have_a_row_each(make):
    shared = robot(
        device("hullTemp", "temperature", "bridge i2c 1", address=0x3A),
        device("airTemp", "temperature", "bridge i2c 1", address=0x4),
    )
    rows = table(read(make("sheet-markdown", shared)), "i2c ports of bridge")
    assert [(row[0], row[3], row[5]) for row in rows] == [
        ("i2c 1", "hullTemp", "0x3A"),
        ("i2c 1", "airTemp", "0x04"),
    ]
