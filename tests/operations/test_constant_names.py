"""After a rename, code that refers to a generated constant refers to it by its new name."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from namegen.operations import build
from namegen.operations.audit import audit
from namegen.operations.rename import Renamed, rename, write
from namegen.operations.workspace import open_workspace
from tests.operations.conftest import lay

PARTS = """\
parts:
  thruster-b: {kind: motor, encoder_cycles: 9, decoding: 2, encoder_on: motor, gear: 13}
"""
LIBRARY = """\
class Boat:
    def motor(self, name): return print(name)
boat = Boat()
"""


def built(root: Path) -> Path:
    build.write(build.plan(open_workspace(root)))
    return root


def renamed(root: Path, code: str) -> tuple[str, Renamed]:
    """Return what becomes of the code when the thruster is renamed, and what is said."""
    lay(root, {"code/heron/main.py": code, "code/heron/library.py": LIBRARY})
    workspace = open_workspace(root)
    done = rename(workspace, "bowThruster", "bowPusher")
    write(workspace, done)
    return (root / "code/heron/main.py").read_text(encoding="utf-8"), done


@pytest.mark.parametrize(
    "code",
    [
        "from devices import Motor\na = boat.motor(Motor.OLD)\n",
        "import devices\na = boat.motor(devices.Motor.OLD)\nprint(devices.Motor.OLD)\n",
        "import devices as d\na = boat.motor(d.Motor.OLD)\n",
        "from devices import Motor as M\nBOW = M.OLD\na = boat.motor(BOW)\n",
        "from devices import *\na = boat.motor(Motor . OLD)\n",
        "def f(boat):\n    from devices import Motor\n    boat.motor(Motor.OLD)\nf(boat)\n",
    ],
)
def test_every_way_to_the_constant_is_followed(boats: Path, code: str):
    code = "from library import boat\n" + code
    after, done = renamed(built(boats), code.replace("OLD", "BOW_THRUSTER"))
    assert after == code.replace("OLD", "BOW_PUSHER")
    assert done.left == ()
    built(boats)
    facts = audit(open_workspace(boats)).facts
    assert {one.text for file in facts for one in file.lookups} == {"bowPusher"}
    # CPython is the judge: what is not there would end the program.
    ran = subprocess.run(
        [sys.executable, "main.py"],
        check=False,
        cwd=boats / "code/heron",
        capture_output=True,
        text=True,
    )
    assert ran.returncode == 0, ran.stderr
    assert set(ran.stdout.split()) == {"bowPusher"}


JAVA_USES = {
    "a member imported": (
        "import static club.b.HeronDevices.Motor.BOW_THRUSTER;",
        'System.out.println(BOW_THRUSTER + BOW_THRUSTER.length() + "BOW_THRUSTER");',
    ),
    "all members imported": (
        "import static club.b.HeronDevices.Motor.*;",
        "int mine = 1; System.out.println(BOW_THRUSTER + (mine + 1));",
    ),
    "a type imported": (
        "import club.b.HeronDevices.Motor;",
        "System.out.println(Motor.BOW_THRUSTER);",
    ),
    "a variable of that name": (
        "import static club.b.HeronDevices.Motor.BOW_THRUSTER;",
        "{ int BOW_THRUSTER = 3; System.out.println(BOW_THRUSTER); } "
        "System.out.println(BOW_THRUSTER);",
    ),
}


@pytest.mark.parametrize("case", JAVA_USES)
def test_java_imports_of_constants_are_followed(boats: Path, tool: Callable[[str], str], case: str):
    """What is not there would stop javac (JLS 17, 7.5.3)."""
    javac = tool("javac")
    added, body = JAVA_USES[case]
    program = "package club.a;\n\n%s\n\nclass Main {\n  void f() { %s }\n}\n"
    target = (
        '  - target: java-constants\n    to: "code/{robot}/club/b/{Robot}Devices.java"\n'
        "    with: {package: club.b}\n"
    )
    settings = (boats / "namegen.yaml").read_text() + target
    main = boats / "code/heron/club/a/Main.java"
    lay(boats, {"namegen.yaml": settings, "code/heron/club/a/Main.java": program % (added, body)})
    built(boats)
    workspace = open_workspace(boats)
    write(workspace, rename(workspace, "bowThruster", "bowPusher"))
    new = program % (added, body)
    if "variable" in case:
        new = new.replace("Motor.BOW_THRUSTER;", "Motor.BOW_PUSHER;")
        new = new.replace("} System.out.println(BOW_THRUSTER)", "} System.out.println(BOW_PUSHER)")
    else:
        new = new.replace("BOW_THRUSTER", "BOW_PUSHER").replace('"BOW_PUSHER"', '"BOW_THRUSTER"')
    assert main.read_text() == new
    built(boats)
    sources = [str(path) for path in (boats / "code").rglob("*.java")]
    done = subprocess.run([javac, "-d", boats / "out", *sources], capture_output=True, check=False)
    assert done.returncode == 0, done.stderr.decode()


def test_numbers_go_with_their_device(boats: Path):
    catalogue = (boats / "catalogue.yaml").read_text()
    manifest = (boats / "robots/heron.yaml").read_text()
    manifest = manifest.replace("bridge motor 1,", "bridge motor 1, part: thruster-b,")
    lay(boats, {"catalogue.yaml": catalogue + PARTS, "robots/heron.yaml": manifest})
    code = "from devices import Numbers\nturn = Numbers.{}_COUNTS_PER_OUTPUT_TURN\n"
    after, _ = renamed(built(boats), code.format("BOW_THRUSTER"))
    assert after == code.format("BOW_PUSHER")
    assert (
        "BOW_PUSHER_COUNTS_PER_OUTPUT_TURN: Final = 234.0"
        in (built(boats) / "code/heron/devices.py").read_text()
    )


@pytest.mark.parametrize(
    ("code", "left"),
    [
        ("class Motor:\n    BOW_THRUSTER = 1\nprint(Motor.BOW_THRUSTER)\n", [2, 3]),
        ("import other\nprint(other.Motor.BOW_THRUSTER)\n", [2]),
        ("from devices import Motor\nprint('BOW_THRUSTER', x.BOW_THRUSTER)\n", [2, 2]),
        ("from devices import Motor\nprint(Motor.BOW_THRUSTER.BOW_THRUSTERS)\n", []),
        ("from devices import Motor\nprint(Motor.BOW_THRUSTER\n", [2]),  # not valid
    ],
)
def test_what_may_mean_something_else_stays_and_is_told(boats: Path, code: str, left: list[int]):
    after, done = renamed(built(boats), code)
    changed = code.replace("Motor.BOW_THRUSTER.", "Motor.BOW_PUSHER.")
    assert after == (changed if not left else code)
    assert [one.place.line for one in done.left] == left


def test_an_edited_output_that_keeps_the_old_constant_is_not_left_behind(boats: Path):
    built(boats)
    output = boats / "code/heron/devices.py"
    output.write_text(output.read_text() + "MINE = 1\n")
    code = "from devices import Motor\nprint(Motor.BOW_THRUSTER)\n"
    after, done = renamed(boats, code)
    assert after == code
    assert [one.place.line for one in done.left] == [2]


def test_a_file_keeps_its_bytes_and_its_names_typed_by_hand_follow_too(boats: Path):
    built(boats)
    old = (
        b"\xef\xbb\xbffrom devices import Motor\r\n"
        b"a = boat.motor(Motor.%s)\t# \xc3\xa4\r\nb = boat.motor('%s')"
    )
    lay(boats, {"code/heron/main.py": ""})
    (boats / "code/heron/main.py").write_bytes(old % (b"BOW_THRUSTER", b"bowThruster"))
    workspace = open_workspace(boats)
    write(workspace, rename(workspace, "bowThruster", "bowPusher"))
    assert (boats / "code/heron/main.py").read_bytes() == old % (b"BOW_PUSHER", b"bowPusher")


def test_the_field_of_a_start_up_module_is_told(boats: Path):
    settings = (boats / "namegen.yaml").read_text()
    settings += (
        '  - target: python-bindings\n    to: "code/{robot}/start_up.py"\n'
        "    with: {through: boat, through_type: Boat, imports: [from library import Boat],"
        ' types: {"*": object}, look_up: {"*": "boat.motor({name})"}, missing: KeyError}\n'
    )
    lay(boats, {"namegen.yaml": settings})
    code = "from start_up import start\ndevices = start(boat)\ndevices.bow_thruster.push(1)\n"
    after, done = renamed(built(boats), code)
    assert after == code
    assert [(one.place.line, one.text) for one in done.left] == [(3, "bow_thruster")]
    assert "it is bow_pusher now" in done.left[0].advice
