"""The kinds that robots share: code for two of them type-checks, and formatters change nothing."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from namegen.model.manifests import Manifest
from namegen.targets.rendering import render
from namegen.targets.scene import Scene
from namegen.targets.shelf import load
from targets.boats import CATALOGUE, HERON, device, robot
from targets.test_python_constants import assert_formatted, checked

DIPPER = robot(
    device("bowThruster", "motor", "bridge motor 2"),
    device("ladle", "net-winch", "bridge motor 3"),
    name="dipper",
)


def kinds(*robots: Manifest) -> str:
    return render(load()["python-kinds"], Scene(robots, CATALOGUE), "shared/kinds.py").text


@pytest.fixture
def workspace(make, tmp_path: Path) -> Path:
    """Return a folder with the kinds of two robots, their constants and an empty package."""
    (tmp_path / "shared").mkdir()
    (tmp_path / "shared" / "__init__.py").touch()
    (tmp_path / "shared" / "kinds.py").write_text(kinds(HERON, DIPPER))
    for boat in (HERON, DIPPER):
        text = make("python-constants", boat, "x.py", kinds_from="shared.kinds", former_names=True)
        (tmp_path / f"{boat.robot}.py").write_text(text)
    return tmp_path


def test_one_function_serves_two_robots_and_refuses_another_kind(workspace):
    (workspace / "use.py").write_text(
        "import dipper\n"
        "import heron\n"
        "from shared.kinds import MotorName, NetWinchName\n"
        "def drive(motor: MotorName) -> None: ...\n"
        "def haul(winch: NetWinchName) -> None: ...\n"
        "drive(heron.Motor.BOW_THRUSTER)\n"
        "drive(heron.Motor.FRONT_THRUSTER)\n"
        "drive(dipper.Motor.BOW_THRUSTER)\n"
        "haul(dipper.NetWinch.LADLE)\n"
        "drive(dipper.NetWinch.LADLE)  # wrong\n"
        "drive(heron.Servo.RUDDER)  # wrong\n"
    )
    mypy = checked("mypy", "--strict", "use.py", cwd=workspace)
    found = re.findall(r"^(\S+):(\d+): error", mypy.stdout, re.M)
    assert found == [("use.py", "10"), ("use.py", "11")]
    run = checked("use", cwd=workspace)
    assert run.returncode == 0, run.stderr


def test_formatters_change_nothing(workspace):
    (workspace / "none.py").write_text(kinds(robot(name="raft")))
    (workspace / "long.py").write_text(kinds(robot(device("a", "k" * 40), device("b", "l" * 200))))
    assert_formatted(workspace)


def test_each_kind_stands_once_whatever_the_order_of_the_robots():
    assert kinds(HERON, DIPPER) == kinds(DIPPER, HERON)
    assert kinds(HERON, DIPPER).count("MotorName = ") == 1
