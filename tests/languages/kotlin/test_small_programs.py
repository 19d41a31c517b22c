"""Small Kotlin programs whose names are, or are not, what they look.

kotlinc compiles them in one go, and what they look up when they run is held against what is said.
"""

from __future__ import annotations

import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.languages.holding import holds_small_program, noted_lines
from tests.languages.kotlin.misleading_programs import UNSURE
from tests.languages.kotlin.plain_programs import SURE

pytestmark = pytest.mark.xdist_group("kotlinc")  # one worker, so that one compiles at a time
PROGRAMS = [*SURE.items(), *UNSURE.items()]
MAIN = """\
package start

fun motor(name: String) {
    val at = Thread.currentThread().stackTrace[2]
    println("${at.fileName} ${at.lineNumber} $name")
}

fun main() {
RUNS}
"""


@pytest.fixture(scope="module")
def programs() -> dict[str, str]:
    return {
        f"Q{at}.kt": f"package q{at}\nimport start.motor\n{code}\n"
        for at, (_, code) in enumerate(PROGRAMS)
    }


@pytest.fixture(scope="module")
def looked_up(
    programs: dict[str, str], tool: Callable[[str], str], tmp_path_factory: pytest.TempPathFactory
) -> dict[tuple[str, int], set[str]]:
    """What the programs look up, by file and line, when they run."""
    compiler, java, folder = tool("kotlinc"), tool("java"), tmp_path_factory.mktemp("kotlin")
    runs = "".join(f"    {name[:-3].lower()}.run()\n" for name in programs)
    for name, text in {**programs, "Main.kt": MAIN.replace("RUNS", runs)}.items():
        Path(folder, name).write_text(text)
    command = [compiler, "-nowarn", *programs, "Main.kt", "-include-runtime", "-d", "all.jar"]
    done = subprocess.run(command, cwd=folder, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    run = [java, "-cp", "all.jar", "start.MainKt"]
    return noted_lines(
        subprocess.run(run, cwd=folder, capture_output=True, text=True, check=True).stdout
    )


@pytest.mark.parametrize("at", range(len(PROGRAMS)), ids=[name for name, _ in PROGRAMS])
def test_what_a_program_looks_up_is_what_is_said(
    at: int, programs: dict[str, str], looked_up: dict[tuple[str, int], set[str]]
):
    file = f"Q{at}.kt"
    holds_small_program(file, programs[file], looked_up, sure=PROGRAMS[at][0] in SURE)
