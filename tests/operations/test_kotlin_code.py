"""A boat with Kotlin code, from its first audit to constants and a rename.

Checked from outside: kotlinc compiles the code before and after, and it runs.
"""

from __future__ import annotations

import subprocess
from collections.abc import Callable, Sequence
from pathlib import Path

import pytest

from namegen.operations import build, fix, rename
from namegen.operations.audit import audit
from namegen.operations.code_files import ALL
from namegen.operations.learn import learn, row
from namegen.operations.workspace import open_workspace
from tests.operations.changing import built, changed
from tests.operations.conftest import FILES, lay

pytestmark = pytest.mark.xdist_group("kotlinc")  # one worker, so that one compiles at a time
ROWS = """\
lookups:
  - {call: motor, kind: motor}
  - {call: get, kind_by: type-argument, kinds: {Motor: motor, Servo: servo}}
  - {subscript: devices}
  - {annotation: Fitted, name_key: name, kind_by: declared-type, kinds: {Servo: servo}}
"""
BUILD = """\
  - target: kotlin-constants
    to: "code/{robot}/club/names/{Robot}Devices.kt"
    with: {package: club.names}
"""
SETTINGS = FILES["namegen.yaml"].partition("lookups:")[0] + ROWS + "code:\n"
SETTINGS += FILES["namegen.yaml"].partition("code:\n")[2] + BUILD
BOAT = """\
package club.boatlib

open class Part
class Motor : Part()
class Servo : Part()

@Target(AnnotationTarget.FIELD)
annotation class Fitted(val name: String)

class Boat {
    val devices = Devices()

    fun motor(name: String): Motor? = Motor().also { println("motor $name") }

    inline fun <reified T : Part> get(name: String): T? = null.also { println("get $name") }
}

class Devices {
    operator fun get(name: String): Part = Part().also { println("[] $name") }
}
"""
NAMES = """\
package club.boats

object Names {
    const val BOW = "frontThruster"
}

enum class Fin(val id: String) { RUDDER("rudder"), SPARE("rudder ") }
"""
MAIN = """\
package club.boats

import club.boatlib.*

class Skim(boat: Boat) {
\t@Fitted("rudder") lateinit var rudder: Servo
    val bow = boat.motor(Names.BOW)
    val stern by lazy { boat.get<Motor>("sternthruster") }    // é\r
    val last = boat.get<Servo>("bowThruster")   // namegen: allow wrong-kind because it is a test
    val ends = listOf("sternThruster", "bowThruster${""}").map { boat.devices[it] }

    fun turn(boat: Boat, name: String) = boat.get<Servo>(Fin.SPARE.id) ?: boat.get<Servo>(name)
}

fun main() {
    val boat = Boat()
    val skim = Skim(boat)
    skim.stern
    skim.turn(boat, "run")
}
"""
CODE = {
    "code/heron/club/boatlib/Boat.kt": BOAT,
    "code/heron/club/boats/Names.kt": NAMES,
    "code/heron/club/boats/Main.kt": MAIN,
}


@pytest.fixture
def heron(boats: Path) -> Path:
    (boats / "code/heron/main.py").unlink()
    return built(boats, {"namegen.yaml": SETTINGS, **CODE})


def said(root: Path) -> list[tuple[str, int, str, str | None]]:
    """Return what an audit finds: file, line, kind, and the text that was found."""
    findings = audit(open_workspace(root)).report.findings
    return [
        (one.place.path.rpartition("/")[2], one.place.line, one.kind, one.found) for one in findings
    ]


FOUND = [
    ("Main.kt", 8, "letter-case", "sternthruster"),
    ("Main.kt", 12, "not-checkable", None),
    ("Names.kt", 4, "retired-name", "frontThruster"),
    ("Names.kt", 7, "look-alike", "rudder "),
]


def test_an_audit_tells_what_is_wrong(heron: Path):
    assert set(FOUND) <= set(said(heron))
    assert {kind for _, _, kind, _ in said(heron)} - {kind for _, _, kind, _ in FOUND} <= {
        "crossed-names",
        "double-lookup",
    }


def test_a_repair_changes_the_names_and_no_other_byte(heron: Path):
    done = fix.fix(open_workspace(heron), ALL, fix.SAFE)
    fix.write(open_workspace(heron), done)
    names = NAMES.replace("frontThruster", "bowThruster").replace("rudder ", "rudder")
    assert (heron / "code/heron/club/boats/Names.kt").read_bytes() == names.encode()
    main = MAIN.replace("sternthruster", "sternThruster")
    assert (heron / "code/heron/club/boats/Main.kt").read_bytes() == main.encode()
    assert (heron / "code/heron/club/boatlib/Boat.kt").read_bytes() == BOAT.encode()
    assert fix.fix(open_workspace(heron), ALL, fix.SAFE).changes == ()


def ran(tool: Callable[[str], str], root: Path, jar: Path) -> str:
    """Compile all code of the boat, and return what it prints."""
    sources = sorted((root / "code/heron").rglob("*.kt"))
    command = [tool("kotlinc"), *sources, "-include-runtime", "-d", jar]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    program: Sequence[str] = [tool("java"), "-cp", str(jar), "club.boats.MainKt"]
    return subprocess.run(program, capture_output=True, text=True, check=True).stdout


def test_names_become_constants_that_follow_a_rename(heron: Path, tool, tmp_path: Path):
    fix.write(open_workspace(heron), fix.fix(open_workspace(heron), ALL, fix.SAFE))
    changed(heron)
    names = (heron / "code/heron/club/boats/Names.kt").read_text()
    assert "const val BOW = HeronDevices.Motor.BOW_THRUSTER" in names
    assert "import club.names.HeronDevices\n" in names
    main = (heron / "code/heron/club/boats/Main.kt").read_bytes().decode()
    assert "import club.boatlib.*\nimport club.names.HeronDevices\n" in main
    assert "boat.get<Motor>(HeronDevices.Motor.STERN_THRUSTER) }    // é\r\n" in main
    workspace = open_workspace(heron)
    done = rename.rename(workspace, "bowThruster", "bowPusher")
    rename.write(workspace, done)
    assert [one.place.line for one in done.left] == [10, 11, 11]  # the text, and where it is used
    build.write(build.plan(open_workspace(heron)))
    printed = ran(tool, heron, tmp_path / "all.jar").splitlines()
    assert printed == [
        "motor bowPusher",
        "get bowThruster",  # asked for as a servo, so that it is left, and said
        "[] sternThruster",
        "[] bowThruster",  # put together from pieces
        "get sternThruster",
        "get rudder",
        "get run",
    ]
    retired = [line for _, line, kind, _ in said(heron) if kind == "retired-name"]
    assert retired == [10, 11]


def test_look_ups_are_learnt(boats: Path):
    (boats / "code/heron/main.py").unlink()
    code = """\
        fun skim(boat: Boat) {
            val bow = boat.get<Motor>("bowThruster")
            val stern = boat.get<Motor>("sternThruster")
            val rudder = boat.get<Servo>("rudder"); val same = boat.get<Servo>("rudder")
            val other = boat.get<Motor>("bowThruster")
            Sensor(boat, name = "rudder"); Sensor(boat, name = "bowThruster")
            tell("one", "two")
        }
    """
    settings = FILES["namegen.yaml"].replace(
        "lookups:\n  - {call: motor, kind: motor}\n  - {call: servo, kind: servo}\n", ""
    )
    lay(boats, {"namegen.yaml": settings, "code/heron/Skim.kt": code})
    rows = [row(one.rule) for one in learn(open_workspace(boats)).found]
    assert rows == [
        "{call: get, kind_by: type-argument, kinds: {Motor: motor, Servo: servo}}",
        "{new: Sensor, name_key: name}",
    ]


def test_what_is_found_beside_naming(boats: Path):
    (boats / "code/heron/main.py").unlink()
    code = """\
        class Skim(boat: Boat) {
            private val bow by lazy { boat.motor("sternThruster") }
            val stern: Motor? = boat?.motor("bowThruster")?.apply { countsPerTurn = 3 }
            val again = boat.motor("bowThruster")!!
            val lost = boat.motor(lostName())
            fun each(names: List<String>) = names.map { boat.motor(it) }
        }
    """
    lay(boats, {"code/heron/Skim.kt": code})
    assert said(boats) == [
        ("Skim.kt", 2, "crossed-names", "sternThruster"),
        ("Skim.kt", 3, "crossed-names", "bowThruster"),
        ("Skim.kt", 4, "double-lookup", "bowThruster"),
        ("Skim.kt", 5, "not-checkable", None),
        ("Skim.kt", 6, "not-checkable", None),
    ]
    known = [line for line in code.splitlines() if "lost" not in line and "each" not in line]
    lay(boats, {"code/heron/Skim.kt": "\n".join(known)})
    assert ("heron.yaml", 7, "unused-device", "rudder") in said(boats)


def test_a_wrapper_is_proposed_and_then_checked(boats: Path):
    (boats / "code/heron/main.py").unlink()
    code = (
        "class Wheel(boat: Boat, val title: String, name: String) {\n"
        "    val motor = boat.motor(name)\n}\n"
        'val bow = Wheel(boat, "bow", name = "bowthruster")\n'
    )
    lay(boats, {"code/heron/Wheel.kt": code})
    (unknown,) = [
        one for one in audit(open_workspace(boats)).report.findings if one.kind == "not-checkable"
    ]
    assert "{call: Wheel, name_at: 2, name_key: name, kind: motor}" in unknown.message
    settings = FILES["namegen.yaml"].replace(
        "code:\n", "  - {call: Wheel, name_at: 2, name_key: name, kind: motor}\ncode:\n"
    )
    lay(boats, {"namegen.yaml": settings})
    assert ("Wheel.kt", 4, "letter-case", "bowthruster") in said(boats)
    assert "not-checkable" not in {kind for _, _, kind, _ in said(boats)}
