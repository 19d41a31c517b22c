"""What explain makes of words: kinds, names, error texts; and what to check of a right name."""

from __future__ import annotations

import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

from namegen.model.sheet_mark import sheet_mark
from namegen.operations.audit import audit
from namegen.operations.checklist import what_to_check
from namegen.operations.explain import explain_name, topics
from namegen.operations.workspace import open_workspace
from tests.operations.conftest import FILES, lay

Run = Callable[..., "subprocess.CompletedProcess[str]"]

SETUPS = """\
  heading: {kind: imu, port: bridge compass, optional: true}
  lamp: {kind: lamp, port: undecided}
setups:
  harvest: {without: [lamp]}
  tank-test: {without: [bowThruster], change: {rudder: {port: bridge servo 4}}}
selected: harvest
"""
BUILT_IN = FILES["catalogue.yaml"] + "    built_in: {compass: imu}\n"


@pytest.fixture
def wired(boats: Path) -> Path:
    """The small workspace, its boat with a built-in device, an undecided one and two setups."""
    manifest = FILES["robots/heron.yaml"] + SETUPS
    return lay(boats, {"robots/heron.yaml": manifest, "catalogue.yaml": BUILT_IN})


def points(root: Path, name: str) -> list[str]:
    return list(what_to_check(open_workspace(root).manifests[0], name))


def test_a_right_name_is_followed_from_the_setup_to_the_program(wired: Path):
    mark = sheet_mark(open_workspace(wired).manifests[0])
    assert points(wired, "bowThruster") == [
        'the selected setup: "harvest" has it, "tank-test" leaves it out; '
        'the manifest selects "harvest"',
        'the configuration on the machine: it says "bowThruster", in these capitals, as a motor '
        f"at bridge motor 1; the sheet with the mark {mark} shows it",
        "the wire, with the robot switched off, and your local rules kept: it goes into "
        "bridge motor 1, and is whole",
        'the program: it runs on heron, and looks "bowThruster" up as a motor',
    ]


def test_a_device_that_a_setup_moves_is_shown_where_it_is_there(wired: Path):
    setup = points(wired, "rudder")[0]
    assert '"harvest" and "tank-test" have it; in "tank-test" it is at bridge servo 4' in setup
    manifest = (wired / "robots/heron.yaml").read_text()
    lay(wired, {"robots/heron.yaml": manifest.replace("selected: harvest", "selected: tank-test")})
    assert "it goes into bridge servo 4" in points(wired, "rudder")[2]


def test_a_built_in_device_has_no_wire(wired: Path):
    assert not any("the wire" in point for point in points(wired, "heading"))
    assert any("it is built in (bridge compass)" in point for point in points(wired, "heading"))
    assert points(wired, "heading")[-1].startswith("it is optional")


def test_an_undecided_port_is_decided_first(wired: Path):
    assert any("has not decided it (robots/heron.yaml:9:" in one for one in points(wired, "lamp"))


def test_without_setups_none_is_asked_for(boats: Path):
    assert points(boats, "rudder")[0].startswith("the configuration on the machine")


@pytest.mark.parametrize(
    ("words", "about"),
    [
        (("bowThruster", "ruder"), ("bowThruster", "ruder")),
        (("letter-case", "bowThruster", "target"), ("letter-case", "bowThruster", "target")),
        (("No", "device", "BowThruster", "found"), ("No device BowThruster found",)),
        (("No device BowThruster found",), ("No device BowThruster found",)),
        (("fog", "horn"), ("fog horn",)),
        (("bowThruster", "fogHorn"), ("bowThruster", "fogHorn")),
    ],
)
def test_words_are_asked_for_one_by_one_or_are_an_error_text(
    boats: Path, words: tuple[str, ...], about: tuple[str, ...]
):
    assert topics(words, open_workspace(boats).manifests) == about


def test_a_misspelt_kind_is_named(boats: Path):
    manifests = open_workspace(boats).manifests
    assert explain_name("port-takn", manifests).kind == "port-taken"
    assert explain_name("fogHorn", manifests).kind is None


def test_the_command_explains_each_and_says_whether_all_are_right(namegen: Run, boats: Path):
    done = namegen("explain", "rudder", "letter-case", cwd=boats)
    assert done.returncode == 0
    assert '"rudder" is a servo of heron' in done.stdout and "letter-case (error)" in done.stdout
    assert "  1. the configuration on the machine" in done.stdout
    done = namegen("explain", "rudder", "bowthruster", cwd=boats)
    assert done.returncode == 1
    assert "it is called  bowThruster" in done.stdout


def test_kinds_need_no_workspace(namegen: Run, tmp_path: Path):
    assert namegen("explain", "letter-case", "port-taken", cwd=tmp_path).returncode == 0
    assert namegen("explain", "letter-case", "rudder", cwd=tmp_path).returncode == 2


def test_a_right_name_is_told_of_a_robot_that_spells_it_otherwise_too(boats: Path):
    twin = FILES["robots/heron.yaml"].replace("robot: heron", "robot: dipper")
    lay(boats, {"robots/dipper.yaml": twin.replace("rudder", "Rudder")})
    found = explain_name("rudder", open_workspace(boats).manifests)
    assert [owner.robot for owner in found.exact] == ["heron"]
    assert [(one.robot, one.device.name) for one in found.otherwise] == [("dipper", "Rudder")]
    both = explain_name("bowThruster", open_workspace(boats).manifests)
    assert len(both.exact) == 2 and not both.otherwise


@pytest.mark.parametrize(
    ("word", "told"),
    [
        ("heron", "the robot of robots/heron.yaml, with 5 devices"),
        ("harvest", "a setup of heron, which is the selected one"),
        ("tank-test", "a setup of heron"),
        ("bridge", "a controller of heron, board harbour"),
        ("Bridge motor 1", 'the port of "bowThruster" on heron (robots/heron.yaml:5:36)'),
        ("bridge compass", 'the port of "heading" on heron (robots/heron.yaml:8:30)'),
    ],
)
def test_other_words_of_a_manifest_are_known(wired: Path, word: str, told: str):
    assert explain_name(word, open_workspace(wired).manifests).things == (told,)


def test_names_of_a_manifest_that_cannot_be_read_are_not_called_unknown(namegen: Run, boats: Path):
    lay(boats, {"robots/dipper.yaml": "robot: ["})
    for name, code in (("rudder", 1), ("samplePump", 1)):
        done = namegen("explain", name, cwd=boats)
        assert "robots/dipper.yaml cannot be read, so its names are not known" in done.stdout
        assert done.returncode == code


def test_many_robots_are_told_one_at_a_time(namegen: Run, boats: Path):
    manifest = FILES["robots/heron.yaml"]
    for robot in ("dipper", "grebe"):
        lay(boats, {f"robots/{robot}.yaml": manifest.replace("robot: heron", f"robot: {robot}")})
    assert namegen("explain", "rudder", cwd=boats).stdout.count("the name is right; where") == 3
    lay(boats, {"robots/wren.yaml": manifest.replace("robot: heron", "robot: wren")})
    told = namegen("explain", "rudder", cwd=boats)
    assert told.returncode == 0 and told.stdout.count('"rudder" is a servo of') == 4
    assert "`namegen explain rudder dipper` tells what to check" in told.stdout
    one = namegen("explain", "rudder", "dipper", cwd=boats).stdout
    assert one.count("is a servo of") == one.count("where dipper does not find it") == 1
    assert "the robot of robots/dipper.yaml" in namegen("explain", "dipper", cwd=boats).stdout


@pytest.mark.parametrize(
    ("text", "old"),
    [
        ("frontThrustr", "frontThruster"),
        ("FrontThruster", "frontThruster"),
        ("frontThruster", "frontThruster"),
        ("bowThrustr", None),
        ("crane", None),
        ("fontThruster", None),
    ],
)
def test_explain_and_audit_have_one_rule_for_a_slip_of_an_old_name(
    boats: Path, namegen: Run, text: str, old: str | None
):
    code = f'{FILES["code/heron/main.py"]}\n\ndef more(boat):\n    boat.motor("{text}")\n'
    lay(boats, {"code/heron/main.py": code})
    findings = audit(open_workspace(boats)).report.findings
    (kind,) = {one.kind for one in findings if one.found == text}
    assert (kind == "retired-name") is (old is not None)
    found = explain_name(text, open_workspace(boats).manifests)
    owners = found.exact or found.near
    assert {owner.former for owner in owners} == ({old} if old or owners else set())
    said = namegen("explain", text, cwd=boats)
    assert said.returncode == 1
    told = '"frontThruster" is the old name of "bowThruster"' in said.stdout
    assert told is (old is not None)
    if old and old != text:
        assert f"you have      {text}\n" in said.stdout
        assert f"it was called {old}\n" in said.stdout
