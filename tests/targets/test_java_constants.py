"""Java constants, judged by javac for releases 8 and 17 and read back by a program."""

from __future__ import annotations

import re
import subprocess
from pathlib import Path

import pytest

from namegen.errors import UnusableTarget
from namegen.model.manifests import Manifest
from namegen.model.sheet_mark import sheet_mark
from targets.boats import HERON, device, robot
from targets.facts_of import numbers_of, texts_of

READER = Path(__file__).with_name("Names.java")


def hex_of(text: str) -> str:
    return "=" + "".join(f"{ord(char):x}," for char in text)


def expected(name: str, manifest: Manifest) -> set[str]:
    lines = {
        f"{name}.ROBOT {hex_of(manifest.robot)}",
        f"{name}.SETUP {hex_of(manifest.selected or '')}",
        f"{name}.SHEET_MARK {hex_of(sheet_mark(manifest))}",
    }
    for (kind, constant), text in texts_of(manifest, "java"):
        lines.add(f"{name}${kind}.{constant} {hex_of(text)}")
    for constant, value in numbers_of(manifest, "java"):
        lines.add(f"{name}$Numbers.{constant} {value.hex()}")
    for one in manifest.devices_in():
        where = hex_of(", ".join(map(str, one.ports)))
        flags = f"{one.reversed} {one.optional}".lower()
        lines.add(f"{name} row {hex_of(one.name)} {hex_of(one.kind)} {where} {flags}")
    return lines


def as_wanted(line: str) -> str:
    """Return a line of the reader with its number as Python writes it."""
    place, _, number = line.rpartition(" 0x")
    return f"{place} {float.fromhex('0x' + number).hex()}" if place else line


def compile_all(javac: str, release: str, folder: Path) -> None:
    words = [javac, "--release", release, "-encoding", "US-ASCII", "-Xlint:all,-options", "-Werror"]
    done = subprocess.run(
        [*words, "-d", "out", *sorted(path.name for path in folder.glob("*.java"))],
        cwd=folder,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr


@pytest.mark.parametrize("release", ["8", "17"])
def test_javac_and_a_program_read_back_every_name(make, tool, tmp_path, hostile_robots, release):
    wanted = set()
    for index, manifest in enumerate(hostile_robots):
        name = f"Boat{index}Devices"
        (tmp_path / f"{name}.java").write_text(
            make("java-constants", manifest, f"{name}.java", former_names=True),
            encoding="ascii",
            newline="",
        )
        wanted |= expected(name, manifest)
    (tmp_path / READER.name).write_text(READER.read_text(encoding="ascii"), encoding="ascii")
    compile_all(tool("javac"), release, tmp_path)
    classes = [f"Boat{index}Devices" for index in range(len(hostile_robots))]
    shown = subprocess.run(
        [tool("java"), "-cp", "out", "Names", *classes],
        cwd=tmp_path, capture_output=True, text=True, check=True,
    )  # fmt: skip
    assert set(map(as_wanted, shown.stdout.splitlines())) == wanted


def test_constants_serve_in_switch_and_annotation(make, tool, tmp_path):
    (tmp_path / "HeronDevices.java").write_text(
        make("java-constants", path="HeronDevices.java", package="club.boats")
    )
    (tmp_path / "Use.java").write_text(
        "import club.boats.HeronDevices;\n"
        "final class Use {\n"
        "  @SuppressWarnings(HeronDevices.Motor.NET_WINCH)\n"
        "  static int of(String name) {\n"
        "    switch (name) {\n"
        "      case HeronDevices.Motor.BOW_THRUSTER: return 1;\n"
        "      default: return HeronDevices.DEVICES.size();\n"
        "    }\n"
        "  }\n"
        "}\n"
    )
    compile_all(tool("javac"), "8", tmp_path)


def test_a_former_name_compiles_and_warns(make, tool, tmp_path):
    (tmp_path / "Use.java").write_text(
        "final class Use {\n"
        "  static final String TODAY = HeronDevices.Motor.BOW_THRUSTER;\n"
        "  static final String BEFORE = HeronDevices.Motor.FRONT_THRUSTER;\n"
        "}\n"
    )
    words = [tool("javac"), "-Xlint:deprecation", "-d", "out", "Use.java", "HeronDevices.java"]
    for wanted, options in ((0, {"former_names": True}), (1, {})):
        text = make("java-constants", path="HeronDevices.java", **options)
        (tmp_path / "HeronDevices.java").write_text(text)
        done = subprocess.run(words, cwd=tmp_path, capture_output=True, text=True, check=False)
        assert done.returncode == wanted, done.stderr
        warned = re.findall(r"^(\w+\.java:\d+): warning: .*FRONT_THRUSTER", done.stderr, re.M)
        assert warned == ([] if wanted else ["Use.java:3"])


def test_lines_keep_to_100_columns_where_words_allow(make):
    rows = [
        device("n" * n + str(n), "motor", "bridge motor 1", does="Turns the big drum " * 8)
        for n in (5, 18, 30)
    ]
    text = make("java-constants", robot(*rows), "HeronDevices.java")
    assert max(map(len, text.splitlines())) <= 100


def test_the_class_bears_the_name_of_its_file(make):
    assert "public final class Crew {" in make("java-constants", path="a/Crew.java")
    assert "public final class Hull {" in make(
        "java-constants", path="a/X.java", **{"class": "Hull"}
    )
    with pytest.raises(UnusableTarget, match="'heron-devices' cannot be used"):
        make("java-constants", HERON, "a/heron-devices.java")
