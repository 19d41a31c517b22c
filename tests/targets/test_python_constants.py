"""Python constants, judged by CPython, ruff, black, mypy and pyright."""

from __future__ import annotations

import json
import re
import subprocess
import sys
import warnings
from pathlib import Path

import pytest

from namegen.errors import UnusableTarget
from targets.boats import device, robot
from targets.facts_of import header_of, numbers_of, rows_of, texts_of

USE = """\
from devices import Motor, MotorName, Servo

def drive(motor: MotorName) -> None: ...

drive(Motor.BOW_THRUSTER)
drive(Servo.RUDDER)  # wrong: a servo's name
drive("bowThruster")  # wrong: a raw literal
Motor.BOW_THRUSTER = Motor.NET_WINCH  # wrong: bound again
text: str = Motor.BOW_THRUSTER
"""
WRONG = [n for n, line in enumerate(USE.splitlines(), 1) if "# wrong" in line]


def run(source: str) -> dict[str, object]:
    names: dict[str, object] = {"__name__": "devices"}
    exec(compile(source, "devices.py", "exec"), names)
    return names


def checked(*words: str | Path, cwd: Path) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", *words], cwd=cwd, capture_output=True, text=True, check=False
    )


def assert_formatted(folder: Path) -> None:
    for formatter in (
        ["ruff", "format", "--isolated", "--diff"],
        ["black", "--workers=1", "--diff"],
    ):
        done = checked(*formatter, ".", cwd=folder)
        assert done.returncode == 0 and not done.stdout, done.stdout + done.stderr


def test_cpython_reads_back_every_name(make, hostile_robots):
    for manifest in hostile_robots:
        names = run(make("python-constants", manifest, "devices.py", former_names=True))
        header = names["ROBOT"], names["SETUP"], names["SHEET_MARK"]
        assert header == header_of(manifest)
        with warnings.catch_warnings():
            warnings.simplefilter("ignore", FutureWarning)
            for (kind, constant), text in texts_of(manifest, "python"):
                value = getattr(names[kind], constant)
                assert value == text
                assert type(value) is str
        for constant, number in numbers_of(manifest, "python"):
            assert getattr(names["Numbers"], constant) == number
        assert list(map(tuple, names["DEVICES"])) == list(rows_of(manifest))


def test_formatters_change_nothing(make, tmp_path, hostile_robots):
    for index, manifest in enumerate(hostile_robots):
        text = make("python-constants", manifest, "devices.py", former_names=True)
        (tmp_path / f"devices{index}.py").write_text(text, encoding="utf-8", newline="")
    assert_formatted(tmp_path)


def test_long_names_and_kinds_stay_formatted(make, tmp_path):
    rows = [device("n" * n, "motor", "bridge motor 1") for n in (20, 45, 46, 47, 60, 83, 200)]
    rows += [device("x", "k" * n, identifiers={"python": "A" * n}) for n in (34, 70, 85, 200)]
    rows = [device(f"{one.name}{i}", one.kind, identifiers=one.identifiers)
            for i, one in enumerate(rows)]  # fmt: skip
    rows += [device(f"{'q' * n}", "x", formerly=("o" * n,)) for n in (30, 45, 55, 57, 70, 200)]
    choices = [{}, {"kinds_from": "shared.kinds"}, {"former_names": True}]
    for index, options in enumerate(choices):
        text = make("python-constants", robot(*rows), "devices.py", **options)
        (tmp_path / f"devices{index}.py").write_text(text, encoding="utf-8")
    assert_formatted(tmp_path)


def test_mypy_and_pyright_reject_what_is_wrong(make, tmp_path: Path):
    (tmp_path / "devices.py").write_text(make("python-constants"), encoding="utf-8")
    (tmp_path / "use.py").write_text(USE, encoding="utf-8")
    mypy = checked("mypy", "--strict", "--no-error-summary", "use.py", "devices.py", cwd=tmp_path)
    lines = [line.split(":") for line in mypy.stdout.splitlines() if ": error:" in line]
    assert [(words[0], int(words[1])) for words in lines] == [("use.py", n) for n in WRONG]
    pyright = checked("pyright", "--outputjson", "use.py", "devices.py", cwd=tmp_path)
    found = json.loads(pyright.stdout)["generalDiagnostics"]
    places = [(Path(one["file"]).name, one["range"]["start"]["line"] + 1) for one in found]
    assert places == [("use.py", n) for n in WRONG]


def test_one_device_alone_stays_formatted(make, tmp_path):
    for n in (1, 20, 40, 60):
        boat = robot(device("n" * n, "motor", "bridge motor 1"))
        (tmp_path / f"devices{n}.py").write_text(make("python-constants", boat, "devices.py"))
    assert_formatted(tmp_path)


def test_a_former_name_type_checks_and_warns_where_it_is_used(make, tmp_path):
    text = make("python-constants", path="devices.py", former_names=True)
    (tmp_path / "devices.py").write_text(text, encoding="utf-8")
    (tmp_path / "use.py").write_text(
        "from devices import Motor, MotorName\n"
        "today: MotorName = Motor.BOW_THRUSTER\n"
        "before: MotorName = Motor.FRONT_THRUSTER\n"
        "assert before == today\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", "import use"],
        cwd=tmp_path, capture_output=True, text=True, check=True,
    )  # fmt: skip
    (warned,) = re.findall(r"use\.py:(\d+): FutureWarning: (.*)", done.stderr)
    assert warned == ("3", "Motor.FRONT_THRUSTER is now Motor.BOW_THRUSTER")
    mypy = checked("mypy", "--strict", "use.py", "devices.py", cwd=tmp_path)
    assert mypy.returncode == 0, mypy.stdout
    pyright = checked("pyright", "use.py", "devices.py", cwd=tmp_path)
    assert pyright.returncode == 0, pyright.stdout


def test_former_names_only_when_asked_for(make):
    text = make("python-constants", path="devices.py")
    assert "FRONT_THRUSTER" not in text and "warn" not in text


@pytest.mark.parametrize("target", ["python-constants", "python-kinds"])
@pytest.mark.parametrize("name", ["heron-devices", "2nd", "class"])
def test_a_file_that_no_program_could_import_is_refused(make, target, name):
    with pytest.raises(UnusableTarget, match=f"option module: '{name}' cannot be used"):
        make(target, path=f"code/{name}.py")
    assert make(target, path=f"code/{name}.py", module="devices") == make(target, path="devices.py")
