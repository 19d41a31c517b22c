"""Rows of a chart -> devices; nothing of a row is lost."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from namegen.loading.catalogue import read_catalogue
from namegen.loading.charts.catalogue_text import catalogue_text
from namegen.loading.charts.chart import Chart
from namegen.loading.charts.layout import layout_of
from namegen.loading.charts.manifest_text import manifest_text
from namegen.loading.charts.reading import read_chart, robot_name
from namegen.loading.charts.tables import table
from namegen.loading.manifest import read_manifest


def read(*rows: str, **answers: str) -> Chart:
    tables = [table([row.split("|") for row in rows], "here")]
    laid = layout_of(tables, {}, "chart.csv", sheets=False)
    return read_chart(laid.entries, answers, "boat")


def ports(chart: Chart) -> dict[str, str]:
    placed = chart.robots[0].placed
    return {one.device.name: ", ".join(map(str, one.device.ports)) for one in placed}


def whys(chart: Chart) -> dict[int, str]:
    return {misfit.line: misfit.why for misfit in chart.misfits}


def test_the_only_controller_is_meant_where_none_is_named():
    chart = read("Name|Port|Kind", "a|bridge motor 1|motor", "b|M2|motor", "c|servo 1|servo")
    assert ports(chart) == {"a": "bridge motor 1", "b": "bridge motor 2", "c": "bridge servo 1"}


def test_a_chart_without_controllers_gets_one():
    assert ports(read("Name|Port|Kind", "a|M1|motor")) == {"a": "main motor 1"}


def test_with_several_controllers_none_is_guessed():
    chart = read("Name|Port|Kind", "a|bridge M1|motor", "b|stern M1|motor", "c|M2|motor")
    assert list(ports(chart)) == ["a", "b"]
    assert whys(chart) == {4: "its controller is not sure"}
    assert "`bridge motor 2`" in chart.misfits[0].remedy


def test_a_controller_is_spelled_as_it_is_first():
    chart = read("Name|Port|Kind", "a|Bridge M1|motor", "b|bridge M2|motor")
    assert ports(chart) == {"a": "Bridge motor 1", "b": "Bridge motor 2"}


def test_a_slip_in_a_controller_makes_no_new_one():
    rows = ["a|bridge M1|motor", "b|bridge M2|motor", "c|brigde M3|motor", "d|bridge2 M1|motor"]
    chart = read("Name|Port|Kind", *rows)
    assert list(ports(chart)) == ["a", "b", "d"]
    assert whys(chart) == {4: 'the controller "brigde" stands here alone, near "bridge"'}
    assert "`bridge motor 3`" in chart.misfits[0].remedy


def test_the_port_decides_the_kind_where_no_column_does():
    chart = read("Name|Port", "a|bridge motor 1", "b|bridge digital 1")
    assert [one.device.kind for one in chart.robots[0].placed] == ["motor"]
    assert whys(chart) == {3: "no column says what kind of device it is"}
    assert '--kind "b=KIND"' in chart.misfits[0].remedy


def test_an_unsure_kind_is_asked_for_once_with_what_the_port_speaks_for():
    rows = ("Name|Port|Kind", "a|bridge M1|prop", "b|bridge M2|prop", "c|bridge motor 3|Motor")
    chart = read(*rows)
    assert [(one.word, one.places) for one in chart.unsure] == [("prop", ("line 2", "line 3"))]
    assert chart.unsure[0].likely == "motor"
    assert '--kind "prop=motor"' in chart.misfits[0].remedy
    answered = read(*rows, prop="motor")
    assert answered.unsure == () and answered.misfits == ()
    assert [one.device.kind for one in answered.robots[0].placed] == ["motor"] * 3
    assert answered.readings == {"prop": "motor"}


def test_one_robot_for_each_name_in_the_column_which_holds_on_below_a_merged_cell():
    chart = read(
        "Robot|Name|Port|Kind", "heron|a|bridge M1|motor", "|b|bridge M2|motor",
        "Teal II|c|bridge M1|motor", "heron, Teal II|d|bridge servo 1|servo",
    )  # fmt: skip
    found = {r.name: [p.device.name for p in r.placed] for r in chart.robots}
    assert found == {"heron": ["a", "b", "d"], "teal-ii": ["c", "d"]}
    assert [robot.title for robot in chart.robots] == ["", "Teal II"]


def test_a_row_for_all_robots_is_in_each():
    chart = read(
        "Robot|Name|Port|Kind", "all|a|M1|motor", "heron|b|M2|motor", "dipper|c|M2|motor",
        "Both|d|S1|servo",
    )  # fmt: skip
    found = {r.name: [p.device.name for p in r.placed] for r in chart.robots}
    assert found == {"heron": ["a", "b", "d"], "dipper": ["a", "c", "d"]}
    alone = read("Robot|Name|Port|Kind", "all|a|M1|motor")
    assert [robot.name for robot in alone.robots] == ["boat"]


def test_a_name_twice_and_a_row_without_name_are_listed():
    chart = read("Name|Port|Kind", "a|bridge M1|motor", "a|bridge M2|motor", "|bridge M3|motor")
    assert whys(chart) == {3: '"a" stands in line 2 already', 4: "it has no name"}


def test_cells_that_no_field_holds_stay_as_remarks():
    chart = read(
        "Name|Port|Kind|Address|Reversed|Wire", "a|bridge i2c 1|distance|here|maybe|red|more"
    )
    placed = chart.robots[0].placed[0]
    assert placed.remarks == ("Wire: red", "more")
    assert placed.odd == ("Reversed: maybe", "Address: here")
    text = manifest_text(chart.robots[0], "c.csv")
    assert all(f"# {one}" in text for one in (*placed.remarks, *placed.odd))


@pytest.mark.parametrize(("cell", "value"), [("0x3A", 0x3A), ("58", 58), ("", None)])
def test_addresses(cell: str, value: int | None):
    chart = read("Name|Port|Kind|Address", f"a|bridge i2c 1|distance|{cell}")
    assert chart.robots[0].placed[0].device.address == value


@pytest.mark.parametrize("title", ["../../x", "..", "a/b", "CON:", "é", "", "x" * 30])
def test_a_robots_name_is_no_path(title: str):
    assert set(robot_name(title)) <= set("abcdefghijklmnopqrstuvwxyz0123456789-")


CELL = st.one_of(
    st.sampled_from(["motor", "bridge motor 1", "M1", "S2", "tbd", "x", "", "0x3A", "prop", ", ,"]),
    st.text(st.characters(exclude_categories=["Cs"], exclude_characters="\0"), max_size=8),
)


@settings(max_examples=150, deadline=None)
@given(st.lists(st.lists(CELL, min_size=9, max_size=10), min_size=1, max_size=6))
def test_no_row_is_lost_and_the_files_can_be_read(rows: list[list[str]]):
    heading = ["Name", "Port", "Kind", "Address", "Optional", "Controller", "Port type", "Wire"]
    found = table([[*heading, "Notes"], *rows], "here")
    laid = layout_of([found], {}, "chart.csv", sheets=False)
    chart = read_chart(laid.entries, {}, "boat")
    robots = chart.robots
    kept = {one.place for robot in robots for one in robot.placed}
    kept |= {one.place for one in (*chart.misfits, *chart.asides, *laid.asides)}
    assert kept == {row.place for row in found.rows[1:]}
    catalogue = read_catalogue(catalogue_text(robots, "c.csv").encode(), "catalogue.yaml").value
    assert catalogue is not None
    for robot in robots:
        yaml = manifest_text(robot, "c.csv").encode()
        loaded = read_manifest("boat.yaml", lambda _, data=yaml: data, catalogue)
        assert loaded.faults == () and loaded.value is not None, yaml.decode()
        assert list(loaded.value.devices) == [one.device.name for one in robot.placed]
        ports_back = [device.ports for device in loaded.value.devices.values()]
        assert ports_back == [one.device.ports for one in robot.placed]
