"""What is said of a C++ name holds when the program runs.

Checked against g++: headers are put together at random, from a fixed seed, of constants, macros,
members, namespaces, lists, loops, lambdas and functions; all are compiled in one program, whose
`motor` notes what it is given. A look-up of which every text is said to be known must get no other.
"""

from __future__ import annotations

import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.languages.cpp.changing_programs import changing
from tests.languages.cpp.misleading_changes import HANDED_ON
from tests.languages.cpp.misleading_programs import UNSURE
from tests.languages.cpp.plain_programs import SURE
from tests.languages.cpp.random_programs import Maker
from tests.languages.cpp.student_programs import STUDENTS
from tests.languages.holding import known_of, line_of, noted_lines

HEADERS = 150
MAIN = """\
#include <algorithm>
#include <array>
#include <cassert>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <functional>
#include <iomanip>
#include <iostream>
#include <iterator>
#include <map>
#include <memory>
#include <optional>
#include <regex>
#include <set>
#include <sstream>
#include <stdexcept>
#include <string>
#include <string_view>
#include <thread>
#include <tuple>
#include <utility>
#include <vector>

inline int turn = 0;

inline bool flag() { return turn++ % 2 == 0; }

inline void motor(const std::string& name, const char* file = __builtin_FILE(),
                  int line = __builtin_LINE()) {
  std::cout << std::string(file).substr(std::string(file).rfind('/') + 1) << " " << line << " "
            << name << "\\n";
}

INCLUDES
int main() {
RUNS}
"""


@pytest.fixture(scope="module")
def headers() -> dict[str, str]:
    return {f"p{seed}.hpp": Maker(seed).made() for seed in range(HEADERS)}


def run(headers: dict[str, str], compiler: str, folder: Path) -> dict[tuple[str, int], set[str]]:
    """Return what headers look up, by file and line, when they run in one program."""
    includes = "".join(f'#include "{name}"\n' for name in headers)
    runs = "".join(f"  {name[:-4]}::run();\n" for name in headers)
    main = MAIN.replace("INCLUDES", includes).replace("RUNS", runs)
    for name, text in {**headers, "main.cpp": main}.items():
        Path(folder, name).write_text(text)
    done = subprocess.run(
        [compiler, "-std=c++20", "-O0", "-w", "main.cpp", "-o", "main"],
        cwd=folder,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    done = subprocess.run([folder / "main"], capture_output=True, text=True, check=True)
    return noted_lines(done.stdout)


@pytest.fixture(scope="module")
def looked_up(
    headers: dict[str, str], tool: Callable[[str], str], tmp_path_factory: pytest.TempPathFactory
) -> dict[tuple[str, int], set[str]]:
    return run(headers, tool("g++"), tmp_path_factory.mktemp("cpp"))


def test_a_text_that_is_known_is_the_one_that_the_program_gets(
    headers: dict[str, str], looked_up: dict[tuple[str, int], set[str]]
):
    known = known_of(headers, looked_up, line_of)
    assert known > 0.5 * len(looked_up) > HEADERS / 2


TOLD = {**SURE, **STUDENTS}
LOST = {**UNSURE, **HANDED_ON}
PROGRAMS = [*TOLD.items(), *LOST.items(), *changing().items()]


@pytest.fixture(scope="module")
def programs() -> dict[str, str]:
    return {
        f"q{at}.hpp": f"namespace q{at} {{\n{code}\n}}\n" for at, (_, code) in enumerate(PROGRAMS)
    }


@pytest.fixture(scope="module")
def written_out(
    programs: dict[str, str], tool: Callable[[str], str], tmp_path_factory: pytest.TempPathFactory
) -> dict[tuple[str, int], set[str]]:
    return run(programs, tool("g++"), tmp_path_factory.mktemp("programs"))


@pytest.mark.parametrize("at", range(len(PROGRAMS)), ids=[name for name, _ in PROGRAMS])
def test_a_name_that_is_another_one_than_it_looks(
    at: int, programs: dict[str, str], written_out: dict[tuple[str, int], set[str]]
):
    """What the program looks up is what is said, or the name is said not to be known."""
    file, (name, _) = f"q{at}.hpp", PROGRAMS[at]
    mine = {place: texts for place, texts in written_out.items() if place[0] == file}
    known = known_of({file: programs[file]}, mine, line_of)
    if name in TOLD:
        assert known == len(mine) > 0
    else:
        assert any(texts != {"bow"} for texts in mine.values())
        assert known == 0 or name not in LOST
