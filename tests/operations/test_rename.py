"""A rename reaches manifests, setups, code and outputs, and says what is left for a person."""

from __future__ import annotations

from pathlib import Path

import pytest

from namegen.errors import UnusableInput
from namegen.operations import build
from namegen.operations.audit import accept, audit
from namegen.operations.build import State
from namegen.operations.rename import rename, write
from namegen.operations.verify import verify
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


def test_look_ups_without_a_kind_follow(boats: Path):
    """Until the rename the text is the device's name to the letter, whatever is asked for."""
    settings = (boats / "namegen.yaml").read_text()
    rows = "lookups:\n  - {call: expects, name_at: rest}\n  - {subscript: devices}\n"
    (boats / "namegen.yaml").write_text(settings.replace("lookups:\n", rows))
    code = 'boat.expects("rudder", "bowThruster")\nboat.devices["bowThruster"].stop()\n'
    (boats / "code/heron/main.py").write_text(code)
    renamed(boats)
    main = (boats / "code/heron/main.py").read_text()
    assert main == code.replace("bowThruster", "bowPusher")


def test_what_is_left_for_a_person_is_told(boats: Path):
    lay(
        boats,
        {
            "code/heron/main.py": "from devices import Motor\n"
            "a = boat.motor(Motor.BOW_THRUSTER)\nprint('bowThruster is on')\n"
        },
    )
    left = rename(open_workspace(boats), "bowThruster", "bowPusher").left
    assert [(one.place.line, one.text) for one in left] == [(2, "BOW_THRUSTER"), (3, "bowThruster")]
    assert "BOW_PUSHER now" in left[0].advice


def test_a_lookup_in_pieces_and_remarks_in_the_manifest_are_told(boats: Path):
    manifest = (boats / "robots/heron.yaml").read_text()
    remarks = manifest.replace("robot: heron", "robot: heron  # bowThruster is new")
    code = 'a = boat.motor("bow" + "Thruster")\nb = boat.motor(f"bow{\'Thruster\'}")\n'
    lay(boats, {"robots/heron.yaml": remarks, "code/heron/main.py": code})
    left = rename(open_workspace(boats), "bowThruster", "bowPusher").left
    assert [(one.place.path, one.place.line, one.place.column) for one in left] == [
        ("code/heron/main.py", 1, 16),
        ("code/heron/main.py", 2, 16),
        ("robots/heron.yaml", 1, 17),
    ]
    assert left[0].advice == "put together from pieces; write bowPusher there by hand"


def test_there_and_back_again_leaves_one_former_name_and_no_warning(boats: Path):
    renamed(boats)
    renamed(boats, "bowPusher", "bowThruster")
    text = (boats / "robots/heron.yaml").read_text()
    assert "bowThruster: {kind: motor, port: bridge motor 1, formerly: [bowPusher, front" in text
    assert verify(open_workspace(boats)).clean


@pytest.mark.parametrize("slip", ["    kind: [", "  lamp: {kind: lmap, port: bridge motor 9}\n"])
def test_a_robot_that_cannot_be_read_is_not_left_half_renamed(boats: Path, slip: str):
    # It includes the file that names the device, and its own code looks the device up.
    lay(
        boats,
        {
            "shared/hull.yaml": HULL,
            "robots/heron.yaml": HERON,
            "robots/dipper.yaml": "robot: dipper\nincludes: [../shared/hull.yaml]\n"
            "devices:\n" + slip,
        },
    )
    before = {path: path.read_bytes() for path in boats.rglob("*") if path.is_file()}
    with pytest.raises(UnusableInput, match="keeps the code of its robot") as told:
        renamed(boats)
    assert told.value.where.startswith("robots/dipper.yaml:")
    assert {path: path.read_bytes() for path in boats.rglob("*") if path.is_file()} == before


def test_a_slip_in_the_old_name_is_told_though_two_robots_have_it(boats: Path):
    twin = (boats / "robots/heron.yaml").read_text().replace("robot: heron", "robot: dipper")
    lay(boats, {"robots/dipper.yaml": twin})
    with pytest.raises(UnusableInput) as told:
        renamed(boats, "bowThrustr", "x")
    assert told.value.remedy == 'did you mean "bowThruster"?'


def test_a_command_to_copy_keeps_a_name_with_a_blank_together(boats: Path):
    renamed(boats, "bowThruster", "bow pusher")
    with pytest.raises(UnusableInput) as told:
        renamed(boats, "bowThruster", "bowPusher")
    assert told.value.remedy.endswith("namegen rename 'bow pusher' bowPusher")


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


@pytest.mark.parametrize("style", ["flow", "block"])
def test_what_is_accepted_stays_so_under_the_new_name(boats: Path, style: str):
    manifest = (boats / "robots/heron.yaml").read_text()
    if style == "block":
        flow = "rudder: {kind: servo, port: bridge servo 1}"
        manifest = manifest.replace(flow, "rudder:\n    kind: servo\n    port: bridge servo 1")
    code = 'boat.motor("bowThruster")\nboat.motor("bowThrustr")\nboat.motor("sternThruster")\n'
    lay(boats, {"robots/heron.yaml": manifest, "code/heron/main.py": code})
    accepted = [one.kind for one in accept(open_workspace(boats)).findings]
    assert sorted(accepted) == ["misspelt", "unused-device"]  # nobody looks the rudder up
    renamed(boats, "rudder", "helm")
    report = audit(open_workspace(boats)).report
    assert (report.findings, len(report.accepted)) == ((), 2)


def test_a_text_that_is_not_rewritten_is_told_once_and_is_no_piece(boats: Path):
    # Two look-ups of two kinds share it.
    code = 'name = "bowThruster"\nboat.motor(name)\nboat.servo(name)\nboat.motor("sternThruster")\n'
    lay(boats, {"code/heron/main.py": code})
    left = rename(open_workspace(boats), "bowThruster", "bowPusher").left
    assert [(str(one.place), one.text) for one in left] == [
        ("code/heron/main.py:1:9", "bowThruster")
    ]
    assert "pieces" not in left[0].advice


def test_a_robot_is_no_device(boats: Path):
    with pytest.raises(UnusableInput) as refused:
        rename(open_workspace(boats), "heron", "crane")
    assert '"heron" is a robot' in str(refused.value)
    assert "write `robot: crane` into robots/heron.yaml" in refused.value.remedy
    text = (boats / "robots/heron.yaml").read_text().replace("robot: heron", "robot: crane")
    lay(boats, {"robots/heron.yaml": text})  # the remedy holds: verify tells where it stands
    found = verify(open_workspace(boats)).findings
    assert [(one.place.path, one.found) for one in found] == [("namegen.yaml", "heron")]
