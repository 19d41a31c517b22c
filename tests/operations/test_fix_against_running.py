"""After a repair each look-up gets the name that was meant, and never another device's.

Checked against CPython: random programs with wrong and right names are run before and after.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings

from namegen.operations import fix
from namegen.operations.code_files import ALL
from namegen.operations.workspace import open_workspace
from tests.languages.python.test_against_running import PROGRAMS, given_to_motor
from tests.operations.conftest import FILES, lay

WORDS = {"'a'": "'bowthruster'", "'b'": "'frontThruster'", "'c'": "'sternThruster'"}
MEANT = {"bowthruster": "bowThruster", "frontThruster": "bowThruster"}


def with_names(part: str) -> str:
    for letter, name in WORDS.items():
        part = part.replace(letter, name)
    return part


def in_parts(program: str, parts: list[str]) -> list[str]:
    """Return a program in parts of as many lines as these."""
    lines = iter(program.split("\n"))
    return ["\n".join(next(lines) for _ in part.split("\n")) for part in parts]


@pytest.fixture(scope="module")
def workspace(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return lay(tmp_path_factory.mktemp("boats"), FILES)


@settings(max_examples=80, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(parts=PROGRAMS)
def test_no_repair_moves_another_machine(workspace: Path, parts: list[str]):
    parts = [with_names(part) for part in parts]
    lay(workspace, {"code/heron/main.py": "\n".join(parts)})
    changes = fix.fix(open_workspace(workspace), ALL, fix.SAFE).changes
    if not changes:
        return  # nothing was wrong, or nothing could be mended
    before = given_to_motor(parts)
    for line, names in given_to_motor(in_parts(changes[0].new.decode(), parts)).items():
        one_letter = {name for name in names if isinstance(name, str) and len(name) == 1}
        meant = {MEANT.get(name, name) if isinstance(name, str) else name for name in before[line]}
        assert names - one_letter <= before[line] | meant
