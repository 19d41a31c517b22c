"""What `explain target` tells: how to write one, the options of one, and the workspace's own."""

from __future__ import annotations

import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

Run = Callable[..., "subprocess.CompletedProcess[str]"]

OWN = """\
model: 1
description: Port list for the harbour board.
per: robot
template: ports.j2
"""


@pytest.fixture
def club(boatclub: Path) -> Path:
    """The example with a target of its own."""
    own = boatclub / "my-templates/harbour-ini"
    own.mkdir(parents=True)
    (own / "target.yaml").write_text(OWN)
    (own / "ports.j2").write_text("")
    settings = boatclub / "namegen.yaml"
    settings.write_text(settings.read_text() + "templates: my-templates\n")
    return boatclub


def test_the_workspaces_own_target_is_told_with_the_bundled_ones(club: Path, namegen: Run):
    every = namegen("explain", "target", cwd=club)
    assert every.returncode == 0
    assert "harbour-ini        Port list for the harbour board." in every.stdout
    assert "config-json" in every.stdout
    one = namegen("explain", "target", "harbour-ini", cwd=club)
    assert (one.returncode, one.stdout.splitlines()[0]) == (0, "harbour-ini")


def test_the_options_of_one_are_told_without_a_workspace(tmp_path: Path, namegen: Run):
    done = namegen("explain", "target", "java-constants", cwd=tmp_path)
    assert (done.returncode, done.stderr) == (0, "")
    assert "\n  - target: java-constants\n" in done.stdout
    assert '\n  package (text, default "")\n' in done.stdout
    assert "sheet-markdown" not in done.stdout


def test_a_targets_name_alone_is_understood(club: Path, namegen: Run):
    done = namegen("explain", "java-constants", cwd=club)
    assert done.stdout == namegen("explain", "target", "java-constants", cwd=club).stdout
    assert done.returncode == 0


def test_a_wrong_name_is_told_with_the_right_one(club: Path, namegen: Run):
    done = namegen("explain", "target", "harbor-ini", "java-constnats", cwd=club)
    assert done.returncode == 1
    assert 'there is no target "harbor-ini"' in done.stdout
    assert 'did you mean "java-constants"?' in done.stdout


def test_a_target_that_cannot_be_used_does_not_hide_the_guide(club: Path, namegen: Run):
    (club / "my-templates/harbour-ini/target.yaml").write_text(OWN + "colour: red\n")
    done = namegen("explain", "target", cwd=club)
    assert done.returncode == 1
    assert "In every template" in done.stdout and "config-json" in done.stdout
    assert "my-templates/harbour-ini/target.yaml:5: has an unknown field: colour" in done.stdout
    assert "\n    5 | colour: red\n" in done.stdout
    one = namegen("explain", "harbour-ini", cwd=club)
    assert one.returncode == 1 and "has an unknown field: colour" in one.stdout
    assert "there is no target" not in one.stdout
