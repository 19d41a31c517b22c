"""The last look: manifest, outputs and code at once, and each finding at the robots it concerns."""

from __future__ import annotations

from pathlib import Path

import pytest

from namegen.errors import UnusableInput
from namegen.model.sheet_mark import sheet_mark
from namegen.operations import build
from namegen.operations.audit import accept
from namegen.operations.ready import Readiness, ready
from namegen.operations.workspace import open_workspace

DIPPER = """\
robot: dipper
controllers:
  bridge: {board: harbour}
devices:
  samplePump: {kind: motor, port: bridge motor 1}
setups:
  sampling: everything
"""


@pytest.fixture
def two(boats: Path) -> Path:
    """Two boats; both are built, and only one has code."""
    (boats / "robots/dipper.yaml").write_text(DIPPER)
    build.write(build.plan(open_workspace(boats)))
    return boats


def look(root: Path, *robots: str) -> Readiness:
    return ready(open_workspace(root), robots)


def states(found: Readiness) -> dict[str, tuple[int, int, int]]:
    return {one.robot: (one.errors, one.warnings, len(one.behind)) for one in found.robots}


def change(path: Path, old: str, new: str) -> None:
    text = path.read_text()
    assert old in text
    path.write_text(text.replace(old, new))


def test_what_agrees_is_ready(two: Path):
    found = look(two)
    assert found.ready and all(robot.ready for robot in found.robots)
    assert states(found) == {"dipper": (0, 0, 0), "heron": (0, 0, 0)}
    dipper, heron = found.robots
    assert (dipper.setup, heron.setup) == ("sampling", None)
    assert (dipper.has_code, heron.has_code) == (False, True)
    assert [one.mark for one in found.robots] == [
        sheet_mark(manifest) for manifest in open_workspace(two).manifests
    ]


def test_an_accepted_error_leaves_a_robot_ready_and_is_told_of_the_robot_that_runs_it(two: Path):
    change(two / "code/heron/main.py", '"rudder"', '"Rudder"')
    accept(open_workspace(two))
    found = look(two)
    assert found.ready
    assert [[one.kind for one in robot.accepted] for robot in found.robots] == [[], ["letter-case"]]
    assert [one.accepted for one in look(two, "dipper").robots] == [()]


def test_a_slip_in_code_concerns_the_robot_that_runs_it(two: Path):
    change(two / "code/heron/main.py", '"rudder"', '"ruder"')
    found = look(two)
    assert not found.ready
    assert states(found) == {"dipper": (0, 0, 0), "heron": (1, 0, 0)}
    assert look(two, "dipper").ready
    assert look(two, "dipper").report.findings == ()
    assert [one.kind for one in look(two, "heron").report.findings] == ["misspelt"]


def test_a_moved_plug_leaves_that_robots_outputs_behind(two: Path):
    change(two / "robots/dipper.yaml", "motor 1", "motor 2")
    assert states(look(two)) == {"dipper": (0, 0, 2), "heron": (0, 0, 0)}
    assert states(look(two, "heron")) == {"heron": (0, 0, 0)}


def test_a_left_over_output_concerns_the_robot_it_was_made_for(two: Path):
    change(
        two / "namegen.yaml",
        'to: "config/{robot}.json"',
        'to: "config/{robot}.json"\n    robots: [heron]',
    )
    found = look(two)
    assert states(found) == {"dipper": (0, 0, 1), "heron": (0, 0, 0)}
    assert not found.ready


def test_an_error_in_what_robots_share_concerns_them_all(two: Path):
    change(two / "namegen.yaml", "style: camelCase", "style: camel")
    assert states(look(two)) == {"dipper": (1, 0, 0), "heron": (1, 0, 0)}


def test_a_manifest_that_cannot_be_read_is_not_ready(two: Path):
    (two / "robots/dipper.yaml").write_text("robot: [")
    found = look(two)
    assert found.unread == ("robots/dipper.yaml",)
    assert not found.ready and states(found) == {"heron": (0, 0, 0)}
    assert look(two, "heron").ready


def test_nothing_is_written(two: Path):
    change(two / "robots/dipper.yaml", "motor 1", "motor 2")
    before = {path: path.read_bytes() for path in two.rglob("*") if path.is_file()}
    look(two)
    assert {path: path.read_bytes() for path in two.rglob("*") if path.is_file()} == before


def test_a_robot_that_is_not_known_is_told(two: Path):
    with pytest.raises(UnusableInput, match="there is no robot"):
        look(two, "dippr")


def test_code_that_namegen_made_itself_is_no_code_of_the_robot(two: Path):
    change(
        two / "namegen.yaml",
        "robots: [heron]}",
        "robots: [heron]}\n  - {path: code/dipper, robots: [dipper]}",
    )
    assert (two / "code/dipper/devices.py").is_file()
    dipper = look(two).robots[0]
    assert (dipper.robot, dipper.has_code) == ("dipper", False)


def test_code_for_no_setup_is_held_against_the_selected_one(two: Path):
    """A program that looks up what the selected setup leaves out stops at its start."""
    setups = "setups:\n  all: everything\n  tank: {without: [rudder]}\nselected: "
    heron = two / "robots/heron.yaml"
    whole = heron.read_text()
    for selected, kinds in (("all", []), ("tank", ["not-in-setup"])):
        heron.write_text(f"{whole}{setups}{selected}\n")
        build.write(build.plan(open_workspace(two)))
        assert [one.kind for one in look(two, "heron").report.findings] == kinds
    change(two / "namegen.yaml", "robots: [heron]}", "robots: [heron], setup: all}")
    assert look(two, "heron").ready


@pytest.mark.parametrize(
    ("text", "advice"),
    [
        ('"sternThruster"', 'Change the text to "bowThruster"'),
        ("STERN", 'Use the constant of "bowThruster"'),
    ],
)
def test_a_crossed_constant_keeps_its_text(two: Path, text: str, advice: str):
    """Others use the constant too: to change its text would cross those."""
    lines = f'STERN = "sternThruster"\nbow_thruster = boat.motor({text})\n'
    lines += "stern_thruster = boat.motor(STERN)\nrudder = boat.servo('rudder')\n"
    (two / "code/heron/main.py").write_text(lines)
    found = [one for one in look(two, "heron").report.findings if one.kind == "crossed-names"]
    assert [advice in one.message for one in found] == [True]


def test_an_address_of_the_kind_is_told_like_an_own_one(two: Path):
    (two / "catalogue.yaml").write_text(
        "boards:\n  harbour:\n    ports: {motor: 1-3, servo: 1-5, digital: 1-6, i2c: 1-2}\n"
        "kinds:\n  sounder: {port: i2c, address: 0x3A}\n"
    )
    heron = two / "robots/heron.yaml"
    heron.write_text(heron.read_text() + "  keel: {kind: sounder, port: bridge i2c 1}\n")
    build.write(build.plan(open_workspace(two)))
    assert '"address": 58' in (two / "config/heron.json").read_text()
