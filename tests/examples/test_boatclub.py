"""The bundled example is sound before any command of ours looks at it."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest
import yaml

from namegen.bundled import bundled

EXAMPLE = bundled("examples") / "boatclub"
MISTAKES = yaml.safe_load(Path(__file__).with_name("mistakes.yaml").read_text(encoding="utf-8"))
PYTHON = sorted(
    path
    for path in EXAMPLE.rglob("*.py")
    if path.name not in ("devices.py", "start_up.py") or "library" in path.parts
)


@pytest.mark.parametrize("path", PYTHON, ids=lambda path: path.relative_to(EXAMPLE).as_posix())
def test_python_compiles(path: Path):
    compile(path.read_bytes(), str(path), "exec")


@pytest.mark.parametrize("command", [["check"], ["format", "--check", "--line-length", "100"]])
def test_ruff_finds_nothing(command: list[str]):
    done = subprocess.run(
        [sys.executable, "-m", "ruff", command[0], "--isolated", "--no-cache", *command[1:], "."],
        cwd=EXAMPLE,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout


@pytest.mark.parametrize("mistake", MISTAKES, ids=lambda m: m.get("text") or m["expression"])
def test_a_planted_mistake_stands_once_in_its_file(mistake: dict[str, str]):
    source = (EXAMPLE / mistake["file"]).read_text(encoding="utf-8")
    wanted = f'"{mistake["text"]}"' if "text" in mistake else mistake["expression"]
    assert source.count(wanted) == 1


def test_the_files_mended_by_hand_are_those_that_no_fix_can_mend():
    by_hand = {mistake["file"] for mistake in MISTAKES if "fix" not in mistake}
    fixable = {mistake["file"] for mistake in MISTAKES if "fix" in mistake}
    mended = EXAMPLE / "mended"
    assert {path.relative_to(mended).as_posix() for path in mended.rglob("*.py")} == by_hand
    assert not by_hand & fixable
    assert {path.split("/")[-1] for path in fixable} == {"skim.py", "dock.py", "watch.py", "cut.py"}


def test_nothing_built_is_part_of_the_example():
    listed = [path.relative_to(EXAMPLE).parts[0] for path in EXAMPLE.iterdir()]
    assert not {"config", "sheets", "namegen.outputs.json"} & set(listed)
    for built in ("devices.py", "start_up.py", "DipperDevices.java", "DipperStartUp.java"):
        assert not list(EXAMPLE.rglob(f"code/**/{built}"))
