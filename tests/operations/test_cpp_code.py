"""A boat's program in C++ is audited and mended as others are, and stays a program.

Checked from outside: g++ compiles the code, with an invented library, before and after,
and the program says which devices it asks for.
"""

from __future__ import annotations

import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

from namegen.operations import fix
from namegen.operations.audit import audit
from namegen.operations.code_files import ALL
from namegen.operations.workspace import open_workspace
from tests.operations.conftest import lay

Tool = Callable[[str], str]
SETTINGS = """\
robots: [robots/*.yaml]
catalogue: catalogue.yaml
names: {style: camelCase, longest: 24}
lookups:
  - {call: motor, kind: motor}
  - {call: get, on: boat, kind_by: type-argument, kinds: {Motor: motor, Servo: servo}}
  - {new: Level, name_at: 1, kind: level}
code:
  - {path: code/heron, robots: [heron]}
build:
  - target: cpp-constants
    to: "code/{robot}/heron_devices.h"
"""
MANIFEST = """\
robot: heron
controllers:
  bridge: {board: harbour}
devices:
  bowThruster: {kind: motor, port: bridge motor 1, formerly: [frontThruster]}
  sternThruster: {kind: motor, port: bridge motor 2}
  rudder: {kind: servo, port: bridge servo 1}
  bilgeLevel: {kind: level, port: bridge digital 1}
  hullLevel: {kind: level, port: bridge digital 2}
"""
LIBRARY = """\
#pragma once
#include <iostream>
#include <string_view>
struct Motor { void run(double) {} };
struct Servo { void turn(double) {} };
struct Boat {
  Motor motor(std::string_view name) { std::cout << name << "\\n"; return {}; }
  template <class Device> Device get(std::string_view name) {
    std::cout << name << "\\n";
    return {};
  }
};
struct Level {
  Level(Boat&, std::string_view name) { std::cout << name << "\\n"; }
};
"""
NAMES = """\
#ifndef NAMES_H
#define NAMES_H
namespace names {
constexpr char kBow[] = "frontThruster";  // last year's
struct Hull {
  static constexpr const char* kLevel = u8R"(hulllevel)";
};
}  // namespace names
#endif
"""
HEADER = """\
#pragma once
#include "boatlib.h"

class Heron {
 public:
  explicit Heron(Boat& boat);
  void start();

 private:
  Boat& boat_;
  Level bilge_;
  Level hull_;
};
"""
MAIN = """\
#include "heron.h"\r
#include "names.h"\r
\r
namespace {\r
constexpr auto kStern = "stern" "Thruster";\r
}\r
\r
// namegen é: "bowthruster" stays in a comment\r
Heron::Heron(Boat& boat)\r
    : boat_(boat), bilge_(boat, "bilgelevel"), hull_(boat, names::Hull::kLevel) {}\r
\r
void Heron::start() {\r
  using namespace names;\r
  boat_.motor(kBow).run(0.5);\r
  boat_.motor(kStern).run(0.5);\r
  Boat& boat = boat_;\r
  auto rudder = boat.get<Servo>( "Rudder" );\r
  rudder.turn(1);\r
}\r
\r
int main() {\r
  Boat boat;\r
  Heron(boat).start();\r
}\r
"""
CODE = {
    "code/heron/boatlib.h": LIBRARY,
    "code/heron/names.h": NAMES,
    "code/heron/heron.h": HEADER,
    "code/heron/heron.cpp": MAIN,
}
STRICT = ("-std=c++17", "-Wall", "-Wextra", "-Wpedantic", "-Werror")


@pytest.fixture
def boat(boats: Path) -> Path:
    (boats / "code/heron/main.py").unlink()
    return lay(boats, {"namegen.yaml": SETTINGS, "robots/heron.yaml": MANIFEST, **CODE})


def asked(root: Path, tool: Tool) -> list[str]:
    """Return the names that the compiled program asks for."""
    sources = sorted((root / "code/heron").glob("*.cpp"))
    command = [tool("g++"), *STRICT, *sources, "-o", root / "heron"]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    done = subprocess.run([root / "heron"], capture_output=True, text=True, check=True)
    return done.stdout.splitlines()


def found(root: Path) -> list[tuple[str, str, int, str | None]]:
    return [
        (one.kind, one.place.path.rpartition("/")[2], one.place.line, one.found)
        for one in audit(open_workspace(root)).report.findings
    ]


def test_an_audit_finds_what_is_wrong_where_it_stands(boat: Path, tool: Tool):
    asked(boat, tool)
    assert found(boat) == [
        ("letter-case", "heron.cpp", 10, "bilgelevel"),
        ("letter-case", "heron.cpp", 17, "Rudder"),
        ("retired-name", "names.h", 4, "frontThruster"),
        ("letter-case", "names.h", 6, "hulllevel"),
    ]
    assert audit(open_workspace(boat)).report.unread == ()


def test_a_fix_changes_the_names_and_no_other_byte(boat: Path, tool: Tool):
    before = asked(boat, tool)
    fixed = fix.fix(open_workspace(boat), ALL, fix.SAFE)
    fix.write(open_workspace(boat), fixed)
    wrong = {"frontThruster": "bowThruster", "hulllevel": "hullLevel"}
    wrong |= {'"bilgelevel"': '"bilgeLevel"', '"Rudder"': '"rudder"'}
    for path, text in CODE.items():
        mended = text
        for one, other in wrong.items():
            mended = mended.replace(one, other)
        assert (boat / path).read_bytes() == mended.encode()
    right = {"frontThruster": "bowThruster", "hulllevel": "hullLevel", "Rudder": "rudder"}
    right |= {"bilgelevel": "bilgeLevel"}
    assert asked(boat, tool) == [right.get(one, one) for one in before]
    assert found(boat) == []
    assert fix.fix(open_workspace(boat), ALL, fix.SAFE).changes == ()
