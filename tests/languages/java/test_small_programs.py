"""Small Java programs whose names are, or are not, what they look.

javac compiles them all, and what they look up when they run is held against what is said.
"""

from __future__ import annotations

import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.languages.holding import holds_small_program, noted_lines
from tests.languages.java.misleading_programs import UNSURE
from tests.languages.java.plain_programs import SURE

PROGRAMS = [*SURE.items(), *UNSURE.items()]
MAIN = """\
class Main {
  static void motor(String name) {
    StackTraceElement at = Thread.currentThread().getStackTrace()[2];
    System.out.println(at.getFileName() + " " + at.getLineNumber() + " " + name);
  }
  public static void main(String[] arguments) {
RUNS  }
}
"""


@pytest.fixture(scope="module")
def programs() -> dict[str, str]:
    return {
        f"Q{at}.java": f"import java.util.*;\nclass Q{at} extends Main {{{code}\n}}\n"
        for at, (_, code) in enumerate(PROGRAMS)
    }


@pytest.fixture(scope="module")
def looked_up(
    programs: dict[str, str], tool: Callable[[str], str], tmp_path_factory: pytest.TempPathFactory
) -> dict[tuple[str, int], set[str]]:
    """What the programs look up, by file and line, when they run."""
    javac, java, folder = tool("javac"), tool("java"), tmp_path_factory.mktemp("java")
    runs = "".join(f"    {name[:-5]}.run();\n" for name in programs)
    for name, text in {**programs, "Main.java": MAIN.replace("RUNS", runs)}.items():
        Path(folder, name).write_text(text)
    command = [javac, "-nowarn", *programs, "Main.java"]
    done = subprocess.run(command, cwd=folder, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    done = subprocess.run([java, "Main"], cwd=folder, capture_output=True, text=True, check=True)
    return noted_lines(done.stdout)


@pytest.mark.parametrize("at", range(len(PROGRAMS)), ids=[name for name, _ in PROGRAMS])
def test_what_a_program_looks_up_is_what_is_said(
    at: int, programs: dict[str, str], looked_up: dict[tuple[str, int], set[str]]
):
    file = f"Q{at}.java"
    holds_small_program(file, programs[file], looked_up, sure=PROGRAMS[at][0] in SURE)
