"""Charts as schools and clubs make them, and what each is taken for.

``papers/<name>.csv`` is the chart; ``papers/<name>.txt`` what a person who reads it
would say: the devices, what is no device, and what is left to ask. The charts are
made up after common practice; there is no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from namegen.loading.charts.chart import Chart
from namegen.operations.chart import read

PAPERS = Path(__file__).with_name("papers")
NAMES = sorted(path.stem for path in PAPERS.glob("*.csv"))


def said(chart: Chart) -> Iterator[str]:
    """Yield what was understood, a line for each row of the chart and each remark."""
    for robot in chart.robots:
        yield f"{robot.name}:"
        for placed in robot.placed:
            device = placed.device
            ports = ", ".join(map(str, device.ports)) or "undecided"
            address = "" if device.address is None else f" at 0x{device.address:02X}"
            flags = " reversed" * device.reversed + " optional" * device.optional
            yield f"  {device.name}: {device.kind} in {ports}{address}{flags}"
            yield from (f"    # {text}" for text in placed.remarks)
            yield from (f"    ? {text}" for text in placed.odd)
        yield from (f"  free: {port}" for port in robot.free)
    yield from (f"{one.place}: {one.why}" for one in chart.asides)
    for misfit in chart.misfits:
        yield f"{misfit.place} not placed: {misfit.why}"
        yield f"  {misfit.remedy}"


@pytest.mark.parametrize("name", NAMES)
def test_a_chart_is_read_as_a_person_would(name: str):
    chart = read(PAPERS / f"{name}.csv", (), ()).chart
    expected = (PAPERS / f"{name}.txt").read_text(encoding="utf-8")
    assert "\n".join(said(chart)) + "\n" == expected


@pytest.mark.parametrize("name", NAMES)
def test_each_row_below_the_headings_is_told_of(name: str):
    path = PAPERS / f"{name}.csv"
    chart = read(path, (), ()).chart
    told = {one.line for robot in chart.robots for one in robot.placed}
    told |= {one.line for one in chart.misfits}
    told |= {int(one.place.removeprefix("line ")) for one in chart.asides}
    lines = path.read_text(encoding="utf-8").splitlines()
    said_something = {at for at, line in enumerate(lines, 1) if line.strip(",;|- ")}
    above = said_something - told
    assert above == set(range(1, max(above) + 1)) & said_something, "only titles above are not told"
