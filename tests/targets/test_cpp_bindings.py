"""C++ bindings, judged by g++, clang++ and clang-format and run on an invented library."""

from __future__ import annotations

import csv
import io
from collections.abc import Sequence
from pathlib import Path

import pytest

from namegen.errors import UnusableTarget
from namegen.model.manifests import Manifest
from targets.boats import HERON, device, robot
from targets.facts_of import hex_of
from targets.machines import BOATS, arguments, as_found_rows, told_where_nothing_is, transcript
from targets.standins import CPP
from targets.test_cpp_constants import CLANG_FORMAT, STRICT, built

STANDIN = Path(__file__).with_name("standins") / "cpp" / "boatlib.h"
VARIANTS = {
    "thrown": {"missing": ("std::out_of_range", "boatlib::NotFitted")},
    "null": {"missing": (), "look_up": {"*": "boat.find<{type}>({name})"}},
    "perhaps": {
        "missing": (),
        "look_up": {"*": "seen.perhaps<{type}>({name})"},
        "held": {"*": "std::optional<{type}>"},
        "through": "seen",
    },
    "lent": {
        "missing": (),
        "look_up": {"*": "boat.lent<{type}>({name})"},
        "held": {"*": "std::unique_ptr<{type}>"},
    },
    "copied": {
        "look_up": {"*": "boat.fitted<{type}>({name})"},
        "held": {"*": "std::optional<{type}>"},
    },
}
"""Each way of a library to say that there is no such device."""
USE = """\
#include <cstdio>
#include <cstring>
#include <iostream>
#include <sstream>
static std::set<std::string> split(const std::string& text) {
  std::set<std::string> words;
  std::istringstream stream(text);
  for (std::string word; std::getline(stream, word, ',');) words.insert(word);
  return words;
}
static void say(const std::string& text) { std::cout << text << '\\n'; }
[[maybe_unused]] static void show(const std::string& text) {
  std::cout << ':';
  for (unsigned char byte : text) {
    char digits[3];
    std::snprintf(digits, sizeof digits, "%02x", byte);
    std::cout << digits;
  }
  std::cout << ":\\n";
}
"""
ONE = """\
static void start_%(name)s(boatlib::Boat boat) {
  try {
    %(name)s::Devices found = %(name)s::Start(boat, say);
    std::cout << (found.bow_thruster ? "bow there" : "bow absent") << ", hatch "
              << (found.hatch_servo ? "there" : "absent") << ", " << boat.asked()
              << " look-ups\\n";
    static_assert(std::is_same_v<std::decay_t<decltype(*found.rudder)>, boatlib::Hinge>);
  } catch (const %(name)s::MissingDevices& error) {
    std::cout << error.what() << '\\n';
  }
  std::cout << %(name)s::AsFound(boat);
}
"""
MAIN = """\
int main(int count, char** words) {
  const std::string variant = words[1];
  for (int i = 2; i < count; ++i) {
    const std::string word = words[i], name = word.substr(0, word.find('='));
    boatlib::Boat boat(split(word.substr(word.find('=') + 1)));
    std::cout << "= " << name << '\\n';
"""
SHOW = """\
static void show_%(index)d() {
  std::string said;
  const auto add = [&](const std::string& text) { said += (said.empty() ? "" : "\\n") + text; };
  try {
    boatlib::Boat none({});
    boat%(index)d::Start(none, add);
  } catch (const boat%(index)d::MissingDevices& error) {
    add(error.what());
  }
  show(said);
  boatlib::Boat full({%(names)s});
  boat%(index)d::Start(full, say);
  show(boat%(index)d::AsFound(full));
}
"""
SHADOWS = robot(
    *(
        device(name, "motor", optional=index % 2 == 0)
        for index, name in enumerate(
            ("boat", "search", "devices", "machine", "found", "row", "boatlib", "internal")
        )
    )
)
"""Devices named as something in the generated header: none of them may hide it."""


def use(names: Sequence[str]) -> str:
    """Return a program that starts each variant of each boat on the machines that it is given."""
    headers = "".join(f'#include "{name}.h"\n' for name in names)
    functions = "".join(ONE % {"name": name} for name in names)
    calls = "".join(f'    if (variant + name == "{name}") start_{name}(boat);\n' for name in names)
    return f"{headers}{USE}{functions}{MAIN}{calls}  }}\n}}\n"


def show(fleet: Sequence[Manifest]) -> str:
    """Return a program that starts hostile robots on nothing and on all that they have."""
    headers = "".join(f'#include "boat{index}.h"\n' for index in range(len(fleet)))
    functions = "".join(
        SHOW % {"index": index, "names": ", ".join(map(octal, manifest.devices))}
        for index, manifest in enumerate(fleet)
    )
    calls = "".join(f"  show_{index}();\n" for index in range(len(fleet)))
    return f"{headers}{USE}{functions}int main() {{\n  split({{}});\n{calls}}}\n"


def octal(name: str) -> str:
    return '"' + "".join(f"\\{byte:03o}" for byte in name.encode()) + '"'


@pytest.fixture(scope="module")
def fleet(hostile_robots) -> list[Manifest]:
    return [robot(), SHADOWS, *hostile_robots[::2]]


@pytest.fixture(scope="module")
def headers(make, fleet, tmp_path_factory) -> Path:
    """Return a folder with the headers of all variants and of hostile robots."""
    folder = tmp_path_factory.mktemp("cpp")
    (folder / "boatlib.h").write_text(STANDIN.read_text())
    for variant, options in VARIANTS.items():
        for boat, manifest in BOATS.items():
            text = make("cpp-bindings", manifest, f"{variant}{boat}.h", **{**CPP, **options})
            (folder / f"{variant}{boat}.h").write_text(text, encoding="ascii")
    for index, manifest in enumerate(fleet):
        text = make("cpp-bindings", manifest, f"boat{index}.h", **CPP)
        (folder / f"boat{index}.h").write_text(text, encoding="ascii", newline="")
    (folder / "use.cc").write_text(use([f"{one}{boat}" for one in VARIANTS for boat in BOATS]))
    (folder / "show.cc").write_text(show(fleet))
    return folder


@pytest.mark.parametrize("standard", ["c++17", "c++20"])
@pytest.mark.parametrize("compiler", ["g++", "clang++"])
def test_what_is_said_on_a_machine(tool, headers, compiler, standard):
    name = f"use-{compiler}-{standard}"
    flags = (f"-std={standard}", *STRICT, "use.cc", "-o", name)
    done = built(headers, tool(compiler), *flags)
    assert done.returncode == 0, done.stderr[:4000]
    for variant in VARIANTS:
        shown = built(headers, str(headers / name), variant, *arguments())
        assert (shown.stdout, shown.returncode) == (transcript(), 0), variant


@pytest.mark.parametrize(("compiler", "standard"), [("g++", "c++17"), ("clang++", "c++20")])
def test_hostile_robots_are_told_as_they_are_named(tool, headers, fleet, compiler, standard):
    name = f"show-{compiler}"
    flags = (f"-std={standard}", *STRICT, "-trigraphs", "show.cc", "-o", name)
    done = built(headers, tool(compiler), *flags)
    assert done.returncode == 0, done.stderr[:4000]
    lines = built(headers, str(headers / name)).stdout.splitlines()
    assert lines[::2] == [hex_of(told_where_nothing_is(manifest)) for manifest in fleet]
    for line, manifest in zip(lines[1::2], fleet, strict=True):
        text = bytes.fromhex(line.strip(":")).decode()
        assert list(csv.reader(io.StringIO(text, newline=""))) == as_found_rows(manifest)


def test_warnings_go_to_the_standard_error_stream(tool, headers, tmp_path):
    source = (
        f'#include "{headers}/thrownHarvest.h"\nint main() {{\n'
        '  boatlib::Boat boat({"bowThruster", "sternThruster", "netWinch", "rudder", "bilgeLevel",'
        ' "bumpBow", "hullTemp", "heading", "spareLamp"});\n  thrownHarvest::Start(boat);\n}\n'
    )
    (tmp_path / "main.cc").write_text(source)
    assert built(tmp_path, tool("g++"), "-std=c++17", *STRICT, "main.cc").returncode == 0
    said = built(tmp_path, str(tmp_path / "a.out"))
    assert (said.stdout, said.returncode) == ("", 0)
    assert said.stderr.endswith("hatchServo (servo): should be at stern servo 4\n")


@pytest.mark.parametrize("compiler", ["g++", "clang++"])
def test_two_files_of_a_program_share_the_header(tool, headers, tmp_path, compiler):
    lines = '#include "nullHarvest.h"\nvoid* {} = (void*)&nullHarvest::AsFound;\n'
    (tmp_path / "one.cc").write_text(lines.format("one") + "int main() {}\n")
    (tmp_path / "two.cc").write_text(lines.format("two"))
    done = built(tmp_path, tool(compiler), f"-I{headers}", "-std=c++17", "one.cc", "two.cc")
    assert done.returncode == 0, done.stderr


def test_clang_format_changes_nothing(make, headers, tmp_path):
    rows = [device("n" * n, "motor", does="Turns the drum " * n) for n in (5, *range(10, 75), 200)]
    includes = ("zoo.h", "boatlib.h", "<Abc>", "<string>", "<ext/x.h>", "<club/boat.h>", "a/b.h")
    given = {**CPP, "includes": includes, "namespace": "club::rows"}
    (tmp_path / "rows.h").write_text(make("cpp-bindings", robot(*rows), "rows.h", **given))
    given = {**CPP, "through_type": f"boatlib::{'Boat' * 18}&", "missing": ("x" * 70,)}
    (tmp_path / "wide.h").write_text(make("cpp-bindings", HERON, "wide.h", **given))
    files = [str(path) for path in (*headers.glob("*.h"), *tmp_path.glob("*.h"))]
    done = built(headers, str(CLANG_FORMAT), "--style=Google", "--dry-run", "-Werror", *files)
    assert done.returncode == 0, done.stderr[:4000]


def test_a_header_is_written_once_in_quotes_or_brackets(make):
    given = {**CPP, "includes": ("boatlib.h", "<vector>", "<club/boat.h>", "boatlib.h")}
    text = make("cpp-bindings", **given)
    assert [line for line in text.splitlines() if line.startswith("#include")] == [
        "#include <club/boat.h>",
        *(f"#include <{name}>" for name in
          ("array", "cstdio", "functional", "set", "stdexcept", "string", "vector")),
        '#include "boatlib.h"',
    ]  # fmt: skip


def test_a_field_that_cpp_keeps_for_itself(make):
    with pytest.raises(UnusableTarget, match="another spelling of an operator in C"):
        make("cpp-bindings", robot(device("xor", "lamp")), "a.h", **CPP)
