"""A library that says which names it is asked for, and programs that are run with it.

What a program really asks for is the check from outside of what is read in its code.
"""

from __future__ import annotations

import subprocess
from collections.abc import Callable, Mapping, Sequence
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
    parts = [f"namespace case_{at} {{\n{one}\n}}" for at, one in enumerate(programs)]
    calls = (f'std::printf("-\\n"); case_{at}::run();\n' for at in range(len(programs)))
    parts.append(f"int main() {{\n{''.join(calls)}}}\n")
    lines = output({"main.cpp": "\n".join(parts)}, folder, tool)
    return [names(run) for run in lines.split("-\n")[1:]]


def names(lines: str) -> list[str]:
    """Return the names that a program has said, one a line."""
    return [bytes.fromhex(line).decode() for line in lines.splitlines()]


def output(files: Mapping[str, str], folder: Path, tool: Callable[[str], str]) -> str:
    """Return what the program of these files prints; each sees the library."""
    (folder / "boatlib.h").write_text(LIBRARY, encoding="utf-8")
    for path, text in files.items():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_bytes(text.encode())
    sources = [path for path in files if path.endswith(".cpp")]
    command = [tool("g++"), *FLAGS, "-include", "boatlib.h", "-I.", *sources, "-o", "main"]
    done = subprocess.run(command, cwd=folder, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    return subprocess.run([folder / "main"], capture_output=True, text=True, check=True).stdout
