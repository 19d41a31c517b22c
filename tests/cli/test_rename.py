"""``namegen rename`` says what it would do, and which outputs it could not take along."""

from __future__ import annotations

from pathlib import Path


def test_a_dry_look_names_the_outputs_that_would_follow(namegen, boatclub: Path):
    namegen("build", cwd=boatclub)
    before = {path: path.read_bytes() for path in boatclub.rglob("*") if path.is_file()}
    done = namegen("rename", "netWinch", "netReel", "--diff", cwd=boatclub)
    assert "would write sheets/heron.md" in done.stdout.splitlines()
    assert {path: path.read_bytes() for path in boatclub.rglob("*") if path.is_file()} == before


def test_an_output_that_keeps_the_old_name_is_told(namegen, boatclub: Path):
    namegen("build", cwd=boatclub)
    sheet = boatclub / "sheets/heron.md"
    sheet.write_text(
        sheet.read_text(encoding="utf-8") + "spare fuse in the lid\n", encoding="utf-8"
    )
    for option in (["--diff"], []):
        done = namegen("rename", "netWinch", "netReel", *option, cwd=boatclub)
        assert "kept sheets/heron.md: edited by hand; " in done.stdout
    assert "netWinch" in sheet.read_text(encoding="utf-8")


def test_one_manifest_of_a_workspace_is_not_renamed_alone(namegen, boatclub: Path):
    before = {path: path.read_bytes() for path in boatclub.rglob("*") if path.is_file()}
    words = ("rename", "netWinch", "netReel", "--manifest", "robots/heron.yaml")
    done = namegen(*words, cwd=boatclub)
    assert done.returncode == 2 and f"--workspace {boatclub}" in " ".join(done.stderr.split())
    assert {path: path.read_bytes() for path in boatclub.rglob("*") if path.is_file()} == before
    (boatclub / "namegen.yaml").rename(boatclub / ".git")  # a checkout, and no workspace
    assert namegen(*words, cwd=boatclub).returncode == 0
