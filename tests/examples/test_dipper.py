"""Dipper's Java compiles with the built constants without a warning, and runs."""

from __future__ import annotations

import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest


@pytest.mark.parametrize("release", ["8", "17"])
def test_javac_accepts_dippers_code(
    boatclub: Path, namegen, tool: Callable[[str], str], release: str
):
    javac, java = tool("javac"), tool("java")
    assert namegen("build", "dipper", cwd=boatclub).returncode == 0
    sources = [
        *boatclub.glob("library/java/club/boatlib/*.java"),
        *boatclub.glob("code/dipper/club/boats/*.java"),
    ]
    assert {"DipperDevices.java", "DipperStartUp.java"} <= {path.name for path in sources}
    out = boatclub / "out"
    compiled = subprocess.run(
        [javac, "--release", release, "-Xlint:all,-options", "-Werror", "-d", out, *sources],
        capture_output=True,
        text=True,
        check=False,
    )
    assert compiled.returncode == 0, compiled.stderr
    for program, said, times in (
        ("SampleTrip", "samplePump: runs at 90 %", 3),
        ("Visit", "dipper, sheet mark ", 1),
    ):
        ran = subprocess.run(
            [java, "-cp", "out", f"club.boats.{program}"],
            cwd=boatclub,
            capture_output=True,
            text=True,
            check=False,
        )
        assert ran.returncode == 0, ran.stderr
        assert ran.stdout.count(said) == times
