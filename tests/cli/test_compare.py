"""``namegen compare`` on files, robots and lists that a start-up module printed."""

from __future__ import annotations

import json
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from namegen.loading.charts.configuration import HEADINGS

AS_FOUND = """\
import sys
sys.path[:0] = [{library!r}, {code!r}]
from boatlib import Boat
from start_up import as_found
print(as_found(Boat("heron", {setup!r})), end="")
"""


@pytest.fixture
def built(namegen, boatclub: Path) -> Path:
    namegen("build", cwd=boatclub)
    assert (boatclub / "code/heron/start_up.py").is_file()
    return boatclub


def read_off(boatclub: Path, setup: str) -> Path:
    """Run the generated start-up module on the invented library, and keep what it prints."""
    library, code = boatclub / "library/python", boatclub / "code/heron"
    program = AS_FOUND.format(library=str(library), code=str(code), setup=setup)
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, cwd=boatclub, check=True
    )
    path = boatclub / "found.csv"
    path.write_bytes(done.stdout)
    return path


def report(namegen, folder: Path, *words: str) -> list[dict[str, str]]:
    done = namegen("compare", *words, "--report", "json", cwd=folder)
    found = json.loads(done.stdout)["findings"]
    serious = any(one["severity"] != "note" for one in found)
    assert done.returncode == (1 if serious else 0)
    return found


def kinds(namegen, folder: Path, *words: str) -> list[tuple[str, str]]:
    return [(one["kind"], one["found"]) for one in report(namegen, folder, *words)]


def test_what_a_program_found_agrees_with_the_manifest_it_was_built_from(namegen, built: Path):
    read_off(built, "harvest")
    assert kinds(namegen, built, "heron", "found.csv") == []


def test_a_machine_with_another_setup_is_one_finding(namegen, built: Path):
    read_off(built, "tank-test")
    assert kinds(namegen, built, "heron", "found.csv") == [("other-setup", "tank-test")]
    assert kinds(namegen, built, "heron", "found.csv", "--setup", "tank-test") == []


def test_two_files_anywhere(namegen, boatclub: Path, tmp_path: Path):
    old = tmp_path / "old"
    shutil.copytree(boatclub, old)
    manifest = boatclub / "robots/heron.yaml"
    text = manifest.read_text(encoding="utf-8")
    manifest.write_text(text.replace("bridge motor 3", "bridge motor 2"), encoding="utf-8")
    words = str(old / "robots/heron.yaml"), str(manifest)
    assert kinds(namegen, tmp_path, *words) == [("moved", "netWinch")]
    done = namegen("compare", *words, cwd=tmp_path)
    assert '"netWinch" is at bridge motor 2' in " ".join(done.stdout.split())
    assert "port: bridge motor 2" in done.stdout and "port: bridge motor 3" in done.stdout


def test_nothing_differs_from_itself(namegen, boatclub: Path):
    for robot in ("heron", "dipper", "kingfisher"):
        assert kinds(namegen, boatclub, robot, robot) == []


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("heron", "herron"), "neither a file nor a robot"),
        (("heron", "herron"), 'did you mean "heron"?'),
        (("heron", "config/heron.csv"), "a configuration that namegen wrote"),
        (("heron", "empty.csv"), "no column `name`"),
        (("empty.csv", "empty.csv"), "both are as-found lists"),
        (("heron", "dipper", "--setup", "harvest"), "leave --setup out"),
        (("heron", "names.csv", "--setup", "harvst"), 'has no setup "harvst"'),
        (("heron", "names.csv", "--setup", "harvst"), 'did you mean "harvest"?'),
        (("heron", "broken.yaml"), "mend these lines first"),
        (("heron", "robots"), "cannot be read"),
    ],
)
def test_what_cannot_be_compared_is_told(namegen, boatclub: Path, words, told: str):
    (boatclub / "empty.csv").write_text("")
    (boatclub / "names.csv").write_text("name\nrudder\n")
    (boatclub / "broken.yaml").write_text("robot: [")
    if "config/heron.csv" in words:
        (boatclub / "config").mkdir()
        (boatclub / "config/heron.csv").write_text(",".join(HEADINGS) + "\n")
    done = namegen("compare", *words, cwd=boatclub)
    assert done.returncode == 2
    assert told in " ".join(done.stderr.split())


LIST = """\
Device,Plugged in,{title}
bowThruster,Bridge Motor 3,yes
sternThruster,stern motor K,yes
netWinch,bridge motor 1,yes
"""


@pytest.mark.parametrize(("title", "advice"), [("note", "Exchange the"), ("found", "exchange the")])
def test_two_plugs_exchanged_are_told_of_a_list_with_usual_titles(
    namegen, boatclub: Path, title: str, advice: str
):
    (boatclub / "found.csv").write_text(LIST.format(title=title))
    found = [
        one for one in report(namegen, boatclub, "heron", "found.csv") if one["kind"] != "missing"
    ]
    assert [(one["kind"], one["found"]) for one in found] == [("swapped", "bowThruster")]
    assert advice in found[0]["message"]
    assert ("built from another manifest" in found[0]["message"]) == (title == "found")


@pytest.mark.parametrize("stand", ["", "code", ".."])
def test_paths_are_told_from_the_workspace_wherever_one_stands(namegen, boatclub: Path, stand: str):
    (boatclub / "found.csv").write_text("name\nbowthruster\n")
    names = [str(boatclub / path) for path in ("robots/heron.yaml", "found.csv")]
    told = report(namegen, boatclub / stand, *names, "--workspace", str(boatclub))
    paths = {one["path"] for one in told}
    assert "found.csv" in paths and paths <= {"found.csv", "robots/heron.yaml", "shared/hull.yaml"}


def test_the_order_of_manifest_and_list_says_nothing(namegen, boatclub: Path):
    (boatclub / "names.csv").write_text("name\nbowthruster\n")
    one = namegen("compare", "heron", "names.csv", cwd=boatclub).stdout
    assert one == namegen("compare", "names.csv", "heron", cwd=boatclub).stdout
    assert 'names.csv has "bowthruster"' in one


def test_an_audit_of_a_robot_names_its_code(namegen, boatclub: Path):
    done = namegen("audit", "kingfisher", cwd=boatclub)
    assert done.returncode == 2
    assert "`namegen audit code/kingfisher code/common`" in done.stderr


def test_an_address_that_the_catalogue_gives_is_the_manifests(namegen, boatclub: Path):
    manifest = boatclub / "robots/heron.yaml"
    text = manifest.read_text(encoding="utf-8")
    (boatclub / "old.yaml").write_text(text.replace("../shared", "shared"), encoding="utf-8")
    without = text.replace("    address: 0x3A\n", "")  # the kind has it in catalogue.yaml
    assert without != text
    manifest.write_text(without, encoding="utf-8")
    assert kinds(namegen, boatclub, "old.yaml", "heron") == []
    (boatclub / "found.csv").write_text("name,address\nrangeBow,0x3A\n")
    found = report(namegen, boatclub, "heron", "found.csv")
    assert {one["kind"] for one in found} == {"missing"}
    (boatclub / "found.csv").write_text("name,address\nrangeBow,0x3B\n")
    other = [one for one in report(namegen, boatclub, "heron", "found.csv")
             if one["kind"] == "behaviour-changed"]  # fmt: skip
    assert [one["severity"] for one in other] == ["warning"]
    assert "is at 0x3B in found.csv and at 0x3A in robots/heron.yaml" in other[0]["message"]


def test_kinds_in_other_words_are_the_same_kinds(namegen, boatclub: Path):
    (boatclub / "found.csv").write_text(
        "Device,Type\nbowThruster,Motor\nrudder,servo motor\nnetWinch,Servo\n"
    )
    assert [
        one for one in kinds(namegen, boatclub, "heron", "found.csv") if one[0] != "missing"
    ] == [("kind-changed", "netWinch")]


def test_two_files_of_one_name_are_told_apart(namegen, boatclub: Path, tmp_path: Path):
    here = tmp_path / "here"
    shutil.copytree(boatclub, here)
    manifest = here / "robots/heron.yaml"
    text = manifest.read_text(encoding="utf-8")
    manifest.write_text(text.replace("bridge motor 3", "bridge motor 2"), encoding="utf-8")
    words = "heron", "robots/heron.yaml", "--workspace", str(boatclub)
    (one,) = report(namegen, here, *words)
    assert one["path"] == manifest.as_posix()
    shown = namegen("compare", *words, cwd=here).stdout
    assert "port: bridge motor 2" in shown and "port: bridge motor 3" in shown
