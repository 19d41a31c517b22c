"""Kotlin bindings, judged by kotlinc and run on an invented library, in one compilation."""

from __future__ import annotations

import csv
import io
import os
import subprocess
from collections.abc import Sequence
from pathlib import Path

import pytest

from namegen.errors import UnusableTarget
from namegen.model.manifests import Manifest
from targets.boats import device, robot
from targets.facts_of import hex_of
from targets.machines import (
    BOATS,
    arguments,
    as_found_rows,
    told_where_nothing_is,
    transcript,
)
from targets.standins import KOTLIN

pytestmark = pytest.mark.xdist_group("kotlinc")  # one worker, so that it compiles once
STANDIN = Path(__file__).with_name("standins") / "kotlin" / "Boat.kt"
VARIANTS = {
    "exception": {"missing": ("IllegalStateException", "NotFitted")},
    "nothing": {
        "missing": (),
        "through": "seen",
        "look_up": {"*": "seen.find<{type}>({name})"},
    },
}
USE = """\
package club.%(variant)s

import club.boatlib.Boat
import club.boatlib.Drive

%(functions)s
fun main(machines: Array<String>) {
    for (machine in machines) {
        val (name, fitted) = machine.split("=")
        println("= $name")
        val boat = Boat(*fitted.split(",").toTypedArray())
        when (name) {
%(calls)s        }
    }
}
"""
# Under -Werror a safe call on what cannot be null does not compile, nor a plain one on what can.
ONE = """\
fun start%(boat)s(boat: Boat) {
    try {
        val found = %(boat)sStartUp.start(boat, { println(it) })
        val bow: Drive = found.bowThruster
        val hatch = found.hatchServo?.let { "there" } ?: "absent"
        println("bow ${if (bow.works()) "there" else ""}, hatch $hatch, ${boat.asked} look-ups")
    } catch (e: %(boat)sStartUp.MissingDevices) {
        println(e.message)
    }
    print(%(boat)sStartUp.asFound(boat))
}
"""
FLEET = """\
package club.fleet

import club.boatlib.Boat

fun hex(text: String) =
    text.toByteArray(Charsets.UTF_8).joinToString("", ":", ":") { "%02x".format(it) }
fun unhex(text: String) =
    String(text.chunked(2).map { it.toInt(16).toByte() }.toByteArray(), Charsets.UTF_8)

"""
SHOW = """\
fun show%(index)d() {
    val said = mutableListOf<String>()
    try {
        Boat%(index)dStartUp.start(Boat(), { said.add(it) })
    } catch (e: Boat%(index)dStartUp.MissingDevices) {
        said.add(e.message.orEmpty())
    }
    println(hex(said.joinToString("\\n")))
    val full = Boat(%(names)s)
    Boat%(index)dStartUp.start(full, { println(it) })
    println(hex(Boat%(index)dStartUp.asFound(full)))
}
"""
SHADOWS = robot(
    *(
        device(name, "motor", optional=index % 2 == 0)
        for index, name in enumerate(
            ("boat", "search", "seen", "start", "describe", "row", "it", "value", "machine")
        )
    )
)
"""Devices named as something in the generated class: none of them may hide it."""


@pytest.fixture(scope="module")
def fleet(hostile_robots) -> list[Manifest]:
    return [robot(), SHADOWS, *hostile_robots[::3]]


@pytest.fixture(scope="module")
def jar(make, tool, fleet, tmp_path_factory) -> Path:
    """Compile everything that these tests run, since kotlinc takes long to start."""
    folder = tmp_path_factory.mktemp("kotlin")
    (folder / "Boat.kt").write_text(STANDIN.read_text(), encoding="utf-8")
    for variant, options in VARIANTS.items():
        for boat, manifest in BOATS.items():
            given = {**KOTLIN, "package": f"club.{variant}", "class": f"{boat}StartUp", **options}
            text = make("kotlin-bindings", manifest, f"{boat}.kt", **given)
            (folder / f"{variant}{boat}.kt").write_text(text, encoding="utf-8")
        (folder / f"{variant}.kt").write_text(use(variant), encoding="utf-8")
    for index, manifest in enumerate(fleet):
        given = {**KOTLIN, "package": "club.fleet"}
        text = make("kotlin-bindings", manifest, f"Boat{index}StartUp.kt", **given)
        (folder / f"Boat{index}.kt").write_text(text, encoding="utf-8", newline="")
    (folder / "fleet.kt").write_text(show(fleet), encoding="utf-8")
    done = subprocess.run(
        [tool("kotlinc"), "-Werror", *sorted(path.name for path in folder.glob("*.kt")),
         "-include-runtime", "-d", "all.jar"],
        env={**os.environ, "JAVA_OPTS": "-XX:TieredStopAtLevel=1 -XX:+UseSerialGC"},
        cwd=folder, capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr[:4000]
    return folder / "all.jar"


def use(variant: str) -> str:
    functions = "\n".join(ONE % {"boat": boat} for boat in BOATS)
    calls = "".join(f'            "{boat}" -> start{boat}(boat)\n' for boat in BOATS)
    return USE % {"variant": variant, "functions": functions, "calls": calls}


def show(fleet: Sequence[Manifest]) -> str:
    shows = [
        SHOW % {"index": index, "names": ", ".join(f'unhex("{name.encode().hex()}")'
                                                   for name in manifest.devices)}
        for index, manifest in enumerate(fleet)
    ]  # fmt: skip
    calls = "".join(f"    show{index}()\n" for index in range(len(fleet)))
    return FLEET + "\n".join(shows) + f"\nfun main() {{\n{calls}}}\n"


@pytest.fixture
def shown(tool, jar):
    """Return a function that runs a class of the jar and gives what it prints."""

    def run(name: str, *words: str) -> str:
        return subprocess.run(
            [tool("java"), "-cp", str(jar), name, *words],
            capture_output=True, text=True, encoding="utf-8", check=True,
        ).stdout  # fmt: skip

    return run


@pytest.mark.parametrize("variant", VARIANTS)
def test_what_is_said_on_a_machine(shown, variant):
    assert shown(f"club.{variant}.{variant.title()}Kt", *arguments()) == transcript()


def test_hostile_robots_are_told_as_they_are_named(shown, fleet):
    lines = shown("club.fleet.FleetKt").splitlines()
    assert lines[::2] == [hex_of(told_where_nothing_is(manifest)) for manifest in fleet]
    for line, manifest in zip(lines[1::2], fleet, strict=True):
        text = bytes.fromhex(line.strip(":")).decode()
        assert list(csv.reader(io.StringIO(text, newline=""))) == as_found_rows(manifest)


def test_lines_keep_to_100_columns_where_words_allow(make):
    rows = [
        device("n" * n + str(n), "motor", "bridge motor 1", does="Turns the big drum " * 8)
        for n in (5, 10, 18, 22)
    ]
    text = make("kotlin-bindings", robot(*rows), "HeronStartUp.kt", **KOTLIN)
    assert max(map(len, text.splitlines())) <= 100


def test_the_class_bears_the_name_of_its_file(make):
    assert "class Crew private" in make("kotlin-bindings", path="a/Crew.kt", **KOTLIN)
    with pytest.raises(UnusableTarget, match="'heron-start' cannot be used"):
        make("kotlin-bindings", path="a/heron-start.kt", **KOTLIN)


def test_a_field_that_kotlin_keeps_for_itself(make):
    with pytest.raises(UnusableTarget, match="it is a hard keyword of Kotlin"):
        make("kotlin-bindings", robot(device("object", "lamp")), "A.kt", **KOTLIN)
