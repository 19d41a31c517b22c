"""Whole programs: what is read from them is what they look up when they run.

`programs/` holds code as students write it, an invented library, and a `main` that prints
the names which the library was asked for. kotlinc compiles all of it in one go.
"""

from __future__ import annotations

import subprocess
from pathlib import Path

import pytest

from namegen.model.workspaces import LookupRule
from tests.languages.asking import Code

pytestmark = pytest.mark.xdist_group("kotlinc")  # one worker, so that one compiles at a time
PROGRAMS = Path(__file__).parent / "programs"
RULES = (
    LookupRule("call", "motor"),
    LookupRule("call", "servo"),
    LookupRule("call", "fitted", name_key="name"),
    LookupRule("call", "get"),
    LookupRule("call", "find"),
    LookupRule("call", "has"),
    LookupRule("call", "level"),
    LookupRule("call", "expects", name_at="rest"),
    LookupRule("subscript", "devices"),
    LookupRule("new", "Sensor", name_at=(1,)),
    LookupRule("annotation", "Fitted", name_key="name"),
)
BY_KIND_FIRST = LookupRule("call", "fitted", name_at=(1,), name_key="name")
RUNS = ("Skim.kt", "Tow.kt", "Visit.kt")
NEVER = {"neverAsked", "portFloat$"}
"""What only a branch asks for that does not run."""


@pytest.fixture(scope="module")
def code() -> Code:
    folders = {"Library.kt": "club/boatlib", "Names.kt": "club/boats/names", "Main.kt": "start"}
    return Code(
        {
            f"{folders.get(path.name, 'club/boats')}/{path.name}".removeprefix(
                "./"
            ): path.read_text()
            for path in PROGRAMS.glob("*.kt")
        },
        (*RULES, BY_KIND_FIRST),
    )


def test_every_file_is_sound(code: Code):
    unsound = {path: code.reading(path).unsound for path in code.files}
    assert set(map(tuple, unsound.values())) == {()}, unsound
    assert len(unsound) == 6


def test_what_is_read_is_what_the_programs_ask_for(code: Code, tool, tmp_path: Path):
    jar = tmp_path / "all.jar"
    command = [tool("kotlinc"), *PROGRAMS.glob("*.kt"), "-include-runtime", "-d", jar]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    run = subprocess.run(
        [tool("java"), "-cp", jar, "MainKt"], capture_output=True, text=True, check=True
    )
    asked = dict(zip(RUNS, run.stdout.splitlines(), strict=True))
    for path, names in asked.items():
        read = {one.text for one in code.resolved(f"club/boats/{path}")} - {None}
        assert read - NEVER == set(names.split()), path
