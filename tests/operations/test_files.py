"""Writing keeps every file whole: modes, links, missing permissions, outside paths."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from namegen.errors import RefusedWrite, UnusableInput
from namegen.operations.files import PART_SUFFIX, Folder


def test_a_write_keeps_the_mode_and_leaves_no_part_behind(tmp_path: Path):
    (tmp_path / "run.py").write_text("old")
    (tmp_path / "run.py").chmod(0o750)
    Folder(tmp_path).write({"run.py": b"new", "deep/er/file": b"x"})
    assert (tmp_path / "run.py").read_text() == "new"
    assert (tmp_path / "run.py").stat().st_mode & 0o777 == 0o750
    assert sorted(p.name for p in tmp_path.rglob("*")) == ["deep", "er", "file", "run.py"]


def test_a_link_stays_a_link_and_its_file_is_written(tmp_path: Path):
    (tmp_path / "real.txt").write_text("old")
    (tmp_path / "link.txt").symlink_to("real.txt")
    Folder(tmp_path).write({"link.txt": b"new"})
    assert (tmp_path / "link.txt").is_symlink()
    assert (tmp_path / "real.txt").read_text() == "new"


def test_what_an_interrupted_run_left_is_overwritten(tmp_path: Path):
    (tmp_path / f".a.txt{PART_SUFFIX}").write_text("half of the old")
    Folder(tmp_path).write({"a.txt": b"whole"})
    assert os.listdir(tmp_path) == ["a.txt"]


@pytest.mark.parametrize("path", ["../out.txt", "/etc/out.txt", "link/out.txt", "folder"])
def test_nothing_lands_outside_or_on_a_folder(tmp_path: Path, path: str):
    root = tmp_path / "root"
    (root / "folder").mkdir(parents=True)
    (root / "link").symlink_to(tmp_path)
    with pytest.raises(RefusedWrite):
        Folder(root).write({path: b"x"})
    assert not (tmp_path / "out.txt").exists()


def test_one_file_that_cannot_be_written_leaves_all_as_they_were(tmp_path: Path):
    (tmp_path / "a.txt").write_text("old a")
    (tmp_path / "b.txt").write_text("old b")
    (tmp_path / "b.txt").chmod(0o444)
    with pytest.raises(RefusedWrite, match="write-protected"):
        Folder(tmp_path).write({"a.txt": b"new a", "b.txt": b"new b"})
    assert (tmp_path / "a.txt").read_text() == "old a"
    assert (tmp_path / "b.txt").read_text() == "old b"
    assert sorted(os.listdir(tmp_path)) == ["a.txt", "b.txt"]


@pytest.mark.parametrize(("name", "what"), [("none", "no such file"), ("dir", "is a directory")])
def test_reading_says_what_is_wrong(tmp_path: Path, name: str, what: str):
    (tmp_path / "dir").mkdir()
    with pytest.raises(UnusableInput, match=what):
        Folder(tmp_path).read(name)


def test_the_overlay_is_seen_instead_of_the_disk(tmp_path: Path):
    (tmp_path / "a.txt").write_text("disk")
    folder = Folder(tmp_path).with_changes({"a.txt": b"edited", "new.txt": b"new"})
    assert (folder.read("a.txt"), folder.exists("new.txt")) == (b"edited", True)
    assert (tmp_path / "a.txt").read_text() == "disk"
