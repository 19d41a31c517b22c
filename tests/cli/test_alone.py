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


@pytest.mark.parametrize(
    ("row", "words"),
    [
        ("{cal: motor}", "--lookup '{cal: motor}': `cal` is no field of a look-up."),
        ("{call: motor", "--lookup '{call: motor': The group in { } is not closed"),
        ("call: motor, kind: motor", "--lookup 'call: motor, kind: motor': A text with a colon"),
        ("{call: motor,\n knd: motor}", "--lookup '{call: motor,  knd: motor}': `knd` is no"),
    ],
)
def test_a_look_up_that_cannot_be_read_names_its_option(
    namegen: Run, folder: Path, row: str, words: str
):
    good = ("--lookup", "{call: servo, kind: servo}")
    done = namegen("audit", "--manifest", "heron.yaml", *good, "--lookup", row, "src", cwd=folder)
    assert done.returncode == 2
    assert words in done.stderr
    assert "write a look-up as" in done.stderr


def test_a_look_up_that_fits_nothing_is_shown_with_its_option(namegen: Run, folder: Path):
    rows = (*LOOKUP, "--lookup", "{call: servo, kind: srevo}")
    done = namegen("audit", "--manifest", "heron.yaml", *rows, "src", cwd=folder)
    assert "error wrong-value at --lookup:2:21\n" in done.stdout
    shown = "    2 | {call: servo, kind: srevo}\n      |                     ^^^^^\n"
    assert shown in done.stdout


def test_an_option_that_goes_with_a_manifest_is_refused_in_a_workspace(
    namegen: Run, tmp_path: Path
):
    boats = lay(tmp_path / "boats", FILES)
    assert namegen("audit", *LOOKUP, cwd=boats).returncode == 2
    assert namegen("build", "--target", "x", "y", cwd=boats).returncode == 2
