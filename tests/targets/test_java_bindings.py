"""Java bindings, judged by javac for releases 8 and 17 and run on an invented library."""

from __future__ import annotations

import subprocess
from pathlib import Path

import pytest

from namegen.errors import UnusableTarget
from namegen.model.sheet_mark import sheet_mark
from targets.boats import HERON, device, robot
from targets.standins import JAVA
from targets.test_java_constants import compile_all

STANDIN = Path(__file__).with_name("standins") / "java" / "Boat.java"
ALL = tuple(HERON.devices)
MARK = f"heron, setup harvest, sheet mark {sheet_mark(HERON)}"
USE = """\
final class Use {
  public static void main(String[] fitted) {
    Boat boat = new Boat(fitted);
    try {
      HeronStartUp devices = HeronStartUp.start(boat, System.out::println);
      Boat.Drive bow = devices.bowThruster;
      Boat.Hinge hatch = devices.hatchServo;
      System.out.println((bow != null) + " " + (hatch != null) + " " + boat.asked());
    } catch (HeronStartUp.MissingDevices e) {
      System.out.println(e.getMessage());
    }
    System.out.print(HeronStartUp.asFound(boat));
  }
}
"""
CASES = {
    "all": ((), f"true true {len(ALL)}\n"),
    "optional": (
        ("hatchServo",),
        f"{MARK}: absent, as these may be:\n  hatchServo (servo): should be at stern servo 4\n"
        f"true false {len(ALL)}\n",
    ),
    "required": (
        ("hatchServo", "rudder", "bumpBow"),
        f"{MARK}: absent, as these may be:\n  hatchServo (servo): should be at stern servo 4\n"
        f"{MARK}: 2 devices were not found.\n"
        "  rudder (servo): should be at stern servo 3\n"
        "  bumpBow (switch): should be at bridge digital 2\n"
        "Check the plugs, and the names in the machine's configuration.\n",
    ),
    "tank-test": (
        ("netWinch",),
        f"{MARK}: 1 device was not found.\n  netWinch (motor): should be at bridge motor 3\n"
        "This fits tank-test; select harvest on the machine, or change `selected` in "
        "robots/heron.yaml.\n",
    ),
}
NULL = {"missing": "", "look_up": {"*": "boat.find({name}, {type}.class)"}}


@pytest.mark.parametrize("options", [{}, NULL], ids=["exception", "null"])
def test_messages_on_a_machine(make, tool, tmp_path, options):
    text = make("java-bindings", path="HeronStartUp.java", **{**JAVA, **options})
    (tmp_path / "HeronStartUp.java").write_text(text, encoding="ascii")
    (tmp_path / "Boat.java").write_text(STANDIN.read_text())
    (tmp_path / "Use.java").write_text(USE)
    compile_all(tool("javac"), "8", tmp_path)
    for away, told in CASES.values():
        shown = subprocess.run(
            [tool("java"), "-cp", "out", "Use", *(name for name in ALL if name not in away)],
            cwd=tmp_path, capture_output=True, text=True, check=True,
        )  # fmt: skip
        before, rows = shown.stdout.split("name,kind,port,found\n")
        assert before == told
        assert [row.split(",")[0] for row in rows.splitlines()] == list(ALL)
        assert {row.split(",")[0] for row in rows.splitlines() if row.endswith(",no")} == set(away)


@pytest.mark.parametrize("release", ["8", "17"])
def test_javac_takes_hostile_robots(make, tool, tmp_path, hostile_robots, release):
    (tmp_path / "Boat.java").write_text(STANDIN.read_text())
    for index, manifest in enumerate([robot(), *hostile_robots]):
        name = f"Boat{index}StartUp"
        text = make("java-bindings", manifest, f"{name}.java", **JAVA)
        (tmp_path / f"{name}.java").write_text(text, encoding="ascii", newline="")
    compile_all(tool("javac"), release, tmp_path)


def test_a_field_that_java_keeps_for_itself(make):
    with pytest.raises(UnusableTarget, match="it is a keyword of Java"):
        make("java-bindings", robot(device("switch", "switch")), "A.java", **JAVA)
