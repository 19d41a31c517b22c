"""A rename reaches manifests, setups, code and outputs, and says what is left for a person."""

from __future__ import annotations

from pathlib import Path

import pytest

from namegen.errors import UnusableInput
from namegen.operations import build
from namegen.operations.build import State
from namegen.operations.rename import rename, write
from namegen.operations.workspace import open_workspace
from tests.operations.conftest import lay

HULL = """\
controllers:
  bridge: {board: harbour}
devices:
  bowThruster: {kind: motor, port: bridge motor 1}
"""
HERON = """\
# heron
robot: heron
includes: [../shared/hull.yaml]
devices:
  bowThruster:        # ours
    reversed: true
    formerly: [frontThruster]
setups:
  all: everything
  tank: {without: [bowThruster]}
selected: all
"""


def renamed(root: Path, old: str = "bowThruster", new: str = "bowPusher") -> None:
    workspace = open_workspace(root)
    write(workspace, rename(workspace, old, new))


def test_all_files_say_the_new_name_and_keep_everything_else(boats: Path):
    lay(
        boats,
        {
            "shared/hull.yaml": HULL,
            "robots/heron.yaml": HERON.replace("\n", "\r\n"),
            "code/heron/main.py": 'a = boat.motor("bowThruster")  # keep\n'
            'b = boat.motor("frontThruster")\n',
        },
    )
    renamed(boats)
    assert (boats / "shared/hull.yaml").read_text() == HULL.replace("bowThruster", "bowPusher")
    expected = HERON.replace("[frontThruster]", "[OLD, frontThruster]")
    expected = expected.replace("bowThruster", "bowPusher").replace("OLD", "bowThruster")
    assert (boats / "robots/heron.yaml").read_bytes() == expected.replace("\n", "\r\n").encode()
    main = (boats / "code/heron/main.py").read_text()
    assert main == 'a = boat.motor("bowPusher")  # keep\nb = boat.motor("frontThruster")\n'


def test_what_is_left_for_a_person_is_told(boats: Path):
    lay(
        boats,
        {
            "code/heron/main.py": "from devices import Motor\n"
            "a = boat.motor(Motor.BOW_THRUSTER)\nprint('bowThruster is on')\n"
        },
    )
    left = rename(open_workspace(boats), "bowThruster", "bowPusher").left
    assert [(place.line, text) for place, text in left] == [(2, "BOW_THRUSTER"), (3, "bowThruster")]


@pytest.mark.parametrize(
    ("old", "new", "what"),
    [
        ("bowThrustr", "x", "no robot has a device"),
        ("bowThruster", "rudder", "already"),
        ("bowThruster", "---", "cannot be a name"),
        ("bowThruster", "", "cannot"),
    ],
)
def test_a_rename_that_cannot_be_writes_nothing(boats: Path, old: str, new: str, what: str):
    before = (boats / "robots/heron.yaml").read_bytes()
    with pytest.raises(UnusableInput, match=what):
        renamed(boats, old, new)
    assert (boats / "robots/heron.yaml").read_bytes() == before


def test_outputs_follow_and_are_not_taken_for_edited(boats: Path):
    workspace = open_workspace(boats)
    build.write(build.plan(workspace))
    renamed(boats)
    workspace = open_workspace(boats)
    planned = build.plan(workspace)
    assert {output.state for output in planned.outputs} == {State.STALE}
    build.write(planned)
    assert "BOW_PUSHER" in (boats / "code/heron/devices.py").read_text()
