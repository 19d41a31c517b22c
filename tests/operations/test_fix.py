"""Repairs change the literal, prove it, and leave every other byte alone."""

from __future__ import annotations

from pathlib import Path

import pytest

from namegen.errors import RefusedWrite
from namegen.operations import build, fix
from namegen.operations.audit import audit
from namegen.operations.code_files import ALL
from namegen.operations.workspace import open_workspace
from tests.operations.conftest import lay

MAIN = "code/heron/main.py"


def mended(root: Path, code: str, safeties: frozenset[fix.Safety] = fix.SAFE) -> fix.Fixed:
    lay(root, {MAIN: code})
    workspace = open_workspace(root)
    fixed = fix.fix(workspace, ALL, safeties)
    fix.write(workspace, fixed)
    return fixed


def test_a_wrong_capital_is_mended_and_the_rest_stays(boats: Path):
    code = "# keep é\r\nbow = boat.motor( 'bowthruster' )  # keep\r\nif bow:\n\tx=1\f\n"
    fixed = mended(boats, code)
    assert fixed.before.findings[0].kind == "letter-case"
    assert (boats / MAIN).read_bytes() == code.replace("bowthruster", "bowThruster").encode()
    assert mended(boats, (boats / MAIN).read_bytes().decode()).changes == ()


def test_lines_that_end_with_cr_alone_are_mended_too(boats: Path):
    code = "# the parser takes all of it for this comment\rbow = boat.motor('bowthruster')\r"
    mended(boats, code)
    assert (boats / MAIN).read_bytes() == code.replace("bowthruster", "bowThruster").encode()


def test_a_constant_is_mended_where_its_text_stands(boats: Path):
    code = 'BOW = "frontThruster"\n\ndef start(boat):\n    return boat.motor(BOW)\n'
    mended(boats, code)
    assert (boats / MAIN).read_text() == code.replace("frontThruster", "bowThruster")


def test_an_entry_of_a_table_is_mended_and_a_key_is_told_and_left(boats: Path):
    """Other code takes the speed by the same key: with another key it would stop with an error."""
    code = (
        'NAMES = {"bow": "frontThruster"}\nSPEED = {"bowthruster": 1}\n\ndef start(boat):\n'
        '    boat.motor(NAMES["bow"])\n    for name, speed in SPEED.items():\n'
        '        boat.motor(name)\n    return SPEED["bowthruster"]\n'
    )
    fixed = mended(boats, code, fix.SUGGESTED)
    told = [f for f in fixed.before.findings if f.place.path == MAIN]
    assert [(f.kind, f.place.line, f.fix is None) for f in told] == [
        ("retired-name", 1, False),
        ("letter-case", 2, True),
    ]
    assert "as it is a key, change it wherever" in told[1].related[0].message
    assert (boats / MAIN).read_text() == code.replace("frontThruster", "bowThruster")


def test_a_misspelt_name_needs_the_stronger_word(boats: Path):
    code = 'bow = boat.motor("bowThrustr")\n'
    assert mended(boats, code).changes == ()
    mended(boats, code, fix.SUGGESTED)
    assert (boats / MAIN).read_text() == 'bow = boat.motor("bowThruster")\n'


@pytest.mark.parametrize("name", ["aftThruster", "bowThruster2", "noSuchThing", "rudder"])
def test_what_could_move_another_machine_is_left_alone(boats: Path, name: str):
    code = f'bow = boat.motor("{name}")\n'
    fixed = mended(boats, code, fix.SUGGESTED)
    assert fixed.changes == ()
    assert fixed.before.findings
    assert (boats / MAIN).read_text() == code


def test_two_look_ups_that_want_one_text_to_differ_change_nothing(boats: Path):
    lay(
        boats,
        {
            "robots/heron.yaml": (boats / "robots/heron.yaml").read_text()
            + (
                "  rudderTrim: {kind: motor, port: bridge motor 3, formerly: [trim]}\n"
                "  trimTab: {kind: servo, port: bridge servo 2, formerly: [trim]}\n"
            )
        },
    )
    code = 'T = "trim"\na = boat.motor(T)\nb = boat.servo(T)\n'
    assert mended(boats, code, fix.SUGGESTED).changes == ()
    assert (boats / MAIN).read_text() == code


def test_bytes_that_do_not_survive_are_flagged_and_left(boats: Path):
    lay(boats, {})
    data = b'# coding: utf-8\n# \xff\nbow = boat.motor("bowthruster")\n'
    (boats / MAIN).write_bytes(data)
    workspace = open_workspace(boats)
    fixed = fix.fix(workspace, ALL, fix.SUGGESTED)
    assert [f.kind for f in fixed.before.findings if f.place.path == MAIN] == ["unreadable"]
    assert fixed.changes == ()


def test_a_file_in_latin_1_keeps_its_encoding(boats: Path):
    text = '# -*- coding: latin-1 -*-\n# é\nbow = boat.motor("bowthruster")\n'
    (boats / MAIN).write_bytes(text.encode("latin-1"))
    workspace = open_workspace(boats)
    fix.write(workspace, fix.fix(workspace, ALL, fix.SAFE))
    expected = text.replace("bowthruster", "bowThruster").encode("latin-1")
    assert (boats / MAIN).read_bytes() == expected


def test_a_file_that_changed_meanwhile_is_not_overwritten(boats: Path):
    lay(boats, {MAIN: 'bow = boat.motor("bowthruster")\n'})
    workspace = open_workspace(boats)
    fixed = fix.fix(workspace, ALL, fix.SAFE)
    (boats / MAIN).write_text("# the student typed on\n")
    with pytest.raises(RefusedWrite, match="changed while"):
        fix.write(workspace, fixed)
    assert (boats / MAIN).read_text() == "# the student typed on\n"


def test_a_syntax_error_elsewhere_does_not_stop_the_others(boats: Path):
    lay(
        boats,
        {
            MAIN: 'bow = boat.motor("bowthruster")\n',
            "code/heron/broken.py": "def start(boat:\n    boat.motor('bowThruster'\n",
        },
    )
    found = audit(open_workspace(boats)).report.findings
    assert {(f.place.path, f.kind) for f in found} >= {
        (MAIN, "letter-case"),
        ("code/heron/broken.py", "unreadable"),
    }


def test_a_stale_output_is_for_the_build_to_mend(boats: Path):
    workspace = open_workspace(boats)
    build.write(build.plan(workspace))
    manifest = boats / "robots/heron.yaml"
    text = manifest.read_text().replace("bowThruster:", "bowPusher:")
    manifest.write_text(text.replace("[frontThruster]", "[bowThruster]"))
    code = "from devices import Motor\nbow = boat.motor(Motor.BOW_THRUSTER)\n"
    fixed = mended(boats, code, fix.SUGGESTED)
    assert fixed.changes == ()
    (finding,) = [f for f in fixed.before.findings if f.kind == "retired-name"]
    assert (finding.place.path, finding.place.line) == (MAIN, 2)
    assert "run `namegen build`" in finding.message


def test_a_constant_of_the_wrong_kind_is_wrong_where_it_is_used(boats: Path):
    workspace = open_workspace(boats)
    build.write(build.plan(workspace))
    lay(boats, {MAIN: "from devices import Servo\nbow = boat.motor(Servo.RUDDER)\n"})
    (finding,) = [f for f in audit(open_workspace(boats)).report.findings if "kind" in f.kind]
    assert (finding.kind, finding.place.path, finding.place.line) == ("wrong-kind", MAIN, 2)
    assert "namegen build" not in finding.message
    line = "bow = boat.motor(Servo.RUDDER)  # namegen: allow wrong-kind because of a trial\n"
    lay(boats, {MAIN: f"from devices import Servo\n{line}"})
    assert "wrong-kind" not in {f.kind for f in audit(open_workspace(boats)).report.findings}
