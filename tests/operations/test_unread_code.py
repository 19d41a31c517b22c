"""Code in languages that are not read is counted, so that silence about it is not trusted."""

from __future__ import annotations

import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

from namegen.operations import build
from namegen.operations.audit import audit
from namegen.operations.code_files import Selection, code_files
from namegen.operations.ready import ready
from namegen.operations.rename import rename
from namegen.operations.workspace import open_workspace
from tests.operations.conftest import FILES, lay

Run = Callable[..., "subprocess.CompletedProcess[str]"]
KOTLIN = 'val bow = boat.get<Motor>("bowThruster")\nval rudder = boat.get<Servo>("rudder")\n'
CODE = "  - {path: code/heron, robots: [heron]}\n"


@pytest.fixture
def mixed(boats: Path) -> Path:
    """A boat whose code is in two languages, one of which is not read."""
    return lay(boats, {"code/heron/Rest.kt": KOTLIN, "code/heron/notes.txt": "rudder"})


def unread(root: Path, selection: Selection | None = None) -> list[str]:
    return list(code_files(open_workspace(root), selection or Selection()).unread)


def test_what_is_not_read_is_told(mixed: Path):
    assert unread(mixed) == ["code/heron/Rest.kt"]
    assert audit(open_workspace(mixed)).report.unread == ("code/heron/Rest.kt",)
    assert unread(mixed, Selection((mixed / "code/heron/main.py",))) == []


@pytest.mark.parametrize("ending", ["kt", "KT", "c", "go", "js", "ipynb"])
def test_endings(boats: Path, ending: str):
    lay(boats, {f"code/heron/rest.{ending}": KOTLIN})
    assert unread(boats) == [f"code/heron/rest.{ending}"]


def test_what_namegen_made_or_the_entry_leaves_out_is_not(mixed: Path):
    settings = FILES["namegen.yaml"].replace(
        "build:\n", 'build:\n  - target: kotlin-constants\n    to: "code/{robot}/Devices.kt"\n'
    )
    lay(mixed, {"namegen.yaml": settings})
    build.write(build.plan(open_workspace(mixed)))
    assert (mixed / "code/heron/Devices.kt").exists()
    assert unread(mixed) == ["code/heron/Rest.kt"]
    excluded = CODE.replace("]}", "], exclude: ['*.kt']}")
    lay(mixed, {"namegen.yaml": settings.replace(CODE, excluded)})
    assert unread(mixed) == []


def test_a_device_that_only_such_code_may_use_is_not_called_unused(mixed: Path):
    lay(mixed, {"code/heron/main.py": 'boat.motor("bowThruster"); boat.motor("sternThruster")\n'})
    assert audit(open_workspace(mixed)).report.findings == ()
    (mixed / "code/heron/Rest.kt").unlink()
    assert [one.kind for one in audit(open_workspace(mixed)).report.findings] == ["unused-device"]


def test_the_last_look_says_it_of_the_robot_that_runs_the_code(mixed: Path):
    lay(mixed, {"robots/dipper.yaml": FILES["robots/heron.yaml"].replace("heron", "dipper")})
    assert [(one.robot, one.unread) for one in ready(open_workspace(mixed)).robots] == [
        ("dipper", ()),
        ("heron", ("code/heron/Rest.kt",)),
    ]
    assert ready(open_workspace(mixed), ["dipper"]).report.unread == ()


def test_a_rename_tells_the_lines_that_it_cannot_change(mixed: Path):
    left = rename(open_workspace(mixed), "bowThruster", "bowPusher").left
    assert [(str(one.place), one.text) for one in left] == [
        ("code/heron/Rest.kt:1:28", "bowThruster")
    ]


def test_the_command_says_it_in_every_form(namegen: Run, mixed: Path):
    said = "1 file of code was not read, for the language (.kt): code/heron/Rest.kt."
    assert said in " ".join(namegen("audit", cwd=mixed).stdout.split())
    assert said in namegen("audit", "--report", "json", cwd=mixed).stderr
    alone = namegen("audit", "code/heron/Rest.kt", cwd=mixed).stdout
    assert alone.startswith("Nothing was read.") and "Nothing wrong" not in alone
    assert "  code            1 file (.kt) not read" in namegen("ready", cwd=mixed).stdout
