"""Repairs and constants in one go, and the places of what is left alone, as the user sees it."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from namegen.operations import fix
from namegen.operations.code_files import ALL, Selection
from namegen.operations.mending import mend_with_constants
from namegen.operations.workspace import open_workspace
from tests.operations.changing import built
from tests.operations.conftest import FILES, lay

MAIN = "code/heron/main.py"
LEFT = (
    '"""Heron."""\n\nfrom typing import Literal\n\nSTERN: Literal["sternThruster"] = '
    '"sternThruster"\n\n\n'
    "def start(boat):\n"
    '    boat.motor("bowthruster"), boat.motor("sternthruster"), boat.motor("é" "x"), '
    "boat.motor(STERN)\n"
    "    return rows(boat)\n"
)


def literal_at(text: str, place: fix.Place) -> str:
    return text.split("\n")[place.line - 1][place.column - 1 : place.end_column - 1]


def test_what_is_left_is_told_at_its_place_before_and_after(boats: Path):
    built(boats, {MAIN: LEFT})
    space = open_workspace(boats)
    fixed = mend_with_constants(space, ALL, fix.SAFE)
    (change,) = fixed.changes
    new = change.new.decode()
    assert "from devices import Motor\n" in new and "boat.motor(Motor.BOW_THRUSTER)" in new
    ((place, why),) = fixed.refused
    assert "Literal" in why
    assert (place.line, literal_at(LEFT, place)) == (5, "sternThruster")
    now = fixed.moved[place]
    assert now.line == 6 and literal_at(new, now) == "sternThruster"
    assert (fixed.edits, fixed.constants) == (4, 2)


def test_names_of_other_lengths_on_one_line_do_not_move_what_is_told(boats: Path):
    code = (
        'NAMES = ["frontThruster", "sternThruster"]\n'
        "for name in NAMES:\n    boat.motor(name)\nboat.motor(NAMES[key()])\n"
        'boat.motor("frontThruster"), boat.servo("rudder"), boat.motor("BOWTHRUSTER")\n'
    )
    bare = FILES["namegen.yaml"].replace("python-constants", "java-constants")
    lay(boats, {"namegen.yaml": bare.replace("devices.py", "Devices.java"), MAIN: code})
    fixed = mend_with_constants(open_workspace(boats), ALL, fix.SAFE)
    new = fixed.changes[0].new.decode()
    assert fixed.constants == 0 and all("not built" in why for _, why in fixed.refused)
    told = [(literal_at(code, old), old) for old, _ in fixed.refused]
    assert [name for name, _ in told][-3:] == ["frontThruster", "rudder", "BOWTHRUSTER"]
    now = [literal_at(new, fixed.moved[old]) for _, old in told]
    assert now[-3:] == ["bowThruster", "rudder", "bowThruster"]


def test_a_text_from_an_editor_gets_both(boats: Path):
    built(boats, {MAIN: ""})
    text = b'def start(boat):\n    return boat.motor("bowthruster")\n'
    fixed = mend_with_constants(
        open_workspace(boats), Selection(text=(boats / MAIN, text)), fix.SAFE
    )
    (change,) = fixed.changes
    assert change.old == text and b"boat.motor(Motor.BOW_THRUSTER)" in change.new


def run_on_text(boats: Path, *options: str) -> tuple[str, str]:
    done = subprocess.run(
        [sys.executable, "-m", "namegen", "audit", "--stdin", MAIN, *options],
        cwd=boats,
        input=(boats / MAIN).read_bytes(),
        capture_output=True,
        check=False,
        timeout=60,
    )
    return done.stdout.decode(), done.stderr.decode()


@pytest.mark.parametrize("options", [("--fix",), ("--fix", "--constants")])
def test_an_editor_never_gets_the_text_of_another_file(boats: Path, options):
    main = "import names\n\n\ndef start(boat):\n    return boat.motor(names.BOW)\n"
    built(boats, {MAIN: main, "code/heron/names.py": 'BOW = "frontThruster"\n'})
    mended, said = run_on_text(boats, *options)
    assert mended == main
    assert "code/heron/names.py: this name stands there; `namegen audit --fix` mends it" in said


def test_a_diff_says_when_nothing_can_be_mended(boats: Path, namegen):
    lay(boats, {MAIN: FILES[MAIN] + '\n\ndef more(boat):\n    return boat.motor("crane")\n'})
    done = namegen("audit", "--diff", cwd=boats)
    assert (done.returncode, done.stdout) == (1, "")
    assert "nothing was found that these repairs can mend; 1 finding would be left" in done.stderr
    assert "`namegen audit` shows where" in done.stderr
    lay(boats, {MAIN: FILES[MAIN]})
    assert namegen("audit", "--diff", cwd=boats).stderr == ""


def test_a_diff_points_to_the_likely_repairs(boats: Path, namegen):
    lay(boats, {MAIN: FILES[MAIN].replace('"rudder"', '"ruddre"')})
    done = namegen("audit", "--diff", cwd=boats)
    assert "--fix-suggested --diff shows the likely repair of 1 of them" in done.stderr
    assert "rudder" not in done.stdout
    likely = namegen("audit", "--fix-suggested", "--diff", cwd=boats)
    assert '+    return bow, stern, boat.servo("rudder")' in likely.stdout and not likely.stderr
