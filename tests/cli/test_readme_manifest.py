"""The README's manifest, catalogue and rows, put together in one workspace, say what it says."""

from __future__ import annotations

import re
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

README = Path(__file__).resolve().parents[2] / "README.md"
Run = Callable[..., "subprocess.CompletedProcess[str]"]
SETTINGS = """\
robots: [robots/*.yaml]
catalogue: catalogue.yaml
build:
  - {target: python-constants, to: devices.py, with: {former_names: true}}
  - {target: java-constants, to: HeronDevices.java}
  - {target: sheet-markdown, to: sheet.md}
"""


def block(heading: str) -> str:
    """Return the first YAML block under a heading."""
    section = README.read_text(encoding="utf-8").partition(f"\n## {heading}\n")[2]
    return re.findall(r"^```yaml\n(.*?)^```$", section, re.M | re.S)[0]


@pytest.fixture
def club(tmp_path: Path, namegen: Run) -> Path:
    files = {
        "namegen.yaml": SETTINGS,
        "catalogue.yaml": block("The catalogue"),
        "robots/heron.yaml": block("The manifest"),
        "shared/hull.yaml": "devices: {spareLamp: {kind: lamp, port: undecided}}\n",
    }
    for path, text in files.items():
        (tmp_path / path).parent.mkdir(exist_ok=True)
        (tmp_path / path).write_text(text, encoding="utf-8")
    return tmp_path


def test_both_are_read_without_a_fault(club: Path, namegen: Run):
    """The lamp is the warning that the manifest's comment speaks of; one compass has no name."""
    said = namegen("verify", "--report", "lines", cwd=club).stdout
    found = [re.search(r"\d: (\w+): .*?\"(\w+)\"", line) for line in said.splitlines()]
    assert [one.groups() for one in found if one] == [("note", "stern"), ("warning", "spareLamp")]
    assert len(found) == 2, said


def test_numbers_notes_and_identifiers_come_out_as_it_says(club: Path, namegen: Run):
    assert namegen("build", cwd=club).returncode in (0, 1)
    python, java = ((club / name).read_text() for name in ("devices.py", "HeronDevices.java"))
    assert "BOW_THRUSTER_COUNTS_PER_OUTPUT_TURN: Final = 1296.0" in python
    assert "BOW_THRUSTER_COUNTS_PER_MM: Final = " in python
    assert "FRONT_THRUSTER" in python  # its former name
    assert "BOW_2" in java and "BOW_THRUSTER" not in java
    assert "red tape on the wire" in (club / "sheet.md").read_text()
