"""Java bindings, judged by javac for releases 8 and 17 and run on an invented library."""

from __future__ import annotations

import csv
import io
import subprocess
from collections.abc import Sequence
from pathlib import Path

import pytest

from namegen.errors import UnusableTarget
from namegen.model.manifests import Manifest
from targets.boats import device, robot
from targets.facts_of import hex_of
from targets.machines import BOATS, arguments, as_found_rows, told_where_nothing_is, transcript
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
SHOW = """\
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

final class Show {
  static void show(String text) {
    StringBuilder hex = new StringBuilder(":");
    for (byte each : text.getBytes(StandardCharsets.UTF_8)) {
      hex.append(String.format("%02x", each));
    }
    System.out.println(hex.append(':'));
  }

  static String name(String hex) {
    byte[] bytes = new byte[hex.length() / 2];
    for (int i = 0; i < bytes.length; i++) {
      bytes[i] = (byte) Integer.parseInt(hex.substring(2 * i, 2 * i + 2), 16);
    }
    return new String(bytes, StandardCharsets.UTF_8);
  }

  public static void main(String[] none) {
"""
SHOW_ONE = """\
    {
      List<String> said = new ArrayList<>();
      try {
        Boat%(index)dStartUp.start(new Boat(), said::add);
      } catch (Boat%(index)dStartUp.MissingDevices e) {
        said.add(e.getMessage());
      }
      show(String.join("\\n", said));
      Boat full = new Boat(%(names)s);
      Boat%(index)dStartUp.start(full, Show::show);
      show(Boat%(index)dStartUp.asFound(full));
    }
"""
SHADOWS = robot(
    *(
        device(name, "motor", optional=index % 2 == 0)
        for index, name in enumerate(
            ("boat", "search", "devices", "machine", "found", "row", "start", "describe", "warn")
        )
    )
)
"""Devices named as something in the generated class: none of them may hide it."""
CHECKED = {
    "missing": "Boat.Gone | Boat.NotFitted",
    "look_up": {"motor": "boat.motor({name})", "*": "boat.need({name}, {type}.class)"},
}
NULL = {"missing": "", "look_up": {"*": "boat.find({name}, {type}.class)"}}


def show(fleet: Sequence[Manifest]) -> str:
    """Return a program that starts hostile robots on nothing and on all that they have."""
    ones = [
        SHOW_ONE % {"index": index, "names": ", ".join(f'name("{name.encode().hex()}")'
                                                       for name in manifest.devices)}
        for index, manifest in enumerate(fleet)
    ]  # fmt: skip
    return SHOW + "".join(ones) + "  }\n}\n"


@pytest.mark.parametrize("release", ["8", "17"])
@pytest.mark.parametrize("options", [{}, NULL, CHECKED], ids=["exception", "null", "checked"])
def test_what_is_said_on_a_machine(make, tool, tmp_path, options, release):
    for boat, manifest in BOATS.items():
        text = make("java-bindings", manifest, f"{boat}StartUp.java", **{**JAVA, **options})
        (tmp_path / f"{boat}StartUp.java").write_text(text, encoding="ascii")
    (tmp_path / "Boat.java").write_text(STANDIN.read_text())
    (tmp_path / "Use.java").write_text(USE % "".join(ONE % {"boat": boat} for boat in BOATS))
    compile_all(tool("javac"), release, tmp_path)
    shown = subprocess.run(
        [tool("java"), "-cp", "out", "Use", *arguments()],
        cwd=tmp_path, capture_output=True, text=True, check=True,
    )  # fmt: skip
    assert shown.stdout == transcript()


@pytest.mark.parametrize("release", ["8", "17"])
def test_hostile_robots_are_told_as_they_are_named(make, tool, tmp_path, hostile_robots, release):
    fleet = [robot(), SHADOWS, *hostile_robots]
    (tmp_path / "Boat.java").write_text(STANDIN.read_text())
    for index, manifest in enumerate(fleet):
        name = f"Boat{index}StartUp"
        text = make("java-bindings", manifest, f"{name}.java", **JAVA)
        (tmp_path / f"{name}.java").write_text(text, encoding="ascii", newline="")
    (tmp_path / "Show.java").write_text(show(fleet))
    compile_all(tool("javac"), release, tmp_path)
    lines = subprocess.run(
        [tool("java"), "-cp", "out", "Show"],
        cwd=tmp_path, capture_output=True, text=True, check=True,
    ).stdout.splitlines()  # fmt: skip
    assert lines[::2] == [hex_of(told_where_nothing_is(manifest)) for manifest in fleet]
    for line, manifest in zip(lines[1::2], fleet, strict=True):
        text = bytes.fromhex(line.strip(":")).decode()
        assert list(csv.reader(io.StringIO(text, newline=""))) == as_found_rows(manifest)


def test_a_field_that_java_keeps_for_itself(make):
    with pytest.raises(UnusableTarget, match="it is a keyword of Java"):
        make("java-bindings", robot(device("switch", "switch")), "A.java", **JAVA)
