"""Headings in the words of those who write charts. Common practice, no source."""

from __future__ import annotations

import pytest

from namegen.errors import UnusableInput
from namegen.loading.charts.columns import columns_of, wishes
from namegen.loading.charts.tables import table


def guess(*rows: str, **wished: str) -> dict[str, str]:
    tables = [table([row.split("|") for row in rows], "here")]
    return columns_of(tables, wished, "chart.csv")[1].guess


@pytest.mark.parametrize(
    ("headings", "fields"),
    [
        ("Name|Port|Kind", "name port kind"),
        ("Device|Plugged into|Type", "name port kind"),
        ("Called|Where|What", "name port kind"),
        ("Controller|Port type|Port|Name|Type", "controller type port name kind"),
        ("Board|Port Type|Number|Device name|Model", "controller type port name part"),
        ("Robot|Name|Port|Purpose|Notes", "robot name port does note"),
        ("Nmae|Prot|Addres|Optionl", "name port address optional"),
        ("name (exact!)|the port|Optional?", "name port optional"),
        ("Device|Name|Port", "- name port"),
    ],
)
def test_headings_are_guessed(headings: str, fields: str):
    expected = dict(zip(fields.split(), headings.split("|"), strict=True))
    expected.pop("-", None)
    assert guess(headings) == expected


def test_headings_are_found_below_titles():
    assert guess("Boats of the club", "spring||", "Name|Port|Kind", "rudder|M1|servo") == {
        "name": "Name", "port": "Port", "kind": "Kind",
    }  # fmt: skip


def test_a_wish_outranks_the_guess():
    found = guess(
        "Name|Label at the bench|Port|Slot there", name="label at the bench", port="slot there"
    )
    assert found["name"] == "Label at the bench" and found["port"] == "Slot there"


def test_a_heading_that_is_nowhere_is_refused_with_the_headings_there_are():
    with pytest.raises(UnusableInput, match=r"Name \| Port"):
        guess("Name|Port|Kind", port="Plugged in")


def test_a_chart_without_headings_is_refused_with_the_way_out():
    with pytest.raises(UnusableInput, match="--columns"):
        guess("rudder|bridge servo 1", "netWinch|bridge motor 1")


def test_wishes_are_read():
    assert wishes(["port=Plugged in,name=Called", "kind=What"]) == {
        "port": "Plugged in", "name": "Called", "kind": "What",
    }  # fmt: skip
    with pytest.raises(UnusableInput, match='did you mean "port"'):
        wishes(["prot=Plugged in"])
    with pytest.raises(UnusableInput):
        wishes(["Plugged in"])
