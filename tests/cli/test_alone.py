"""Every command takes one manifest without a workspace."""

from __future__ import annotations

import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.operations.conftest import FILES, lay

Run = Callable[..., "subprocess.CompletedProcess[str]"]
LOOKUP = ("--lookup", "{call: motor, kind: motor}")


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return lay(
        tmp_path / "alone",
        {
            "heron.yaml": FILES["robots/heron.yaml"],
            "catalogue.yaml": FILES["catalogue.yaml"],
            "src/main.py": 'bow = boat.motor("bowthruster")\n',
        },
    )


def test_build_writes_what_the_options_name(namegen: Run, folder: Path):
    target = ("--target", "python-constants", "src/devices.py")
    done = namegen("build", "--manifest", "heron.yaml", *target, cwd=folder)
    assert done.returncode == 0, done.stderr
    assert '"bowThruster"' in (folder / "src/devices.py").read_text()
    again = namegen("build", "--stale", "--manifest", "heron.yaml", *target, cwd=folder)
    assert again.stdout == "1 output current, 0 not\n"


def test_audit_finds_and_mends(namegen: Run, folder: Path):
    words = ("audit", "--manifest", "heron.yaml", *LOOKUP, "src")
    done = namegen(*words, "--report", "lines", cwd=folder)
    assert done.stdout.startswith("src/main.py:1:19: error:")
    namegen(*words, "--fix", cwd=folder)
    assert (folder / "src/main.py").read_text() == 'bow = boat.motor("bowThruster")\n'


@pytest.mark.parametrize(
    "words",
    [
        ("audit", "--manifest", "heron.yaml", *LOOKUP),
        ("audit", "--manifest", "heron.yaml", "src"),
        ("audit", "--manifest", "heron.yaml", "--lookup", "{cal: motor}", "src"),
        ("audit", "--manifest", "heron.yaml", "--lookup", "{", "src"),
        ("build", "--manifest", "heron.yaml", "--target", "no-such", "out.txt"),
    ],
)
def test_what_is_missing_or_wrong_is_said(namegen: Run, folder: Path, words: tuple[str, ...]):
    done = namegen(*words, cwd=folder)
    assert done.returncode == 2
    assert done.stdout == "" and done.stderr.strip()


def test_an_option_that_goes_with_a_manifest_is_refused_in_a_workspace(
    namegen: Run, tmp_path: Path
):
    boats = lay(tmp_path / "boats", FILES)
    assert namegen("audit", *LOOKUP, cwd=boats).returncode == 2
    assert namegen("build", "--target", "x", "y", cwd=boats).returncode == 2
