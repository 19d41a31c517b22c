"""C++ constants, judged by g++ and clang++ and read back by a program; laid out by clang-format."""

from __future__ import annotations

import re
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path

import pytest

from namegen.errors import UnusableTarget
from namegen.model.manifests import Manifest
from targets.boats import HERON, device, robot
from targets.facts_of import header_of, hex_of, numbers_of, rows_of, texts_of

STRICT = ("-Wall", "-Wextra", "-Wpedantic", "-Werror")
CLANG_FORMAT = Path(sys.executable).with_name("clang-format")
READER = """\
#include <cstdio>
static void show(const char* text) {
  std::putchar(':');
  for (; *text; ++text) std::printf("%02x", static_cast<unsigned char>(*text));
  std::putchar(':');
}
template <class Row>
static void show_row(const Row& row) {
  show(row.name), show(row.kind), show(row.port);
  std::printf("%d%d\\n", row.reversed, row.optional);
}
"""


def built(folder: Path, *words: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(words, cwd=folder, capture_output=True, text=True, check=False)


def program(robots: Sequence[Manifest]) -> tuple[str, list[str]]:
    """Return a program that prints every constant of boat0, boat1, ..., and what it must print."""
    lines, wanted = [], []
    for index, manifest in enumerate(robots):
        lines.append(f"static void boat{index}_() {{ using namespace boat{index};")
        for name, text in zip(("kRobot", "kSetup", "kSheetMark"), header_of(manifest), strict=True):
            lines.append(f"  show(boat{index}::{name}); std::puts({name!r});".replace("'", '"'))
            wanted.append(hex_of(text) + name)
        for (kind, constant), text in texts_of(manifest, "cpp"):
            lines.append(f'  show({kind}::{constant}); std::puts("{kind}::{constant}");')
            wanted.append(f"{hex_of(text)}{kind}::{constant}")
        for constant, value in numbers_of(manifest, "cpp"):
            lines.append(f'  std::printf("%s %.17g\\n", "{constant}", Numbers::{constant});')
            wanted.append(f"{constant} {value:.17g}")
        lines.append("  for (const Row& row : kDevices) show_row(row);\n}")
        for name, kind, where, runs_reversed, optional in rows_of(manifest):
            flags = f"{runs_reversed:d}{optional:d}"
            wanted.append(hex_of(name) + hex_of(kind) + hex_of(where) + flags)
    calls = "".join(f"  boat{index}_();\n" for index in range(len(robots)))
    headers = "".join(f'#include "boat{index}.h"\n' for index in range(len(robots)))
    return f"{headers}{READER}{chr(10).join(lines)}\nint main() {{\n{calls}}}\n", wanted


@pytest.fixture(scope="module")
def fleet(make, hostile_robots, tmp_path_factory) -> Path:
    """Return a folder with the headers of hostile robots, former names included."""
    folder = tmp_path_factory.mktemp("fleet")
    for index, manifest in enumerate(hostile_robots):
        text = make("cpp-constants", manifest, f"boat{index}.h", former_names=True)
        (folder / f"boat{index}.h").write_text(text, encoding="ascii", newline="")
    return folder


@pytest.mark.parametrize("standard", ["c++17", "c++20"])
@pytest.mark.parametrize("compiler", ["g++", "clang++"])
def test_a_program_reads_back_every_byte(tool, hostile_robots, fleet, compiler, standard):
    source, wanted = program(hostile_robots)
    (fleet / "main.cc").write_text(source, encoding="ascii")
    done = built(
        fleet, tool(compiler), f"-std={standard}", *STRICT, "-Wno-deprecated-declarations",
        "main.cc", "-o", f"main-{compiler}-{standard}",
    )  # fmt: skip
    assert done.returncode == 0, done.stderr[:4000]
    shown = built(fleet, str(fleet / f"main-{compiler}-{standard}"))
    assert shown.returncode == 0
    assert shown.stdout.splitlines() == wanted


def test_trigraphs_stay_what_they_are(make, tool, tmp_path):
    """With -trigraphs g++ reads them, in comments too: ``??/`` would swallow the next line."""
    boat = robot(device("what??/now??'", "motor", does="Ends in ??/", identifiers={"cpp": "kA"}))
    text = make("cpp-constants", boat, "boat0.h")
    (tmp_path / "boat0.h").write_text(text)
    source = '#include "boat0.h"\n#include <cstdio>\nint main() { std::puts(boat0::Motor::kA); }\n'
    (tmp_path / "main.cc").write_text(source)
    flags = ("-std=c++17", "-trigraphs", *STRICT)
    done = built(tmp_path, tool("g++"), *flags, "main.cc", "-o", "main")
    assert done.returncode == 0, done.stderr
    assert built(tmp_path, str(tmp_path / "main")).stdout == "what??/now??'\n"


USE = """\
#include <string_view>
#include "heron.h"
using club::heron::Motor;
const char* plain = Motor::kBowThruster;
constexpr std::string_view view = Motor::kBowThruster;
static_assert(view == "bowThruster" && view.size() == 11);
static_assert(club::heron::Numbers::kBowThrusterCountsPerOutputTurn == 234.0);
static_assert(club::heron::kDevices[0].reversed && !club::heron::kDevices[1].reversed);
"""


@pytest.mark.parametrize("compiler", ["g++", "clang++"])
def test_two_files_of_a_program_share_the_header(make, tool, tmp_path, compiler):
    text = make("cpp-constants", HERON, "heron.h", namespace="club::heron")
    (tmp_path / "heron.h").write_text(text)
    (tmp_path / "one.cc").write_text('#include "heron.h"\n' + USE + "int main() {}\n")
    (tmp_path / "two.cc").write_text(USE.replace("plain", "other"))
    done = built(tmp_path, tool(compiler), "-std=c++17", *STRICT, "one.cc", "two.cc")
    assert done.returncode == 0, done.stderr


@pytest.mark.parametrize("compiler", ["g++", "clang++"])
def test_a_former_name_compiles_and_warns(make, tool, tmp_path, compiler):
    (tmp_path / "heron.h").write_text(make("cpp-constants", path="heron.h", former_names=True))
    (tmp_path / "use.cc").write_text(
        '#include "heron.h"\n'
        "const char* today = heron::Motor::kBowThruster;\n"
        "const char* before = heron::Motor::kFrontThruster;\n"
    )
    words = (tool(compiler), "-std=c++17", *STRICT, "-Wno-error", "-fsyntax-only", "use.cc")
    done = built(tmp_path, *words)
    assert done.returncode == 0, done.stderr
    found = re.findall(r"^use\.cc:(\d+):\d+: warning: .*deprecated: now (\w+)", done.stderr, re.M)
    assert set(found) == {("3", "kBowThruster")}
    (tmp_path / "heron.h").write_text(make("cpp-constants", path="heron.h"))
    assert "kFrontThruster" in built(tmp_path, *words).stderr
    assert built(tmp_path, *words).returncode != 0


def test_clang_format_changes_nothing(make, fleet, tmp_path):
    rows = [
        device("n" * n, "motor", does="Turns the drum " * n, formerly=("o" * n,))
        for n in (5, *range(10, 75), 200)
    ]
    text = make("cpp-constants", robot(*rows), "rows.h", former_names=True)
    (tmp_path / "rows.h").write_text(text)
    files = [str(path) for path in (*fleet.glob("*.h"), tmp_path / "rows.h")]
    done = built(fleet, str(CLANG_FORMAT), "--style=Google", "--dry-run", "-Werror", *files)
    assert done.returncode == 0, done.stderr[:4000]


def test_the_namespace_bears_the_name_of_the_file(make):
    assert "namespace heron_devices {" in make("cpp-constants", path="a/heron_devices.h")
    with pytest.raises(UnusableTarget, match="'tug-boat' cannot be used"):
        make("cpp-constants", path="a/tug-boat.h")
