"""Java names made by hand are filled from the generated constants, and stay constants.

Checked from outside: javac compiles the code before and after, and it runs.
"""

from __future__ import annotations

import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.operations.changing import built, changed
from tests.operations.conftest import FILES

JAVA = {
    "club/a/Fitted.java": """\
package club.a;
import java.lang.annotation.*;
@Retention(RetentionPolicy.RUNTIME)
public @interface Fitted { String value(); }
""",
    "club/a/Boat.java": """\
package club.a;
public class Boat {
  public String motor(String name) { System.out.println("motor " + name); return name; }
  public String servo(String name) { System.out.println("servo " + name); return name; }
}
""",
    "club/a/Names.java": """\
package club.a;

public final class Names {
  public static final String BOW = "bowThruster";
  static final String[] ALL = {"bowThruster", "sternThruster"};
  static void each(Boat boat) { for (String one : ALL) { boat.motor(one); } }
  public interface Servos { String RUDDER = "rudder"; }
  public enum Thruster {
    STERN("sternThruster");
    final String id;
    Thruster(String id) { this.id = id; }
  }
}
""",
    "club/a/Main.java": """\
package club.a;

public class Main {
  @Fitted(Names.BOW) String bow;

  static int place(String name) {
    switch (name) {
      case Names.BOW: return 1;
      case Names.Servos.RUDDER: return 2;
      default: return 0;
    }
  }

  public static void main(String[] given) throws Exception {
    Boat boat = new Boat();
    boat.motor(Names.BOW);
    boat.motor(Names.Thruster.STERN.id);
    boat.servo(Names.Servos.RUDDER);
    Names.each(boat);
    System.out.println(place("bowThruster") + place("rudder"));
    System.out.println(Main.class.getDeclaredField("bow").getAnnotation(Fitted.class).value());
  }
}
""",
}
JAVA_NAMES = """\
package club.a;

import club.b.HeronDevices;

public final class Names {
  public static final String BOW = HeronDevices.Motor.BOW_THRUSTER;
  static final String[] ALL = {HeronDevices.Motor.BOW_THRUSTER, HeronDevices.Motor.STERN_THRUSTER};
  static void each(Boat boat) { for (String one : ALL) { boat.motor(one); } }
  public interface Servos { String RUDDER = HeronDevices.Servo.RUDDER; }
  public enum Thruster {
    STERN(HeronDevices.Motor.STERN_THRUSTER);
    final String id;
    Thruster(String id) { this.id = id; }
  }
}
"""
JAVA_BUILD = """\
  - target: java-constants
    to: "code/{robot}/club/b/{Robot}Devices.java"
    with: {package: club.b}
"""
ANNOTATION = "  - {annotation: Fitted, name_key: value}\n"


@pytest.mark.parametrize("release", ["8", "17"])
def test_java_names_are_filled_from_the_constants_and_stay_constant_expressions(
    boats: Path, tool: Callable[[str], str], release: str
):
    """A ``case`` and an annotation need them to be (JLS 17, 14.11.1 and 9.7.1); javac knows."""
    javac, java = tool("javac"), tool("java")
    (boats / "code/heron/main.py").unlink()
    settings = FILES["namegen.yaml"].replace("code:\n", ANNOTATION + "code:\n") + JAVA_BUILD
    code = {f"code/heron/{path}": text for path, text in JAVA.items()}
    built(boats, {"namegen.yaml": settings, **code})

    def run() -> str:
        sources = sorted((boats / "code/heron").rglob("*.java"))
        options = ["--release", release, "-Xlint:all,-options", "-Werror", "-d", boats / "out"]
        done = subprocess.run([javac, *options, *sources], capture_output=True, check=False)
        assert done.returncode == 0, done.stderr.decode()
        program = [java, "-cp", boats / "out", "club.a.Main"]
        done = subprocess.run(program, capture_output=True, check=True)
        return done.stdout.decode()

    said = run()
    assert said.splitlines()[-1] == "bowThruster" and "motor sternThruster" in said
    done = changed(boats)
    assert done.refused == ()
    assert (boats / "code/heron/club/a/Names.java").read_text() == JAVA_NAMES
    for path, text in JAVA.items():
        if not path.endswith("Names.java"):
            assert (boats / "code/heron" / path).read_text() == text
    assert run() == said
