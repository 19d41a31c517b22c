"""The layout of generated Java, judged by clang-format.

google-java-format itself is not at hand. clang-format reads Java and follows Google's style guide
for it (100 columns, two blanks, four where a line goes on); where the guide leaves a choice, the
options below make the one that google-java-format makes: arguments and operands stand all on one
line or each on its own, a line is broken after an equals sign sooner than in brackets, and texts
are never broken. What clang-format cannot be told is left out: a statement that wants breaks after
its equals sign and within its brackets, or that has a text too long for any line.
"""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

import pytest
from msgspec.structs import replace

from namegen.model.manifests import Manifest
from targets.boats import HERON, device, robot
from targets.machines import BOATS
from targets.standins import JAVA

CLANG_FORMAT = Path(sys.executable).with_name("clang-format")
STYLE = {
    "BasedOnStyle": "Google",
    "Language": "Java",
    "BinPackArguments": "false",
    "BinPackParameters": "false",
    "BreakBinaryOperations": "OnePerLine",
    "BreakAfterOpenBracketFunction": "true",
    "AlignAfterOpenBracket": "DontAlign",
    "BracedInitializerIndentWidth": "2",
    "BreakStringLiterals": "false",
    "PenaltyBreakAssignment": "0",
    "PenaltyIndentedWhitespace": "0",
}
STATEMENT = re.compile(r"^    (this\.\w+ =|search\.probe\()(.*?);\n", re.M | re.S)
PLAIN = {**JAVA, "types": {"motor": "Drive", "servo": "Hinge", "*": "Part"}}
LADDER = robot(
    *(
        device("n" * n, "motor", "bridge motor 1", does="Turns " * n, formerly=("o" * n,))
        for n in (5, *range(10, 95), 200)
    )
)
"""Names of every length at which some line has to be broken in another way."""


def clang_format(*words: str, cwd: Path) -> subprocess.CompletedProcess[str]:
    style = ", ".join(f"{name}: {value}" for name, value in STYLE.items())
    return subprocess.run(
        [str(CLANG_FORMAT), f"--style={{{style}}}", *words],
        cwd=cwd, capture_output=True, text=True, check=False,
    )  # fmt: skip


def untold(text: str) -> set[int]:
    """Return which statements clang-format lays out by rules of its own, counted from 0."""
    return {
        index
        for index, found in enumerate(STATEMENT.finditer(text))
        if found[0].count("\n") > 2 or max(map(len, found[0].split("\n"))) > 100
    }


def without(text: str, statements: set[int]) -> str:
    """Return the text with these statements left out."""
    count = iter(range(len(text)))
    return STATEMENT.sub(lambda found: "" if next(count) in statements else found[0], text)


@pytest.mark.parametrize(
    ("target", "options"),
    [("java-constants", {"former_names": True}), ("java-bindings", PLAIN)],
    ids=["constants", "bindings"],
)
def test_clang_format_changes_nothing(make, tmp_path, hostile_robots, target, options):
    bare = replace(HERON, setups={}, selected=None)
    fleet: list[Manifest] = [*BOATS.values(), bare, robot(), LADDER, *hostile_robots]
    written = {f"Boat{index}": make(target, boat, f"Boat{index}.java", **options)
               for index, boat in enumerate(fleet)}  # fmt: skip
    for name, text in written.items():
        (tmp_path / f"{name}.java").write_text(text, encoding="ascii", newline="")
    files = sorted(path.name for path in tmp_path.glob("*.java"))
    done = clang_format("-i", *files, cwd=tmp_path)
    assert done.returncode == 0, done.stderr
    for name, text in written.items():
        own = untold(text)
        laid_out = (tmp_path / f"{name}.java").read_text(encoding="ascii")
        assert without(laid_out, own).split("\n") == without(text, own).split("\n"), name
    assert not any(untold(make(target, boat, "Boat.java", **options)) for boat in BOATS.values())


@pytest.mark.parametrize(
    ("right", "wrong"),
    [
        ("\n      expect(", "\n     expect("),
        ("(Boat boat, Search search) {", "(Boat boat, Search search){"),
        ('"rudder", "servo"', '"rudder","servo"'),
    ],
)
def test_a_layout_that_is_wrong_is_found(make, tmp_path, right, wrong):
    """Or else the test above would prove nothing."""
    text = make("java-bindings", path="Boat.java", **PLAIN)
    assert right in text
    (tmp_path / "Boat.java").write_text(text.replace(right, wrong, 1))
    assert clang_format("Boat.java", cwd=tmp_path).stdout == text
