"""Python bindings, judged by formatters and type checkers and run on an invented library."""

from __future__ import annotations

import csv
import io
import json
import subprocess
import sys
from pathlib import Path

import pytest

from namegen.errors import UnusableTarget
from targets.boats import HERON, device, robot
from targets.machines import ALL, BOATS, MACHINES, arguments, transcript
from targets.standins import PYTHON
from targets.test_python_constants import assert_formatted, checked

STANDINS = Path(__file__).with_name("standins")


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


USE = """\
import importlib, sys
from boatlib import Boat
for machine in sys.argv[1:]:
    name, _, fitted = machine.partition("=")
    print("=", name)
    module, boat = importlib.import_module(name), Boat(*fitted.split(","))
    try:
        found = module.start(boat, print)
        there = ["there" if one else "absent" for one in (found.bow_thruster, found.hatch_servo)]
        print(f"bow {there[0]}, hatch {there[1]}, {len(boat.asked)} look-ups")
    except module.MissingDevices as error:
        print(error)
    print(module.as_found(boat), end="")
"""
NULL = {"missing": "", "look_up": {"*": "boat.find({name}, {type})"}}


@pytest.mark.parametrize("options", [{}, NULL], ids=["exception", "null"])
def test_what_is_said_on_a_machine(make, tmp_path, options):
    for boat, manifest in BOATS.items():
        text = make("python-bindings", manifest, f"{boat}.py", **{**PYTHON, **options})
        (tmp_path / f"{boat}.py").write_text(text, encoding="utf-8")
    (tmp_path / "use.py").write_text(USE)
    shown = subprocess.run(
        [sys.executable, "-X", "utf8", "use.py", *arguments()],
        cwd=tmp_path, env={"PYTHONPATH": str(STANDINS)}, capture_output=True, text=True, check=True,
    )  # fmt: skip
    assert shown.stdout == transcript()


def test_warnings_go_to_the_standard_error_stream(started):
    done = started(without("hatchServo"), "print(start_up.start(boat).hatch_servo)")
    assert done.stdout == "None\n"
    assert done.stderr == MACHINES["an optional one absent"].told


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
        (["float"], "it is a word that the generated code needs itself"),
        (["bow thruster", "bowThruster"], 'which is the field of "bow thruster" too'),
    ],
)
def test_fields_that_cannot_be(make, names, complaint):
    manifest = robot(*(device(name, "motor") for name in names))
    with pytest.raises(UnusableTarget) as caught:
        make("python-bindings", manifest, "start_up.py", **PYTHON)
    assert complaint in str(caught.value)
    assert "identifiers: {python: MOTOR_" in str(caught.value)
