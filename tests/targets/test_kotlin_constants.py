"""Kotlin constants, judged by kotlinc and read back by a program, in one run: it is slow."""

from __future__ import annotations

import os
import re
import subprocess
from collections.abc import Sequence
from pathlib import Path

import pytest

from namegen.errors import UnusableTarget
from namegen.model.manifests import Manifest
from targets.boats import device, robot
from targets.facts_of import SEEN, header_of, hex_of, numbers_of, rows_of, texts_of

USE = """\
package club

import club.boats.Heron

@Suppress(Heron.Motor.NET_WINCH)
fun of(name: String): Int =
    when (name) {
        Heron.Motor.BOW_THRUSTER -> Heron.DEVICES.size
        else -> 0
    }

const val BEFORE = Heron.Motor.FRONT_THRUSTER

fun number(value: Double) = value.toString().removeSuffix(".0")

fun main() {
    println(Heron.SETUP)
    for (row in Heron.DEVICES) {
        if (row.name == Heron.Motor.BOW_THRUSTER || row.name == Heron.Servo.RUDDER) {
            val way = if (row.reversed) ", reversed" else ""
            println("${row.name}, ${row.kind}, ${row.port}$way")
        }
    }
    val perTurn = number(Heron.Numbers.BOW_THRUSTER_COUNTS_PER_OUTPUT_TURN)
    val perMm = number(Heron.Numbers.BOW_THRUSTER_COUNTS_PER_MM)
    val pulse = number(Heron.Numbers.RUDDER_LONGEST_PULSE_US)
    println("$perTurn counts per output turn, $perMm per mm, $pulse us")
}
"""
READER = """\
fun hex(text: String) =
    text.toByteArray(Charsets.UTF_8).joinToString("", ":", ":") { "%02x".format(it) }
fun number(value: Double) = java.lang.Double.toHexString(value)
fun flag(value: Boolean) = if (value) "1" else "0"
"""


def program(robots: Sequence[Manifest]) -> tuple[str, list[str | tuple[str, float]]]:
    """Return a program that prints every constant of Boat0, Boat1, ..., and what it must print."""
    lines: list[str] = ["@file:Suppress(\"DEPRECATION\")", READER]  # fmt: skip
    wanted: list[str | tuple[str, float]] = []
    for index, manifest in enumerate(robots):
        boat = f"Boat{index}"
        lines.append(f"fun show{index}() {{")
        for name, text in zip(("ROBOT", "SETUP", "SHEET_MARK"), header_of(manifest), strict=True):
            lines.append(f"    println(hex({boat}.{name}))")
            wanted.append(hex_of(text))
        for (kind, constant), text in texts_of(manifest, "kotlin"):
            lines.append(f'    println("{constant}" + hex({boat}.{kind}.{constant}))')
            wanted.append(constant + hex_of(text))
        for constant, value in numbers_of(manifest, "kotlin"):
            lines.append(f'    println("{constant} " + number({boat}.Numbers.{constant}))')
            wanted.append((constant, value))
        lines.append(f"    for (row in {boat}.DEVICES) {{")
        lines.append("        print(hex(row.name) + hex(row.kind) + hex(row.port))")
        lines.append("        println(flag(row.reversed) + flag(row.optional))\n    }\n}")
        for name, kind, where, runs_reversed, optional in rows_of(manifest):
            flags = f"{runs_reversed:d}{optional:d}"
            wanted.append(hex_of(name) + hex_of(kind) + hex_of(where) + flags)
    calls = "".join(f"    show{index}()\n" for index in range(len(robots)))
    return "\n".join(lines) + f"\nfun main() {{\n{calls}}}\n", wanted


def as_wanted(line: str) -> str | tuple[str, float]:
    found = re.fullmatch(r"(\w+) (-?0x[0-9a-fp.-]+)", line)
    return (found[1], float.fromhex(found[2])) if found else line


def test_kotlinc_and_a_program_read_back_every_byte(make, tool, tmp_path: Path, hostile_robots):
    robots = hostile_robots[::3]
    for index, manifest in enumerate(robots):
        text = make("kotlin-constants", manifest, f"Boat{index}.kt", former_names=True)
        (tmp_path / f"Boat{index}.kt").write_text(text, encoding="utf-8", newline="")
    heron = make("kotlin-constants", path="Heron.kt", package="club.boats", former_names=True)
    (tmp_path / "Heron.kt").write_text(heron, encoding="utf-8")
    (tmp_path / "Use.kt").write_text(USE, encoding="utf-8")
    source, wanted = program(robots)
    (tmp_path / "Main.kt").write_text(source, encoding="utf-8")
    files = sorted(path.name for path in tmp_path.glob("*.kt"))
    done = subprocess.run(
        [tool("kotlinc"), *files, "-include-runtime", "-d", "all.jar"],
        env={**os.environ, "JAVA_OPTS": "-XX:TieredStopAtLevel=1 -XX:+UseSerialGC"},
        cwd=tmp_path, capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr[:4000]
    judged = re.findall(r"^(\w+\.kt):(\d+):\d+: warning: (.*)", done.stderr, re.M)
    assert [one[:2] for one in judged] == [("Use.kt", "12")], judged
    assert "deprecated. Now BOW_THRUSTER." in judged[0][2]
    shown = {
        name: subprocess.run(
            [tool("java"), "-cp", "all.jar", name],
            cwd=tmp_path, capture_output=True, text=True, check=True,
        ).stdout
        for name in ("MainKt", "club.UseKt")
    }  # fmt: skip
    assert [as_wanted(line) for line in shown["MainKt"].splitlines()] == wanted
    assert shown["club.UseKt"] == SEEN


def test_former_names_only_when_asked_for(make):
    assert "FRONT_THRUSTER" not in make("kotlin-constants", path="Heron.kt")


def test_lines_keep_to_100_columns_where_words_allow(make):
    rows = [
        device("n" * n + str(n), "motor", "bridge motor 1", does="Turns the big drum " * 8)
        for n in (5, 18, 30)
    ]
    text = make("kotlin-constants", robot(*rows), "Heron.kt", former_names=True)
    assert max(map(len, text.splitlines())) <= 100


def test_the_object_bears_the_name_of_its_file(make):
    assert "object Crew {" in make("kotlin-constants", path="a/Crew.kt")
    assert "object Hull {" in make("kotlin-constants", path="a/x.kt", object="Hull")
    with pytest.raises(UnusableTarget, match="'heron-devices' cannot be used"):
        make("kotlin-constants", path="a/heron-devices.kt")
