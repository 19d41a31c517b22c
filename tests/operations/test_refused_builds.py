"""A build that cannot be done leaves every old file whole, and says what to do."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from namegen.operations.files import PART_SUFFIX
from namegen.operations.record import RECORD_FILE
from tests.operations.conftest import FILES, lay

resource = pytest.importorskip("resource", reason="limits of a process are POSIX's")
Run = Callable[..., "subprocess.CompletedProcess[str]"]
OWN = "model: 1\ndescription: A list.\nper: robot\ntemplate: list.j2\nescapes: [plain_line]\n"
ENTRY = '  - target: crew-list\n    to: "lists/{robot}.txt"\ntemplates: own\n'
DEVICES, CONFIG = "code/heron/devices.py", "config/heron.json"


def contents(root: Path) -> dict[str, bytes]:
    """Return every file below a folder, links not followed."""
    return {
        path.relative_to(root).as_posix(): path.read_bytes()
        for path in sorted(root.rglob("*"))
        if path.is_file() and not path.is_symlink()
    }


@pytest.fixture
def club(boats: Path, namegen: Run) -> Path:
    """Two robots, built once, and their manifests changed since: every output is stale."""
    second = FILES["robots/heron.yaml"].replace("robot: heron", "robot: kingfisher")
    lay(boats, {"robots/kingfisher.yaml": second})
    assert namegen("build", cwd=boats).returncode == 0
    for robot in ("heron", "kingfisher"):
        path = boats / f"robots/{robot}.yaml"
        path.write_text(path.read_text().replace("bridge motor 1", "bridge motor 3"))
    return boats


def change(path: Path, old: str, new: str) -> None:
    text = path.read_text()
    assert old in text
    path.write_text(text.replace(old, new))


def folder_in_the_way(root: Path) -> str:
    (root / CONFIG).unlink()
    (root / CONFIG).mkdir()
    return "a folder stands where this file should go"


def file_as_parent(root: Path) -> str:
    change(root / "namegen.yaml", "config/{robot}.json", "catalogue.yaml/{robot}.json")
    return "a file stands where this output needs a folder: catalogue.yaml"


def one_path_for_two(root: Path) -> str:
    change(root / "namegen.yaml", "config/{robot}.json", "config/all.json")
    row = "config-json for {} (namegen.yaml:13:9)"
    return f"two outputs go to one path: {row.format('heron')} and {row.format('kingfisher')}"


def one_path_but_for_capitals(root: Path) -> str:
    change(root / "namegen.yaml", "config/{robot}.json", "Code/{robot}/Devices.py")
    rows = "python-constants for heron (namegen.yaml:11:9) and config-json for heron ("
    return f"two outputs go to one path: {rows}namegen.yaml:13:9)"


def one_path_by_two_spellings(root: Path) -> str:
    change(root / "namegen.yaml", "config/{robot}.json", "config/../code/{robot}/devices.py")
    return "two outputs go to one path"


def one_path_through_a_link(root: Path) -> str:
    (root / "lists").symlink_to("code")
    change(root / "namegen.yaml", "config/{robot}.json", "lists/{robot}/devices.py")
    return "two outputs go to one path"


def over_the_manifests(root: Path) -> str:
    change(root / "namegen.yaml", "config/{robot}.json", "config/../robots/{robot}.yaml")
    return "take the place of robots/heron.yaml, which namegen reads"


def over_the_settings(root: Path) -> str:
    change(root / "namegen.yaml", "config/{robot}.json", "namegen.yaml")
    return "take the place of namegen.yaml, which namegen reads"


def over_the_record(root: Path) -> str:
    change(root / "namegen.yaml", "config/{robot}.json", "namegen.outputs.json")
    return "take the place of namegen.outputs.json, which namegen reads"


def link_out_to_a_folder(root: Path) -> str:
    outside = root.parent / "outside"
    outside.mkdir()
    (root / "config").rename(outside / "config")
    (root / "config").symlink_to(outside / "config")
    return "outside the workspace"


def link_out_to_a_file(root: Path) -> str:
    (root / CONFIG).rename(root.parent / "mine.json")
    (root / CONFIG).symlink_to(root.parent / "mine.json")
    return "outside the workspace"


def write_protected(root: Path) -> str:
    (root / CONFIG).chmod(0o444)
    return "write-protected"


def failing_for_the_second_robot(root: Path) -> str:
    template = "{% if robot.name == 'kingfisher' %}{{ robot.nmae }}{% endif %}{{ robot.mark }}\n"
    lay(root, {"own/crew-list/target.yaml": OWN, "own/crew-list/list.j2": template})
    change(root / "namegen.yaml", "build:\n", f"build:\n{ENTRY.partition('templates')[0]}")
    (root / "namegen.yaml").write_text((root / "namegen.yaml").read_text() + "templates: own\n")
    return 'robot kingfisher: a robot has no "nmae"; did you mean "name"?'


def templates_by_a_path_of_this_machine(root: Path) -> str:
    lay(root, {"own/crew-list/target.yaml": OWN, "own/crew-list/list.j2": "x\n"})
    (root / "namegen.yaml").write_text(
        (root / "namegen.yaml").read_text() + f"templates: {root / 'own'}\n"
    )
    return "holds on this machine alone"


def templates_that_are_not_there(root: Path) -> str:
    (root / "namegen.yaml").write_text((root / "namegen.yaml").read_text() + "templates: own\n")
    return "names a folder that does not exist"


TROUBLES = (
    templates_by_a_path_of_this_machine,
    templates_that_are_not_there,
    folder_in_the_way,
    file_as_parent,
    one_path_for_two,
    one_path_but_for_capitals,
    one_path_by_two_spellings,
    one_path_through_a_link,
    over_the_manifests,
    over_the_settings,
    over_the_record,
    link_out_to_a_folder,
    link_out_to_a_file,
    write_protected,
    failing_for_the_second_robot,
)
FOUND_WHEN_WRITING = (write_protected,)


@pytest.mark.parametrize("trouble", TROUBLES, ids=lambda one: one.__name__)
def test_nothing_is_written_where_one_output_cannot_be(club: Path, namegen: Run, trouble):
    complaint = trouble(club)
    before = contents(club.parent)
    done = namegen("build", "--force", cwd=club)
    assert done.returncode == 2, done.stdout
    assert complaint in done.stderr
    assert len(done.stderr.splitlines()) > 1, "it says what is wrong and not what to do"
    after = contents(club.parent)
    if trouble in FOUND_WHEN_WRITING:  # the record tells old and new before a file is touched
        del before[f"boats/{RECORD_FILE}"], after[f"boats/{RECORD_FILE}"]
    assert after == before


@pytest.mark.parametrize("most", [0, 100, 400, 1_000, 1_700])
def test_a_full_disk_leaves_old_files_whole(club: Path, namegen: Run, most: int):
    """RLIMIT_FSIZE stands for the disk: a write beyond it fails, as it does where none is left."""
    before = contents(club)
    sizes = [len(before[DEVICES]), len(before[CONFIG])]
    assert most < max(sizes), "the limit would not be reached"

    def limit() -> None:
        resource.setrlimit(resource.RLIMIT_FSIZE, (most, most))

    done = subprocess.run(
        [sys.executable, "-B", "-m", "namegen", "build"],
        cwd=club,
        env={**os.environ, "PYTHONUTF8": "1"},
        capture_output=True,
        text=True,
        preexec_fn=limit,
        check=False,
    )
    assert done.returncode == 2, done.stdout
    assert "cannot be written: file too large" in done.stderr
    after = contents(club)
    assert {**after, RECORD_FILE: b""} == {**before, RECORD_FILE: b""}
    assert not [path for path in after if path.endswith(PART_SUFFIX)]
    stale = namegen("build", "--stale", cwd=club)
    assert "edited by hand" not in stale.stdout and stale.stdout.count("stale") >= 4
    assert namegen("build", cwd=club).returncode == 0
    assert namegen("build", "--stale", cwd=club).returncode == 0
