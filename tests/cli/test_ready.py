"""``namegen ready`` as it is seen at the edge of the pond."""

from __future__ import annotations

import json
from pathlib import Path


def test_it_tells_setup_and_mark_and_what_is_left_to_people(namegen, boatclub: Path):
    assert namegen("build", cwd=boatclub).returncode in (0, 1)
    done = namegen("ready", "heron", cwd=boatclub)
    assert done.returncode == 1  # the example's planted slips
    assert "heron: NOT ready: " in done.stdout and " errors" in done.stdout
    sheet = (boatclub / "sheets/heron.md").read_text(encoding="utf-8")
    mark = done.stdout.split("sheet mark")[1].split()[0]
    assert mark in sheet and len(mark) == 4
    assert "no wire, no battery and no moving part" in " ".join(done.stdout.split())
    assert "Local rules" in done.stdout


def test_an_output_that_is_behind_is_named_with_its_remedy(namegen, boatclub: Path):
    done = namegen("ready", "heron", cwd=boatclub)
    assert "sheets/heron.md: missing; run `namegen build`" in done.stdout.splitlines()
    assert "select          harvest" in done.stdout


def test_for_programs_outputs_are_findings_too(namegen, boatclub: Path):
    for command in (["ready"], ["build", "--stale"]):
        done = namegen(*command, "heron", "--report", "json", cwd=boatclub)
        assert done.returncode == 1
        found = json.loads(done.stdout)["findings"]
        missing = {f["path"] for f in found if f["kind"] == "output-missing"}
        assert {"sheets/heron.md", "code/heron/devices.py"} <= missing
        kinds = {f["kind"] for f in found}
        assert ("letter-case" in kinds) == (command == ["ready"])  # the build reads no code
    namegen("build", "heron", cwd=boatclub)
    done = namegen("build", "heron", "--stale", "--report", "lines", cwd=boatclub)
    assert (done.returncode, done.stdout) == (0, "")
    for words in ([], ["--stale", "--diff"]):
        done = namegen("build", *words, "--report", "lines", cwd=boatclub)
        assert done.returncode == 2 and "go with --stale" in done.stderr


def test_errors_that_were_accepted_are_named_again_before_the_robot_is_switched_on(
    namegen, boatclub: Path
):
    said = namegen("audit", "--accept", cwd=boatclub).stdout
    errors = int(said.splitlines()[1].split()[0])
    assert "can stop a program" in said
    audited = namegen("audit", "code/heron", cwd=boatclub).stdout
    assert "Nothing wrong" not in audited and "accepted by `namegen audit --accept`" in audited
    namegen("build", cwd=boatclub)
    lines = namegen("ready", "heron", cwd=boatclub).stdout.splitlines()
    named = [line for line in lines if line.startswith("  accepted        ")]
    assert 0 < len(named) <= errors and any("code/heron/" in line for line in named)


def test_accepting_takes_no_other_option(namegen, boatclub: Path):
    for word in ("code/heron", "--fix", "--diff", "--constants"):
        assert namegen("audit", "--accept", word, cwd=boatclub).returncode == 2
    assert not (boatclub / "namegen.accepted.json").exists()
