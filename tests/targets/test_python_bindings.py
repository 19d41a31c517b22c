"""Python bindings, judged by formatters and type checkers and run on an invented library."""

from __future__ import annotations

import csv
import io
import json
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from namegen.errors import UnusableTarget
from targets.boats import HERON, device, robot
from targets.standins import PYTHON
from targets.test_python_constants import assert_formatted, checked

STANDINS = Path(__file__).with_name("standins")
ALL = tuple(HERON.devices)


@pytest.fixture
def started(make, tmp_path):
    """Return a function that runs lines of Python with the module and a boat's devices."""

    def run(fitted, lines, manifest=HERON, **options):
        text = make("python-bindings", manifest, "start_up.py", **{**PYTHON, **options})
        (tmp_path / "start_up.py").write_text(text, encoding="utf-8")
        source = f"import start_up\nfrom boatlib import Boat\nboat = Boat(*{fitted!r})\n{lines}"
        return subprocess.run(
            [sys.executable, "-X", "utf8", "-c", source],
            cwd=tmp_path, env={"PYTHONPATH": str(STANDINS)},
            capture_output=True, text=True, encoding="utf-8", check=False,
        )  # fmt: skip

    return run


def without(*names: str) -> list[str]:
    return [name for name in ALL if name not in names]


def test_each_device_is_looked_up_once_and_is_a_field(started):
    done = started(
        ALL, "d = start_up.start(boat)\nprint(d.bow_thruster.name, type(d.rudder).__name__)\n"
        "print(*boat.asked)"
    )  # fmt: skip
    assert done.stdout == f"bowThruster Hinge\n{' '.join(ALL)}\n"
    assert done.stderr == ""


@pytest.mark.parametrize("null", [False, True])
def test_what_is_missing_is_told_in_one_message_and_what_may_be_absent_is_warned_of(started, null):
    options = {"missing": "", "look_up": {"*": "boat.find({name}, {type})"}} if null else {}
    done = started(
        without("hatchServo", "rudder", "bumpBow"),
        "try: start_up.start(boat)\nexcept start_up.MissingDevices as error: print(error)",
        **options,
    )
    assert done.stdout == (
        f"{mark()}: 2 devices were not found.\n"
        "  rudder (servo): should be at stern servo 3\n"
        "  bumpBow (switch): should be at bridge digital 2\n"
        "Check the plugs, and the names in the machine's configuration.\n"
    )
    assert done.stderr == (
        f"{mark()}: absent, as these may be:\n  hatchServo (servo): should be at stern servo 4\n"
    )


def mark() -> str:
    from namegen.model.sheet_mark import sheet_mark

    return f"heron, setup harvest, sheet mark {sheet_mark(HERON)}"


def test_an_absent_device_is_none(started):
    done = started(without("hatchServo"), "print(start_up.start(boat).hatch_servo)")
    assert done.stdout == "None\n"


def test_a_machine_with_the_other_setup_is_told_which(started):
    done = started(
        without("netWinch"),
        "try: start_up.start(boat)\nexcept start_up.MissingDevices as error: print(error)",
    )
    assert done.stdout == (
        f"{mark()}: 1 device was not found.\n"
        "  netWinch (motor): should be at bridge motor 3\n"
        "This fits tank-test; select harvest on the machine, or change `selected` in "
        "robots/heron.yaml.\n"
    )


def test_a_setup_with_more_devices_is_looked_for_where_one_is_missing(started):
    tank = replace(HERON, selected="tank-test")
    lines = "try: start_up.start(boat)\nexcept start_up.MissingDevices as error: print(error)"
    assert "fits" not in started(without("rudder"), lines, tank).stdout
    lines = "print(start_up.as_found(boat))"
    assert "netWinch,motor,bridge motor 3,yes\n" in started(ALL, lines, tank).stdout


def test_the_as_found_list_is_csv_with_hostile_names(started):
    names = ["a,b", '"q"', "x\ny", "it's", "\u202eRTL", "\\", "船", "n" * 200]
    boat = robot(*(device(name, "motor", identifiers={"python": f"D{i}"})
                   for i, name in enumerate(names)))  # fmt: skip
    done = started(names[1:], "print(start_up.as_found(boat), end='')", boat)
    rows = list(csv.reader(io.StringIO(done.stdout)))
    assert rows[0] == ["name", "kind", "port", "found"]
    assert [[row[0].removeprefix("'"), row[3]] for row in rows[1:]] == [
        [name, "no" if name == "a,b" else "yes"] for name in names
    ]


def test_formatters_change_nothing(make, tmp_path, hostile_robots):
    for index, manifest in enumerate([HERON, robot(), *hostile_robots]):
        text = make("python-bindings", manifest, "start_up.py", **PYTHON)
        (tmp_path / f"start_up{index}.py").write_text(text, encoding="utf-8", newline="")
    assert_formatted(tmp_path)


def test_mypy_and_pyright_know_each_field(make, tmp_path):
    (tmp_path / "boatlib.py").write_text((STANDINS / "boatlib.py").read_text())
    (tmp_path / "start_up.py").write_text(make("python-bindings", path="start_up.py", **PYTHON))
    (tmp_path / "use.py").write_text(
        "from boatlib import Boat, Drive, Hinge\nfrom start_up import start\n"
        "devices = start(Boat())\ndrive: Drive = devices.bow_thruster\n"
        "hinge: Hinge = devices.hatch_servo  # wrong: may be None\n"
        "drive = devices.rudder  # wrong: a servo\n"
    )
    files = ("use.py", "start_up.py")
    mypy = checked("mypy", "--strict", "--no-error-summary", *files, cwd=tmp_path)
    places = [line.split(":")[:2] for line in mypy.stdout.splitlines() if ": error:" in line]
    assert places == [["use.py", "5"], ["use.py", "6"]], mypy.stdout
    found = json.loads(checked("pyright", "--outputjson", *files, cwd=tmp_path).stdout)
    places = [(Path(one["file"]).name, one["range"]["start"]["line"] + 1)
              for one in found["generalDiagnostics"]]  # fmt: skip
    assert places == [("use.py", 5), ("use.py", 6)]


@pytest.mark.parametrize(
    ("names", "complaint"),
    [
        (["class"], '"class" would be the field "class", which cannot be used: it is a keyword'),
        (["float"], "the generated code needs this word itself"),
        (["bow thruster", "bowThruster"], 'which is the field of "bow thruster" too'),
    ],
)
def test_fields_that_cannot_be(make, names, complaint):
    manifest = robot(*(device(name, "motor") for name in names))
    with pytest.raises(UnusableTarget) as caught:
        make("python-bindings", manifest, "start_up.py", **PYTHON)
    assert complaint in str(caught.value)
    assert "identifiers: {python: MOTOR_" in str(caught.value)
