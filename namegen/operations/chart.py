"""Chart: a workspace made from a chart that exists."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from pathlib import Path

from msgspec import Struct, field
from msgspec.structs import replace

from namegen.errors import UnusableInput
from namegen.loading.charts import columns, kinds
from namegen.loading.charts.catalogue_text import catalogue_text
from namegen.loading.charts.chart import Chart, UnsureKind
from namegen.loading.charts.configuration import is_configuration, read_configuration
from namegen.loading.charts.layout import layout_of
from namegen.loading.charts.manifest_text import manifest_text
from namegen.loading.charts.reading import read_chart, robot_name
from namegen.loading.charts.tables import Table, tables_of
from namegen.loading.charts.workbooks import sheets_of
from namegen.operations.files import unreadable
from namegen.operations.new import starter_files
from namegen.operations.roots import SETTINGS_FILE
from namegen.operations.workspace import CATALOGUE_FILE
from namegen.text.terminal import printable
from namegen.text.words import Style, follows

Ask = Callable[[UnsureKind], "str | None"]
"""Asks a person what a word for a kind means; None leaves it open."""
_STYLES: tuple[Style, ...] = ("camelCase", "snake_case", "PascalCase", "kebab-case")
_STARTER_STYLE = "style: camelCase"
_STARTER_CODE = "  - {path: code/first, robots: [first]}\n"


class ReadChart(Struct, frozen=True):
    """A chart as it was understood: where its table stood, and which column is what."""

    chart: Chart
    how: str
    guess: Mapping[str, str] = field(default_factory=dict)
    unused: tuple[str, ...] = ()
    others: tuple[str, ...] = ()
    """Sheets that were not read."""


def read(
    path: Path, wished: Sequence[str], answered: Sequence[str], ask: Ask | None = None
) -> ReadChart:
    """Return what a chart says, asking about each word for a kind that is not sure.

    Args:
        path: the chart: CSV with commas, semicolons or tabs, or .xlsx.
        wished: which columns are meant, ``port=Plugged in,name=Called``.
        answered: what words for kinds mean, ``prop=motor``.
        ask: asks a person; None leaves the rows among the misfits.

    Raises:
        UnusableInput: the chart cannot be read, or no headings are understood.
    """
    wishes, answers = columns.wishes(wished), kinds.answers(answered)
    tables = _tables(path)
    robot = robot_name(path.stem)
    if is_configuration(tables[0]) and not wishes:
        found = read_configuration(tables[0], robot)
        return ReadChart(Chart((found,)), "as the target config-csv writes it")
    laid = layout_of(tables, wishes, str(path), sheets=bool(tables[0].title))
    chart = read_chart(laid.entries, answers, robot)
    if ask and chart.unsure:
        said = {unsure.word: kind for unsure in chart.unsure if (kind := ask(unsure))}
        chart = read_chart(laid.entries, {**said, **answers}, robot)
    if not chart.robots:
        raise UnusableInput(
            "no rows stand below the headings", where=str(path), remedy="fill the chart in first"
        )
    chart = replace(chart, above=laid.above, asides=(*laid.asides, *chart.asides))
    return ReadChart(chart, laid.how, laid.guess, laid.unused, laid.others)


def files_of(chart: Chart, source: str) -> dict[str, bytes]:
    """Return the files of a workspace for the robots of a chart."""
    name = printable(source)
    texts = {
        SETTINGS_FILE: _settings(chart),
        CATALOGUE_FILE: catalogue_text(chart.robots, name),
    }
    for robot in chart.robots:
        asides = chart.asides if robot is chart.robots[0] else ()
        texts[f"robots/{robot.name}.yaml"] = manifest_text(robot, name, chart.above, asides)
    return {path: text.encode("utf-8") for path, text in texts.items()}


def _tables(path: Path) -> list[Table]:
    try:
        data = path.read_bytes()
    except OSError as error:
        raise unreadable(str(path), error) from error
    if path.suffix.lower() in {".xlsx", ".xlsm"} or data.startswith(b"PK\3\4"):
        return sheets_of(data, str(path))
    return tables_of(data, str(path))


def _settings(chart: Chart) -> str:
    """Return the starter's settings for these robots, in the style that most names follow."""
    text = starter_files()[SETTINGS_FILE].decode("utf-8")
    names = [placed.device.name for robot in chart.robots for placed in robot.placed]
    style = max(_STYLES, key=lambda style: sum(follows(name, style) for name in names))
    code = "".join(
        f"  - {{path: code/{robot.name}, robots: [{robot.name}]}}\n" for robot in chart.robots
    )
    text = text.replace(_STARTER_STYLE, f"style: {style}")
    return text.replace(_STARTER_CODE, code)
