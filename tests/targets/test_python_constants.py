"""Python constants, judged by CPython, ruff, black, mypy and pyright."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

from targets.boats import HERON, device, robot

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
    kinds = {"motor": "Motor", "servo": "Servo", "switch": "Switch", "net-winch": "NetWinch"}
    for manifest in hostile_robots:
        names = run(make("python-constants", manifest, "devices.py"))
        assert names["ROBOT"] == manifest.robot
        assert names["SETUP"] == (manifest.selected or "")
        for one in manifest.devices.values():
            value = getattr(names[kinds[one.kind]], one.identifiers["python"])
            assert value == one.name
            assert type(value) is str


def test_formatters_change_nothing(make, tmp_path, hostile_robots):
    for index, manifest in enumerate(hostile_robots):
        text = make("python-constants", manifest, "devices.py")
        (tmp_path / f"devices{index}.py").write_text(text, encoding="utf-8", newline="")
    assert_formatted(tmp_path)


def test_long_names_and_kinds_stay_formatted(make, tmp_path):
    rows = [device("n" * n, "motor", "bridge motor 1") for n in (20, 45, 46, 47, 60, 83, 200)]
    rows += [device("x", "k" * n, identifiers={"python": "A" * n}) for n in (34, 70, 85, 200)]
    rows = [device(f"{one.name}{i}", one.kind, identifiers=one.identifiers)
            for i, one in enumerate(rows)]  # fmt: skip
    for index, options in enumerate([{}, {"kinds_from": "shared.kinds"}]):
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


def test_kinds_from_one_module_type_check_in_shared_code(make, tmp_path: Path):
    (tmp_path / "kinds.py").write_text(
        "from typing import NewType\n"
        + "".join(
            f'{kind}Name = NewType("{kind}Name", str)\n'
            for kind in ("Motor", "Servo", "Level", "Switch", "Temperature", "Imu", "Lamp")
        )
    )
    for name in ("heron", "dipper"):
        text = make("python-constants", HERON, f"{name}.py", kinds_from="kinds")
        (tmp_path / f"{name}.py").write_text(text, encoding="utf-8")
    (tmp_path / "use.py").write_text(
        "import dipper\nimport heron\nfrom kinds import MotorName\n"
        "def drive(motor: MotorName) -> None: ...\n"
        "drive(heron.Motor.BOW_THRUSTER)\ndrive(dipper.Motor.BOW_THRUSTER)\n"
    )
    mypy = checked("mypy", "--strict", "use.py", cwd=tmp_path)
    assert mypy.returncode == 0, mypy.stdout
