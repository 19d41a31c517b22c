"""The program that starts with the bindings: typed, and told when another setup is selected."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path


def visit(folder: Path, *words: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "library/run.py", "code/heron/visit.py", *words],
        cwd=folder,
        capture_output=True,
        text=True,
        check=False,
    )


def test_nothing_moves_when_the_wrong_setup_is_selected(boatclub: Path, namegen):
    assert namegen("build", cwd=boatclub).returncode == 0
    right, wrong = visit(boatclub), visit(boatclub, "tank-test")
    assert (right.returncode, right.stderr) == (0, "")
    assert "rudder: swings" in right.stdout
    assert wrong.returncode == 1
    assert "swings" not in wrong.stdout
    assert "netWinch (motor): should be at bridge motor 3" in wrong.stderr
    assert "This fits tank-test; select harvest on the machine" in wrong.stderr


def test_mypy_knows_the_devices(boatclub: Path, namegen):
    """The library's own types reach the program through the generated module."""
    assert namegen("build", cwd=boatclub).returncode == 0
    (boatclub / "code/heron/wrong.py").write_text(
        "from boatlib import Boat\nfrom start_up import start\n\n"
        'start(Boat("heron")).rudder.push(0.5)\n'
        'start(Boat("heron")).hatch_servo.swing(40)\n'
    )
    done = subprocess.run(
        [sys.executable, "-m", "mypy", "--strict", "visit.py", "wrong.py"],
        cwd=boatclub / "code/heron",
        env={**os.environ, "MYPYPATH": str(boatclub / "library/python")},
        capture_output=True,
        text=True,
        check=False,
    )
    lines = [line for line in done.stdout.splitlines() if ": error:" in line]
    assert [line.split(" error: ")[0] for line in lines] == ["wrong.py:4:", "wrong.py:5:"], lines
    assert '"Hinge" has no attribute "push"' in lines[0]
    assert 'Item "None" of "Hinge | None" has no attribute "swing"' in lines[1]
