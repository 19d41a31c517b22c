"""Setup, ports, kinds, reversed flags and numbers reach a small program in each language.

The one in Kotlin is compiled and run in test_kotlin_constants.py.
"""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from targets.facts_of import SEEN
from targets.test_cpp_constants import STRICT
from targets.test_java_constants import compile_all

PYTHON = """\
from devices import DEVICES, SETUP, Motor, Numbers, Servo

print(SETUP)
rows = {row.name: row for row in DEVICES}
for name in (Motor.BOW_THRUSTER, Servo.RUDDER):
    row = rows[name]
    print(f"{name}, {row.kind}, {row.port}" + (", reversed" if row.reversed else ""))
turn, per_mm = Numbers.BOW_THRUSTER_COUNTS_PER_OUTPUT_TURN, Numbers.BOW_THRUSTER_COUNTS_PER_MM
pulse = Numbers.RUDDER_LONGEST_PULSE_US
print(f"{turn:g} counts per output turn, {per_mm:g} per mm, {pulse:g} us")
"""
JAVA = """\
final class Use {
  public static void main(String[] none) {
    System.out.println(HeronDevices.SETUP);
    for (HeronDevices.Row row : HeronDevices.DEVICES) {
      String name = row.name;
      if (name.equals(HeronDevices.Motor.BOW_THRUSTER) || name.equals(HeronDevices.Servo.RUDDER)) {
        String way = row.reversed ? ", reversed" : "";
        System.out.println(name + ", " + row.kind + ", " + row.port + way);
      }
    }
    System.out.printf(
        "%.0f counts per output turn, %.1f per mm, %.0f us%n",
        HeronDevices.Numbers.BOW_THRUSTER_COUNTS_PER_OUTPUT_TURN,
        HeronDevices.Numbers.BOW_THRUSTER_COUNTS_PER_MM,
        HeronDevices.Numbers.RUDDER_LONGEST_PULSE_US);
  }
}
"""
CPP = """\
#include <iostream>
#include <string_view>
#include "heron.h"
int main() {
  std::cout << heron::kSetup << '\\n';
  for (const heron::Row& row : heron::kDevices) {
    const std::string_view name = row.name;
    if (name != heron::Motor::kBowThruster && name != heron::Servo::kRudder) continue;
    std::cout << name << ", " << row.kind << ", " << row.port
              << (row.reversed ? ", reversed\\n" : "\\n");
  }
  std::cout << heron::Numbers::kBowThrusterCountsPerOutputTurn << " counts per output turn, "
            << heron::Numbers::kBowThrusterCountsPerMm << " per mm, "
            << heron::Numbers::kRudderLongestPulseUs << " us\\n";
}
"""


def printed(*words: str, cwd: Path) -> str:
    done = subprocess.run(words, cwd=cwd, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    return done.stdout


def test_python(make, tmp_path):
    (tmp_path / "devices.py").write_text(make("python-constants", path="devices.py"))
    (tmp_path / "use.py").write_text(PYTHON)
    assert printed(sys.executable, "use.py", cwd=tmp_path) == SEEN
    printed(sys.executable, "-m", "mypy", "--strict", "use.py", cwd=tmp_path)


@pytest.mark.parametrize("release", ["8", "17"])
def test_java(make, tool, tmp_path, release):
    (tmp_path / "HeronDevices.java").write_text(make("java-constants", path="HeronDevices.java"))
    (tmp_path / "Use.java").write_text(JAVA)
    compile_all(tool("javac"), release, tmp_path)
    words = (tool("java"), "-Duser.language=en", "-cp", "out", "Use")
    assert printed(*words, cwd=tmp_path) == SEEN


@pytest.mark.parametrize("compiler", ["g++", "clang++"])
def test_cpp(make, tool, tmp_path, compiler):
    (tmp_path / "heron.h").write_text(make("cpp-constants", path="heron.h"))
    (tmp_path / "use.cc").write_text(CPP)
    printed(tool(compiler), "-std=c++17", *STRICT, "use.cc", "-o", "use", cwd=tmp_path)
    assert printed(str(tmp_path / "use"), cwd=tmp_path) == SEEN
