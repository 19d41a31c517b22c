"""A library that says which names it is asked for, and programs that are run with it.

What a program really asks for is the check from outside of what is read in its code.
"""

from __future__ import annotations

import subprocess
from collections.abc import Callable, Sequence
from pathlib import Path

LIBRARY = """\
#pragma once
#include <array>
#include <cstdio>
#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <vector>
inline void heard(std::string_view name) {
  for (char letter : name) std::printf("%02x", static_cast<unsigned char>(letter));
  std::printf("\\n");
}
struct Motor { void run() {} };
struct Servo {};
struct Lamp {};
struct Boat {
  Motor motor(std::string_view name) { heard(name); return {}; }
  template <class... T> void group(T... names) { (heard(names), ...); }
  void drive(std::string_view one, int, std::string_view other) { heard(one); heard(other); }
  template <class T, int N = 0> T get(std::string_view name) { heard(name); return {}; }
  Motor operator[](std::string_view name) { heard(name); return {}; }
};
struct Any { template <class T> operator T() const { return {}; } };
struct Finder { Any find(std::string_view name) { heard(name); return {}; } };
struct Crew {
  Boat boat; Boat devices; Boat* ship = &boat; Boat boats[2];
  Boat& getBoat() { return boat; }
};
namespace club {
inline Motor motor(std::string_view name) { heard(name); return {}; }
template <class T> T get(std::string_view name) { heard(name); return {}; }
}
inline Motor motor(std::string_view name) { heard(name); return {}; }
struct Sensor {
  Sensor(Boat&, std::string_view name, int = 0) { heard(name); }
  double read() const { return 0; }
};
template <class T> struct Gauge { Gauge(Boat&, std::string_view name) { heard(name); } };
namespace lib { using ::Sensor; using ::Gauge; using ::Motor; }
inline Boat boat, devices;
inline Boat* ship = &boat;
inline Crew crew, *mate = &crew;
inline Finder finder;
inline bool fast = true;
"""
FLAGS = ("-std=c++20", "-Wno-unused", "-fpermissive", "-w")


def said(programs: Sequence[str], folder: Path, tool: Callable[[str], str]) -> list[list[str]]:
    """Return the names that each program asks for; each defines ``run()`` and may define more."""
    parts = ['#include "boatlib.h"']
    for number, program in enumerate(programs):
        parts.append(f"namespace case_{number} {{\n{program}\n}}")
    calls = "".join(
        f'  std::printf("-\\n"); case_{number}::run();\n' for number in range(len(programs))
    )
    parts.append(f"int main() {{\n{calls}}}\n")
    (folder / "boatlib.h").write_text(LIBRARY, encoding="utf-8")
    (folder / "main.cpp").write_bytes("\n".join(parts).encode())
    command = [tool("g++"), *FLAGS, "main.cpp", "-o", "main"]
    done = subprocess.run(command, cwd=folder, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    lines = subprocess.run([folder / "main"], capture_output=True, text=True, check=True).stdout
    runs = lines.split("-\n")[1:]
    return [[bytes.fromhex(line).decode() for line in run.splitlines()] for run in runs]
