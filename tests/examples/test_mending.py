"""The whole job on the example: after the fixes and the hand edits all is clean, and runs."""

from __future__ import annotations

import json
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
import yaml

MISTAKES = yaml.safe_load(Path(__file__).with_name("mistakes.yaml").read_text(encoding="utf-8"))
FIXABLE = [mistake for mistake in MISTAKES if "fix" in mistake]
PROGRAMS = [
    "code/heron/drive.py",
    "code/heron/self_test.py",
    "code/heron/skim.py",
    "code/heron/dock.py",
    "code/heron/tow.py",
    "code/heron/visit.py",
    "code/heron-tank/soak.py",
    "code/kingfisher/drive.py",
    "code/kingfisher/cut.py",
    "code/kingfisher/patrol.py",
]
RIGHT_FROM_THE_START = {
    "code/heron/drive.py",
    "code/heron/self_test.py",
    "code/heron/visit.py",
    "code/kingfisher/drive.py",
}


def run_program(folder: Path, program: str) -> subprocess.CompletedProcess[str]:
    """Run a boat's program against the stand-in library."""
    return subprocess.run(
        [sys.executable, "library/run.py", program],
        cwd=folder,
        capture_output=True,
        text=True,
        timeout=30,
        check=False,
    )


@pytest.fixture
def built(boatclub: Path, namegen) -> Path:
    done = namegen("build", cwd=boatclub)
    assert done.returncode == 0, done.stdout + done.stderr
    return boatclub


def test_the_manifests_have_no_finding_at_all(boatclub: Path, namegen):
    done = namegen("verify", "--report", "json", cwd=boatclub)
    assert json.loads(done.stdout)["findings"] == []
    assert done.returncode == 0


def test_what_was_built_is_current(built: Path, namegen):
    assert namegen("build", "--stale", cwd=built).returncode == 0


def test_programs_stop_at_their_mistakes_and_run_once_mended(built: Path, namegen):
    for program in PROGRAMS:
        done = run_program(built, program)
        if program in RIGHT_FROM_THE_START:
            assert done.returncode == 0, done.stderr
        else:
            assert "NotFitted" in done.stderr, program

    namegen("audit", "--fix-suggested", cwd=built)
    shutil.copytree(built / "mended", built, dirs_exist_ok=True)

    again = namegen("audit", "--report", "json", cwd=built)
    assert json.loads(again.stdout)["findings"] == []
    assert again.returncode == 0
    for program in PROGRAMS:
        done = run_program(built, program)
        assert done.returncode == 0, done.stderr


@pytest.mark.parametrize(
    ("option", "applied"), [("--fix", {"safe"}), ("--fix-suggested", {"safe", "suggested"})]
)
def test_a_fix_changes_the_names_and_no_other_byte(
    built: Path, namegen, option: str, applied: set[str]
):
    before = {path: path.read_bytes() for path in built.rglob("*") if path.is_file()}
    expected = dict(before)
    for mistake in FIXABLE:
        if mistake["fix"] in applied:
            path = built / mistake["file"]
            wrong, right = (f'"{mistake[key]}"'.encode() for key in ("text", "expected"))
            expected[path] = expected[path].replace(wrong, right)

    for _ in ("once", "twice"):
        namegen("audit", option, cwd=built)
        after = {path: path.read_bytes() for path in built.rglob("*") if path.is_file()}
        assert after == expected


def test_a_diff_shows_the_fixes_and_writes_nothing(built: Path, namegen):
    before = {path: path.read_bytes() for path in built.rglob("*") if path.is_file()}
    done = namegen("audit", "--fix-suggested", "--diff", cwd=built)
    assert {path: path.read_bytes() for path in built.rglob("*") if path.is_file()} == before
    for mistake in FIXABLE:
        assert f'"{mistake["text"]}"' in done.stdout
        assert f'"{mistake["expected"]}"' in done.stdout
