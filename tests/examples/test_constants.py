"""Names typed by hand become constants, and the programs do the same before and after."""

from __future__ import annotations

import re
import shutil
from pathlib import Path

import pytest
from examples.test_mending import PROGRAMS, run_program


def test_python_programs_do_the_same_with_constants(boatclub: Path, namegen):
    namegen("build", cwd=boatclub)
    namegen("audit", "--fix-suggested", cwd=boatclub)
    shutil.copytree(boatclub / "mended/code", boatclub / "code", dirs_exist_ok=True)
    before = {program: run_program(boatclub, program) for program in PROGRAMS}
    namegen("audit", "--constants", "--fix", cwd=boatclub)
    for program, run in before.items():
        after = run_program(boatclub, program)
        assert (after.returncode, after.stdout) == (0, run.stdout), after.stderr
    skim = (boatclub / "code/heron/skim.py").read_text()
    assert "from boatlib import Boat, Sounder\nfrom devices import Distance, Motor, Servo\n" in skim
    assert "boat.motor(Motor.BOW_THRUSTER)" in skim
    assert namegen("audit", "--constants", "--diff", cwd=boatclub).stdout == ""


def test_code_that_cannot_reach_the_constants_is_left_and_said(boatclub: Path, namegen):
    namegen("build", cwd=boatclub)
    namegen("audit", "--fix", cwd=boatclub)
    shutil.copytree(boatclub / "mended/code", boatclub / "code", dirs_exist_ok=True)
    old = {p: p.read_bytes() for p in boatclub.glob("code/*/*.py")}
    done = namegen("audit", "--constants", "--fix", cwd=boatclub)
    assert "several robots" in done.stderr
    assert "no way to import code/heron/devices.py" in done.stderr
    for name in ("common/watch.py", "heron-tank/soak.py"):
        assert (boatclub / "code" / name).read_bytes() == old[boatclub / "code" / name]


def test_java_comes_back_as_its_writers_wrote_it(boatclub: Path, namegen):
    namegen("build", cwd=boatclub)
    trip = boatclub / "code/dipper/club/boats/SampleTrip.java"
    written = trip.read_text()
    built = (trip.parent / "DipperDevices.java").read_text()
    names = dict(re.findall(r'String (\w+) = ("\w+");', built))
    typed = re.sub(r"DipperDevices\.\w+\.(\w+)", lambda match: names[match[1]], written)
    assert typed != written and '"sternThruster"' in typed
    trip.write_text(typed)
    namegen("audit", "code/dipper", "--constants", "--fix", cwd=boatclub)
    assert trip.read_text() == written


def shown(folder: Path) -> dict[str, bytes]:
    return {str(p.relative_to(folder)): p.read_bytes() for p in folder.rglob("*") if p.is_file()}


@pytest.mark.parametrize("fix", ["--fix", "--fix-suggested"])
def test_one_run_with_constants_gives_what_two_runs_give(boatclub: Path, namegen, fix: str):
    namegen("build", cwd=boatclub)
    other = Path(shutil.copytree(boatclub, boatclub.parent / "other"))
    patch = namegen("audit", "--constants", fix, "--diff", cwd=boatclub).stdout
    once = namegen("audit", "--constants", fix, cwd=boatclub)
    namegen("audit", fix, cwd=other)
    namegen("audit", "--constants", "--fix", cwd=other)
    assert shown(boatclub) == shown(other)
    assert "boat.motor(Motor.BOW_THRUSTER)" in (boatclub / "code/heron/skim.py").read_text()
    added = [line[1:] for line in patch.splitlines() if line.startswith("+ ")]
    text = "\n".join(p.read_text() for p in boatclub.glob("code/**/*.py"))
    assert len(added) >= 10 and all(line in text for line in added)
    again = namegen("audit", "--constants", fix, cwd=boatclub)
    assert shown(boatclub) == shown(other) and "mended 0 names in 0 files" in again.stderr
    assert once.returncode == again.returncode == 1
