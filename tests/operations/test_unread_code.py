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
SCRIPT = 'let bow = boat.get("bowThruster");\nlet rudder = boat.get("rudder");\n'
TARGET = {
    "own/script/target.yaml": "model: 1\ndescription: A script.\nper: robot\n"
    "template: names.j2\nescapes: [plain_line]\n",
    "own/script/names.j2": "// {{ robot.name | plain_line }}\n",
}
CODE = "  - {path: code/heron, robots: [heron]}\n"


@pytest.fixture
def mixed(boats: Path) -> Path:
    """A boat whose code is in two languages, one of which is not read."""
    return lay(boats, {"code/heron/rest.js": SCRIPT, "code/heron/notes.txt": "rudder"})


def unread(root: Path, selection: Selection | None = None) -> list[str]:
    return list(code_files(open_workspace(root), selection or Selection()).unread)


def test_what_is_not_read_is_told(mixed: Path):
    assert unread(mixed) == ["code/heron/rest.js"]
    assert audit(open_workspace(mixed)).report.unread == ("code/heron/rest.js",)
    assert unread(mixed, Selection((mixed / "code/heron/main.py",))) == []


@pytest.mark.parametrize("ending", ["c", "go", "js", "JS", "swift", "rs", "ipynb"])
def test_endings(boats: Path, ending: str):
    lay(boats, {f"code/heron/rest.{ending}": SCRIPT})
    assert unread(boats) == [f"code/heron/rest.{ending}"]


def test_what_namegen_made_or_the_entry_leaves_out_is_not(mixed: Path):
    settings = FILES["namegen.yaml"].replace(
        "build:\n",
        'templates: own\nbuild:\n  - target: script\n    to: "code/{robot}/devices.js"\n',
    )
    lay(mixed, {"namegen.yaml": settings, **TARGET})
    build.write(build.plan(open_workspace(mixed)))
    assert (mixed / "code/heron/devices.js").exists()
    assert unread(mixed) == ["code/heron/rest.js"]
    excluded = CODE.replace("]}", "], exclude: ['*.js']}")
    lay(mixed, {"namegen.yaml": settings.replace(CODE, excluded)})
    assert unread(mixed) == []


def test_a_device_that_only_such_code_may_use_is_not_called_unused(mixed: Path):
    lay(mixed, {"code/heron/main.py": 'boat.motor("bowThruster"); boat.motor("sternThruster")\n'})
    assert audit(open_workspace(mixed)).report.findings == ()
    (mixed / "code/heron/rest.js").unlink()
    assert [one.kind for one in audit(open_workspace(mixed)).report.findings] == ["unused-device"]


def test_the_last_look_says_it_of_the_robot_that_runs_the_code(mixed: Path):
    lay(mixed, {"robots/dipper.yaml": FILES["robots/heron.yaml"].replace("heron", "dipper")})
    assert [(one.robot, one.unread) for one in ready(open_workspace(mixed)).robots] == [
        ("dipper", ()),
        ("heron", ("code/heron/rest.js",)),
    ]
    assert ready(open_workspace(mixed), ["dipper"]).report.unread == ()


def test_a_rename_tells_the_lines_that_it_cannot_change(mixed: Path):
    left = rename(open_workspace(mixed), "bowThruster", "bowPusher").left
    assert [(str(one.place), one.text) for one in left] == [
        ("code/heron/rest.js:1:21", "bowThruster")
    ]


def test_the_command_says_it_in_every_form(namegen: Run, mixed: Path):
    said = "1 file of code was not read, for the language (.js): code/heron/rest.js."
    assert said in " ".join(namegen("audit", cwd=mixed).stdout.split())
    assert said in namegen("audit", "--report", "json", cwd=mixed).stderr
    alone = namegen("audit", "code/heron/rest.js", cwd=mixed).stdout
    assert alone.startswith("Nothing was read.") and "Nothing wrong" not in alone
    assert "  code            1 file (.js) not read" in namegen("ready", cwd=mixed).stdout
