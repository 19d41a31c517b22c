"""A workspace from a chart, as a person makes it."""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path
from subprocess import CompletedProcess

import pytest

from namegen.errors import UnusableInput
from namegen.loading.charts.chart import UnsureKind
from namegen.operations import chart
from namegen.operations.workspace import open_workspace

Run = Callable[..., "CompletedProcess[str]"]
CHART = """\
Boats of the club;;;;;
;;;;;
Robot;Called;Plugged into;What;Purpose;Wire
heron;bowThruster;bridge M1;Motor;Pushes the bow;red
heron;rudder;bridge: servo-1;Servo;Steers;
heron;bumpBow;bridge digital 2;bumper;;blue
dipper;netWinch;bridge/M1;Motor;;
dipper;sternThruster;Motor Port 2;prop;;
"""


@pytest.fixture
def paper(tmp_path: Path) -> Path:
    path = tmp_path / "club chart.csv"
    path.write_text(CHART, encoding="cp1252")
    return path


def test_a_chart_becomes_a_workspace_that_builds(namegen: Run, tmp_path: Path, paper: Path):
    done = namegen("new", "boats", "--from", str(paper), "--kind", "prop=motor", cwd=tmp_path)
    assert done.returncode == 0, done.stdout + done.stderr
    space = open_workspace(tmp_path / "boats")
    found = {m.robot: [str(d.ports[0]) for d in m.devices.values()] for m in space.manifests}
    assert found == {
        "dipper": ["bridge motor 1", "bridge motor 2"],
        "heron": ["bridge motor 1", "bridge servo 1", "bridge digital 2"],
    }
    assert space.catalogue.boards["bridge-board"].ports == {
        "motor": ("1", "2"), "servo": ("1",), "digital": ("2",),
    }  # fmt: skip
    built = namegen("build", cwd=tmp_path / "boats")
    assert built.returncode == 0, built.stdout + built.stderr
    assert (tmp_path / "boats/code/heron/devices.py").is_file()


def test_the_guess_and_what_was_not_placed_are_shown(namegen: Run, tmp_path: Path, paper: Path):
    done = namegen("new", "boats", "--from", str(paper), cwd=tmp_path)
    assert done.returncode == 1
    assert "port       from the column Plugged into" in done.stdout
    assert '"bumper" is taken for the kind switch' in done.stdout
    assert "line 8: dipper | sternThruster | Motor Port 2 | prop" in done.stdout
    assert '--kind "prop=motor"' in done.stdout
    text = (tmp_path / "boats/robots/dipper.yaml").read_text()
    assert "# line 8: dipper | sternThruster | Motor Port 2 | prop" in text
    assert "# Boats of the club" in text
    assert "# Wire: red" in (tmp_path / "boats/robots/heron.yaml").read_text()


def test_a_file_that_exists_is_not_overwritten(namegen: Run, tmp_path: Path, paper: Path):
    (tmp_path / "robots").mkdir()
    (tmp_path / "robots/heron.yaml").write_text("mine")
    done = namegen("new", "--from", str(paper), cwd=tmp_path)
    assert done.returncode == 2 and "already there: robots/heron.yaml" in done.stderr
    assert (tmp_path / "robots/heron.yaml").read_text() == "mine"
    assert not (tmp_path / "catalogue.yaml").exists()


@pytest.mark.parametrize(
    "words",
    [
        ("--from", "none.csv"),
        ("--from", "."),
        ("--columns", "port=Where"),
        ("--kind", "prop=motor"),
        ("robot", "wren", "--from", "club chart.csv"),
        ("boats", "--from", "club chart.csv", "--columns", "prot=Called"),
        ("boats", "--from", "club chart.csv", "--columns", "port=Nowhere"),
        ("boats", "--from", "club chart.csv", "--kind", "prop"),
    ],
)
def test_what_cannot_be_used_writes_nothing(
    namegen: Run, tmp_path: Path, paper: Path, words: tuple[str, ...]
):
    done = namegen("new", *words, cwd=tmp_path)
    assert done.returncode == 2 and done.stderr.strip()
    assert list(tmp_path.iterdir()) == [paper]


def test_a_person_is_asked_once_for_each_word(paper: Path):
    asked: list[UnsureKind] = []

    def ask(unsure: UnsureKind) -> str | None:
        asked.append(unsure)
        return "motor"

    found = chart.read(paper, (), (), ask)
    assert asked == [UnsureKind("prop", ("line 8",), "motor")]
    assert found.chart.misfits == ()
    assert [m.line for m in chart.read(paper, (), (), lambda _: None).chart.misfits] == [8]


def test_names_decide_the_style(tmp_path: Path):
    path = tmp_path / "heron.csv"
    path.write_text("Name,Port,Kind\nbow_thruster,M1,motor\nnet_winch,M2,motor\n")
    files = chart.files_of(chart.read(path, (), ()).chart, path.name)
    assert b"style: snake_case" in files["namegen.yaml"]
    assert b"code/heron, robots: [heron]" in files["namegen.yaml"]
    assert b"first" not in files["namegen.yaml"]


def test_config_csv_makes_the_same_outputs_again(namegen: Run, tmp_path: Path, boats: Path):
    settings = boats / "namegen.yaml"
    extra = '  - target: config-csv\n    to: "{robot}.csv"\n'
    settings.write_text(settings.read_text() + extra)
    assert namegen("build", cwd=boats).returncode == 0
    done = namegen("new", "again", "--from", str(boats / "heron.csv"), cwd=tmp_path)
    assert done.returncode == 0, done.stdout + done.stderr
    again = tmp_path / "again/namegen.yaml"
    again.write_text(again.read_text() + extra)
    assert namegen("build", cwd=tmp_path / "again").returncode == 0
    assert (tmp_path / "again/heron.csv").read_bytes() == (boats / "heron.csv").read_bytes()


def test_a_workbook(tmp_path: Path):
    openpyxl = pytest.importorskip("openpyxl")
    book = openpyxl.Workbook()
    book.active.title = "Ideas"
    book.active.append(["perhaps a bell"])
    sheet = book.create_sheet("Chart")
    sheet.append(["Pond boats"])
    sheet.append(["Board", "Port type", "Number", "Device name", "Kind", "Optional"])
    sheet.append(["bridge", "Motor", 1, "bowThruster", "Motor", None])
    sheet.append(["bridge", "Servo", 4.0, "hatchServo", "Servo", True])
    book.save(tmp_path / "heron.xlsx")
    found = chart.read(tmp_path / "heron.xlsx", (), ())
    placed = [one.device for one in found.chart.robots[0].placed]
    assert [str(one.ports[0]) for one in placed] == ["bridge motor 1", "bridge servo 4"]
    assert [one.optional for one in placed] == [False, True]
    assert found.how == 'on the sheet "Chart"' and found.others == ('on the sheet "Ideas"',)


def test_a_damaged_workbook_and_a_missing_openpyxl(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    (tmp_path / "heron.xlsx").write_bytes(b"PK\3\4 no more")
    with pytest.raises(UnusableInput, match="cannot be read as a workbook"):
        chart.read(tmp_path / "heron.xlsx", (), ())
    monkeypatch.setitem(sys.modules, "openpyxl", None)
    with pytest.raises(UnusableInput, match=r"pip install 'namegen\[xlsx\]'"):
        chart.read(tmp_path / "heron.xlsx", (), ())
