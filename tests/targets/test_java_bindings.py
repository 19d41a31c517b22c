"""Java bindings, judged by javac for releases 8 and 17 and run on an invented library."""

from __future__ import annotations

import subprocess
from pathlib import Path

import pytest

from namegen.errors import UnusableTarget
from targets.boats import device, robot
from targets.machines import BOATS, arguments, transcript
from targets.standins import JAVA
from targets.test_java_constants import compile_all

STANDIN = Path(__file__).with_name("standins") / "java" / "Boat.java"
USE = """\
final class Use {
  public static void main(String[] machines) {
    for (String machine : machines) {
      int split = machine.indexOf('=');
      String boat = machine.substring(0, split);
      System.out.println("= " + boat);
      run(boat, new Boat(machine.substring(split + 1).split(",")));
    }
  }

  static void run(String name, Boat boat) {
    switch (name) {
%s    }
  }

  static void show(Boat.Drive bow, Boat.Hinge hatch, int asked) {
    String there = (bow == null ? "bow absent" : "bow there") + ", hatch ";
    System.out.println(there + (hatch == null ? "absent" : "there") + ", " + asked + " look-ups");
  }
}
"""
ONE = """\
      case "%(boat)s":
        try {
          %(boat)sStartUp found = %(boat)sStartUp.start(boat, System.out::println);
          show(found.bowThruster, found.hatchServo, boat.asked());
        } catch (%(boat)sStartUp.MissingDevices e) {
          System.out.println(e.getMessage());
        }
        System.out.print(%(boat)sStartUp.asFound(boat));
        break;
"""
NULL = {"missing": "", "look_up": {"*": "boat.find({name}, {type}.class)"}}


@pytest.mark.parametrize("options", [{}, NULL], ids=["exception", "null"])
def test_what_is_said_on_a_machine(make, tool, tmp_path, options):
    for boat, manifest in BOATS.items():
        text = make("java-bindings", manifest, f"{boat}StartUp.java", **{**JAVA, **options})
        (tmp_path / f"{boat}StartUp.java").write_text(text, encoding="ascii")
    (tmp_path / "Boat.java").write_text(STANDIN.read_text())
    (tmp_path / "Use.java").write_text(USE % "".join(ONE % {"boat": boat} for boat in BOATS))
    compile_all(tool("javac"), "8", tmp_path)
    shown = subprocess.run(
        [tool("java"), "-cp", "out", "Use", *arguments()],
        cwd=tmp_path, capture_output=True, text=True, check=True,
    )  # fmt: skip
    assert shown.stdout == transcript()


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
