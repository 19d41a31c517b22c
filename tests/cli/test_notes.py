"""Notes are shown where somebody asks for them, and counted where they would be noise."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.operations.conftest import FILES, lay

COUNTED = "1 note (built-in-unnamed 1); `namegen verify` shows it"


@pytest.fixture
def noted(tmp_path: Path) -> Path:
    """A boat whose board has a compass that no device names."""
    catalogue = FILES["catalogue.yaml"] + "    built_in: {compass: imu}\n"
    return lay(tmp_path / "boats", {**FILES, "catalogue.yaml": catalogue})


def test_a_build_counts_them_whether_it_writes_or_is_known_from_the_last(namegen, noted: Path):
    first, again = namegen("build", cwd=noted), namegen("build", cwd=noted)
    for done in (first, again, namegen("build", "--stale", cwd=noted)):
        assert done.returncode == 0
        assert done.stdout.splitlines()[0] == COUNTED
    assert "note built-in-unnamed at robots/heron.yaml" in namegen("verify", cwd=noted).stdout


def test_the_last_look_counts_them_and_shows_what_is_graver(namegen, noted: Path):
    namegen("build", cwd=noted)
    done = namegen("ready", cwd=noted)
    assert done.returncode == 0
    assert done.stdout.startswith(
        "1 note (built-in-unnamed 1); `namegen verify` or `namegen audit`"
    )
    lay(noted, {"code/heron/main.py": FILES["code/heron/main.py"].replace("rudder", "Rudder")})
    said = namegen("ready", cwd=noted).stdout
    assert "error letter-case at" in said and "note built-in-unnamed at" not in said
