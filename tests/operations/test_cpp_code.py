"""A boat's program in C++ is audited and mended as others are, and stays a program.

Checked from outside: g++ compiles the code, with an invented library, before and after,
and the program says which devices it asks for.
"""

from __future__ import annotations

import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

from namegen.operations import build, fix
from namegen.operations.audit import audit
from namegen.operations.code_files import ALL
from namegen.operations.rename import rename, write
from namegen.operations.workspace import open_workspace
from tests.operations.changing import built, changed
from tests.operations.conftest import FILES, lay

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


def mended(root: Path) -> None:
    fix.write(open_workspace(root), fix.fix(open_workspace(root), ALL, fix.SAFE))


@pytest.mark.parametrize("namespace", ["heron_devices", "club::heron"])
def test_names_become_constants_and_the_program_does_the_same(
    boat: Path, tool: Tool, namespace: str
):
    mended(boat)
    chosen = SETTINGS + f'    with: {{namespace: "{namespace}"}}\n'
    built(boat, {"namegen.yaml": chosen})
    before = asked(boat, tool)
    texts = {path: (boat / path).read_bytes().decode() for path in CODE}
    done = changed(boat)
    assert asked(boat, tool) == before
    main = (boat / "code/heron/heron.cpp").read_bytes().decode()
    text = texts["code/heron/heron.cpp"]
    text = text.replace('#include "names.h"', '#include "heron_devices.h"\r\n#include "names.h"')
    text = text.replace('"bilgeLevel"', f"{namespace}::Level::kBilgeLevel")
    assert main == text.replace('"rudder"', f"{namespace}::Servo::kRudder")
    assert (boat / "code/heron/names.h").read_text() == texts["code/heron/names.h"]
    assert [(place.line, why.partition(";")[0]) for place, why in done.refused] == [
        (4, "an array of letters takes no constant"),
        (6, "its letters are of another type than those of the constant"),
    ]


@pytest.mark.parametrize(
    "code",
    [
        "auto bow = boat.motor(heron_devices::Motor::OLD);",
        "namespace dev = heron_devices; auto bow = boat.motor(dev::Motor::OLD);",
        "using namespace heron_devices; auto bow = boat.motor(heron_devices::Motor::OLD);",
        "using Names = heron_devices::Motor; auto bow = boat.motor(Names::OLD);",
        "typedef heron_devices::Motor Names; auto bow = boat.motor(Names::OLD);",
        "namespace a { using heron_devices::Motor; auto bow = boat.motor(Motor::OLD); }",
        "constexpr const char* kBow = heron_devices::Motor::OLD; auto bow = boat.motor(kBow);",
        "namespace heron_devices { auto bow = boat.motor(Motor::OLD); }",
        "int f() { using namespace heron_devices; boat.motor(Motor::OLD); return 0; } int a = f();",
    ],
)
def test_a_rename_follows_the_constants(boat: Path, tool: Tool, code: str):
    for path in ("heron.h", "heron.cpp", "names.h"):
        (boat / "code/heron" / path).unlink()
    library = LIBRARY.replace("struct Motor {", "struct Drive {").replace(
        "Motor motor", "Drive motor"
    )
    head = '#include "boatlib.h"\n#include "heron_devices.h"\n\nstatic Boat boat;\n'
    text = head + code + "\nint main() {}\n"
    files = {"boatlib.h": library, "main.cpp": text.replace("OLD", "kBowThruster")}
    built(boat, {f"code/heron/{path}": one for path, one in files.items()})
    assert asked(boat, tool) == ["bowThruster"]
    workspace = open_workspace(boat)
    write(workspace, rename(workspace, "bowThruster", "bowPusher"))
    build.write(build.plan(open_workspace(boat)))
    assert (boat / "code/heron/main.cpp").read_text() == text.replace("OLD", "kBowPusher")
    assert asked(boat, tool) == ["bowPusher"]


MISTAKES = """\
#include "boatlib.h"

struct Gears {
  double bowThrusterCountsPerOutputTurn = 216.0;
};
static const Gears gears{.bowThrusterCountsPerOutputTurn = 217};
constexpr int kBowThrusterCountsPerOutputTurn = 9 * 2 * 13;

class Crew {
  Motor bowThruster_, sternThruster_, spare_;
  Servo rudder_;

 public:
  explicit Crew(Boat& boat)
      : bowThruster_(boat.motor("sternThruster")),
        sternThruster_(boat.motor("sternThruster")),
        rudder_(boat.get<Servo>("bowThruster")) {
    /* namegen: allow misspelt because the lead renames it soon */
    spare_ = boat.motor("bowThrustr");
    spare_ = boat.motor(std::string_view(argument()).substr(2));
    Level(boat, "bilgeLevel");
  }
  static const char* argument() { return "--bow"; }
};

int main() {
  Boat boat;
  Crew crew(boat);
  return gears.bowThrusterCountsPerOutputTurn > kBowThrusterCountsPerOutputTurn;
}
"""
PART = (
    "parts:\n  pusher: {kind: motor, gear: 13, encoder_cycles: 9, decoding: 2, encoder_on: motor}\n"
)


def test_mistakes_in_a_program_that_compiles(boat: Path, tool: Tool):
    for path in ("heron.h", "heron.cpp", "names.h"):
        (boat / "code/heron" / path).unlink()
    manifest = MANIFEST.replace(
        "{kind: motor, port: bridge motor 1", "{part: pusher, port: bridge motor 1"
    )
    files = {"robots/heron.yaml": manifest, "code/heron/main.cpp": MISTAKES}
    lay(boat, {"catalogue.yaml": FILES["catalogue.yaml"] + PART, **files})
    command = [
        tool("g++"),
        "-std=c++20",
        *STRICT[1:],
        "-fsyntax-only",
        boat / "code/heron/main.cpp",
    ]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    assert [(kind, line, text) for kind, _, line, text in found(boat)] == [
        ("outdated-number", 4, "216.0"),
        ("outdated-number", 6, "217"),
        ("crossed-names", 15, "sternThruster"),
        ("double-lookup", 16, "sternThruster"),
        ("wrong-kind", 17, "bowThruster"),
        ("not-checkable", 20, None),
    ]
    sure = MISTAKES.replace("std::string_view(argument()).substr(2)", '"sternThruster"')
    lay(boat, {"code/heron/main.cpp": sure})
    unused = [(kind, line) for kind, _, line, _ in found(boat) if kind == "unused-device"]
    assert unused == [("unused-device", 7), ("unused-device", 9)]


def test_a_file_that_breaks_off_is_told_and_the_rest_is_read(boat: Path):
    broken = 'void f() {\n  boat.motor("bowthruster");\n  int = ;\n}\nvoid g() { boat.motor("x'
    lay(boat, {"code/heron/part.cpp": broken})
    mine = [one for one in found(boat) if one[1] == "part.cpp"]
    assert [(kind, line) for kind, _, line, _ in mine] == [
        ("letter-case", 2),
        ("unreadable", 3),
        ("unreadable", 5),
    ]


@pytest.mark.parametrize("encoding", ["utf-8-sig", "latin-1"])
def test_a_fix_keeps_the_bytes_of_any_file(boat: Path, encoding: str):
    code = '// é\r\nauto m = boat.motor("bowthruster");\r'
    path = boat / "code/heron/part.ino"
    path.write_bytes(code.encode(encoding))
    mended(boat)
    assert path.read_bytes() == code.replace("bowthruster", "bowThruster").encode(encoding)


def test_a_fix_reaches_into_macros(boat: Path):
    code = (
        '#define BOW "bowthruster"  // "bowthruster"\n'
        '#define STERN() \\\r\n  boat.motor("sternthruster")\n'
        '#define LATIN u8"é", "bowthruster"\n'
        'void f() { boat.motor(BOW); STERN(); boat.get<Servo>("Rudder"); }\n'
    )
    path = lay(boat, {}) / "code/heron/part.ino"
    path.write_bytes(code.encode())
    mended(boat)
    right = code.replace('BOW "bowthruster"', 'BOW "bowThruster"').replace("Rudder", "rudder")
    assert path.read_bytes() == right.replace("sternthruster", "sternThruster").encode()
    assert [one for one in found(boat) if one[1] == "part.ino"] == []
