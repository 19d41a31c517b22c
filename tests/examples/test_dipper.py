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


def test_javac_accepts_dippers_code_after_a_rename(
    boatclub: Path, namegen, tool: Callable[[str], str]
):
    javac = tool("javac")
    namegen("build", cwd=boatclub)
    trip = boatclub / "code/dipper/club/boats/SampleTrip.java"
    before = trip.read_text(encoding="utf-8")
    assert before.count("DipperDevices.Motor.SAMPLE_PUMP") > 0
    done = namegen("rename", "samplePump", "waterPump", cwd=boatclub)
    assert "changed code/dipper/club/boats/SampleTrip.java" in done.stdout
    after = trip.read_text(encoding="utf-8")
    assert after == before.replace("Motor.SAMPLE_PUMP", "Motor.WATER_PUMP")
    sources = [
        *boatclub.glob("library/java/club/boatlib/*.java"),
        *boatclub.glob("code/dipper/club/boats/*.java"),
    ]
    compiled = subprocess.run(
        [javac, "--release", "17", "-Xlint:all,-options", "-Werror", "-d", boatclub / "out"]
        + sources,
        capture_output=True,
        text=True,
        check=False,
    )
    assert compiled.returncode == 0, compiled.stderr
