"""What is said of a C++ name holds when the program runs.

Checked against g++: headers are put together at random, from a fixed seed, of constants, macros,
members, namespaces, lists, loops, lambdas and functions; all are compiled in one program, whose
`motor` notes what it is given. A look-up of which every text is said to be known must get no other.
"""

from __future__ import annotations

import random
import subprocess
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from tests.languages.cpp.changing_programs import changing
from tests.languages.cpp.misleading_programs import UNSURE
from tests.languages.cpp.plain_programs import SURE
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


class Maker:
    """Makes one header at random; each look-up has a line of its own."""

    def __init__(self, seed: int) -> None:
        self.random = random.Random(seed)
        self.name = f"p{seed}"
        self.texts: list[str] = []
        self.variables: list[str] = []
        self.lists: list[str] = []
        self.count = 0

    def fresh(self) -> str:
        self.count += 1
        return f"v{self.count}"

    def text(self, deep: int = 2, without: str = "") -> str:
        """Return an expression that is a text."""
        sorts = ["literal", "literal", "name", "name", "name", "sum", "choice", "element"]
        sort = self.random.choice(sorts) if deep else "literal"
        names = [name for name in self.texts if name != without]
        if sort == "sum":
            return f"std::string({self.text(deep - 1, without)}) + {self.text(deep - 1, without)}"
        if sort == "choice":
            one, other = self.text(deep - 1, without), self.text(deep - 1, without)
            return f"(flag() ? std::string({one}) : std::string({other}))"
        if sort == "element" and self.lists:
            return f"{self.random.choice(self.lists)}[0]"
        if sort == "name" and names:
            return self.random.choice(names)
        return self.random.choice(['"a"', '"b"', '"c"'])

    def values(self) -> str:
        return ", ".join(self.text() for _ in range(self.random.randint(1, 3)))

    def declared(self, before: str = "", *, name: str = "") -> str:
        """Return the declaration of a text or a list, which can be used from there on."""
        name = name or self.fresh()
        sort = self.random.choice(["plain", "const", "letters", "list", "array"])
        if sort in {"list", "array"} and name not in self.texts:
            kind, sign = "std::vector<std::string>", ""
            if sort == "array":
                kind, sign = "const std::string", "[]"
            line = f"{before}{kind} {name}{sign}{{{self.values()}}};"
            self.lists.append(name)
            return line
        if sort == "letters":
            literal = self.random.choice(['"a"', '"b"'])
            line = f"{before}constexpr const char* {name} = {literal};"
        else:
            kind = "std::string" if sort == "plain" else "const std::string"
            value = self.text(without=name)
            form = self.random.choice(["{0} {1} = {2};", "{0} {1}(({2}));", "{0} {1}{{{2}}};"])
            line = before + form.format(kind, name, f"std::string({value})")
        if name in self.variables:
            self.variables.remove(name)
        self.variables += [name] if sort == "plain" else []
        self.texts.append(name)
        return line

    def block(self, deep: int, taken: str = "") -> Iterator[str]:
        """Yield statements; what they declare is not seen behind them, ``taken`` not hidden."""
        known = list(self.texts), list(self.variables), list(self.lists)
        mine = {taken}
        for _ in range(self.random.randint(1, 4)):
            shadowed = [name for name in known[0] if name[0] == "v" and name not in mine]
            if shadowed and self.random.random() < 0.15:
                name = self.random.choice(shadowed)
                mine.add(name)
                yield self.declared(name=name)
            else:
                yield from self.statement(deep)
        self.texts, self.variables, self.lists = known

    def statement(self, deep: int) -> Iterator[str]:
        sorts = ["look-up", "look-up", "look-up", "declared", "changed", "each", "if", "lambda"]
        sort = self.random.choice(sorts)
        if sort == "declared":
            yield self.declared()
        elif sort == "changed" and self.variables:
            yield self.changed(self.random.choice(self.variables))
        elif sort == "each" and deep:
            name, over = self.fresh(), [f"std::vector<std::string>{{{self.values()}}}", *self.lists]
            yield f"for (const auto& {name} : {self.random.choice(over)}) {{"
            self.texts.append(name)
            yield from self.block(deep - 1, name)
            self.texts.remove(name)
            yield "}"
        elif sort == "if" and deep:
            yield "if (flag()) {"
            yield from self.block(deep - 1)
            yield "}"
        elif sort == "lambda" and deep:
            yield "[&] {"
            yield from self.block(deep - 1)
            yield "}();"
        else:
            yield f"motor({self.text()});"

    def changed(self, name: str) -> str:
        """Return a statement that changes a text."""
        other = self.fresh()
        forms = [
            "{0} = {1};",
            "{0} += {1};",
            "{0}.append({1});",
            "{0}[0] = 'x';",
            "std::string& {2} = {0}; {2} = {1};",
            "auto* {2} = &{0}; *{2} = {1};",
            "std::string& {2}{{{0}}}; {2} = {1};",
            "for (auto* {2} : {{&{0}}}) *{2} = {1};",
            "(flag() ? {0} : {0}) = {1};",
            "std::tie({0}) = std::make_tuple({1});",
            "{0}.front() = 'x';",
            "std::reverse({0}.begin(), {0}.end());",
            "[&, &{2} = {0}] {{ {2} += {1}; }}();",
        ]
        return self.random.choice(forms).format(name, self.text(), other)

    def made(self) -> str:
        """Return the header."""
        macro = f"{self.name.upper()}_NAME"
        first = [self.declared("static ") for _ in range(self.random.randint(1, 3))]
        inner = self.declared("static ")
        member, field = self.text(0), self.text(0)
        within = f"struct Names {{\n  static constexpr const char* kOne = {member};"
        name = inner.split("=")[0].split("(")[0].split("{")[0].split()[-1].removesuffix("[]")
        for known in (self.texts, self.variables, self.lists):
            known[:] = [f"inner::{one}" if one == name else one for one in known]
        self.texts += [macro, "Names::kOne", "Names().two", "called()"]
        body = ["{", *self.block(2), "}", "{", *self.block(2), "}"]
        called = self.random.choice(['"a"', macro, "Names::kOne"])
        lines = [
            *("#pragma once", f'#define {macro} "m"', f"namespace {self.name} {{", *first),
            *("namespace inner {", inner, "}", within, f"  std::string two = {field};", "};"),
            *("std::string called();", "inline void run() {", *body, "}"),
            *(f"inline std::string called() {{ return {called}; }}", "}"),
        ]
        return "\n".join(lines) + "\n"


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
PROGRAMS = [*TOLD.items(), *UNSURE.items(), *changing().items()]


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
        assert known == 0 or name not in UNSURE
