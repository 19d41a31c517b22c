"""Outputs: current, stale, edited, missing and left over; nothing of anybody else's is lost."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from namegen import checks
from namegen.errors import RefusedWrite, UnusableInput
from namegen.operations import build
from namegen.operations.build import State
from namegen.operations.record import RECORD_FILE
from namegen.operations.workspace import open_workspace

DEVICES = "code/heron/devices.py"
CONFIG = "config/heron.json"


def states(root: Path) -> dict[str, State]:
    return {o.path: o.state for o in build.plan(open_workspace(root)).outputs}


def run(root: Path, **options: bool) -> build.Written:
    workspace = open_workspace(root)
    return build.write(build.plan(workspace), **options)


def change(path: Path, old: str, new: str) -> None:
    text = path.read_bytes().decode()
    assert old in text
    path.write_bytes(text.replace(old, new).encode())


def test_the_first_build_writes_all_and_the_second_nothing(boats: Path):
    assert set(states(boats).values()) == {State.MISSING}
    assert run(boats).wrote == (DEVICES, CONFIG)
    stamps = {p: p.stat().st_mtime_ns for p in boats.rglob("*") if p.is_file()}
    assert run(boats) == build.Written((), (), ())
    assert {p: p.stat().st_mtime_ns for p in boats.rglob("*") if p.is_file()} == stamps


def test_a_changed_manifest_makes_outputs_stale_and_a_comment_does_not(boats: Path):
    run(boats)
    change(boats / "robots/heron.yaml", "devices:", "# nothing new\ndevices:")
    assert set(states(boats).values()) == {State.CURRENT}
    change(boats / "robots/heron.yaml", "bridge motor 1", "bridge motor 3")
    assert set(states(boats).values()) == {State.STALE}


def test_an_edit_by_hand_is_kept_until_forced(boats: Path):
    run(boats)
    change(boats / DEVICES, "bowThruster", "bowThrustr")
    assert states(boats)[DEVICES] is State.EDITED
    assert run(boats).kept == (DEVICES,)
    assert "bowThrustr" in (boats / DEVICES).read_text()
    assert run(boats, force=True).wrote == (DEVICES,)
    assert "bowThrustr" not in (boats / DEVICES).read_text()


def test_a_file_that_namegen_never_wrote_is_kept(boats: Path):
    (boats / "config").mkdir()
    (boats / CONFIG).write_text("mine")
    for force in (False, True):
        assert run(boats, force=force).kept == (CONFIG,)
        assert (boats / CONFIG).read_text() == "mine"
        assert states(boats)[CONFIG] is State.FOREIGN
    assert CONFIG not in json.loads((boats / RECORD_FILE).read_bytes())["outputs"]


def test_outputs_are_known_without_their_record(boats: Path):
    """A record can be lost: what the files say of themselves makes them namegen's."""
    run(boats)
    (boats / RECORD_FILE).unlink()
    assert set(states(boats).values()) == {State.CURRENT}
    change(boats / "robots/heron.yaml", "bridge motor 1", "bridge motor 3")
    assert states(boats)[DEVICES] is State.EDITED
    assert DEVICES in run(boats, force=True).wrote


def test_other_line_ends_are_no_edit(boats: Path):
    run(boats)
    text = (boats / DEVICES).read_bytes()
    (boats / DEVICES).write_bytes(text.replace(b"\n", b"\r\n"))
    assert states(boats)[DEVICES] is State.CURRENT
    change(boats / "robots/heron.yaml", "bridge motor 1", "bridge motor 3")
    assert states(boats)[DEVICES] is State.STALE


def test_left_over_outputs_are_deleted_on_request_and_only_untouched(boats: Path):
    run(boats)
    entries = '  - target: config-json\n    to: "config/{robot}.json"\n'
    change(boats / "namegen.yaml", entries, "")
    assert states(boats) == {DEVICES: State.CURRENT, CONFIG: State.LEFT_OVER}
    run(boats)
    assert (boats / CONFIG).exists()
    (boats / CONFIG).write_text("now mine")
    assert states(boats)[CONFIG] is State.LEFT_EDITED
    assert run(boats, tidy=True).removed == ()
    assert (boats / CONFIG).read_text() == "now mine"


def test_each_state_is_a_kind_of_finding(boats: Path):
    run(boats)
    (boats / DEVICES).write_text("# mine\n")
    (boats / CONFIG).unlink()
    planned = build.plan(open_workspace(boats))
    found = planned.with_outputs(planned.report).findings
    assert [(one.kind, one.place.path, one.robot) for one in found] == [
        ("output-edited", DEVICES, "heron"),
        ("output-missing", CONFIG, "heron"),
    ]
    remedies = [State.EDITED.remedy, State.MISSING.remedy]
    assert all(text in one.message for text, one in zip(remedies, found, strict=True))
    assert {state.kind for state in State if state is not State.CURRENT} <= set(checks.kinds())


def test_tidy_deletes_and_forgets(boats: Path):
    run(boats)
    entries = '  - target: config-json\n    to: "config/{robot}.json"\n'
    change(boats / "namegen.yaml", entries, "")
    assert run(boats, tidy=True).removed == (CONFIG,)
    assert not (boats / CONFIG).exists()
    assert list(json.loads((boats / RECORD_FILE).read_bytes())["outputs"]) == [DEVICES]


def test_an_error_in_one_manifest_stops_that_robot_only(boats: Path):
    text = (boats / "robots/heron.yaml").read_text()
    (boats / "robots/dipper.yaml").write_text(
        text.replace("robot: heron", "robot: dipper").replace("bridge motor 2", "bridge motor 9")
    )
    workspace = open_workspace(boats)
    planned = build.plan(workspace)
    assert planned.stopped == ("dipper",)
    assert [f.kind for f in planned.report.findings] == ["no-such-port"]
    assert build.write(planned).wrote == (DEVICES, CONFIG)


def test_a_stopped_robots_outputs_are_not_left_over(boats: Path):
    run(boats)
    change(boats / "robots/heron.yaml", "bridge motor 2", "bridge motor 9")
    assert states(boats) == {}
    run(boats, tidy=True)
    assert (boats / DEVICES).exists()


@pytest.mark.parametrize(
    ("old", "new", "error"),
    [
        ("{robot}/devices.py", "../../outside.py", RefusedWrite),
        ("{robot}/devices.py", "{robt}/devices.py", UnusableInput),
        ("{robot}/devices.py", "{robot.__class__}.py", UnusableInput),
        ("python-constants", "python-constant", UnusableInput),
        ("config/{robot}.json", "code/{robot}/devices.py", UnusableInput),
        ("config/{robot}.json", "robots", RefusedWrite),
    ],
)
def test_unusable_settings_write_nothing(boats: Path, old: str, new: str, error: type[Exception]):
    change(boats / "namegen.yaml", old, new)
    before = sorted(boats.rglob("*"))
    with pytest.raises(error) as raised:
        run(boats)
    assert raised.value.where and raised.value.remedy
    assert sorted(boats.rglob("*")) == before


def test_a_robot_that_is_none_is_told_with_its_place(boats: Path):
    settings = boats / "namegen.yaml"
    settings.write_text(settings.read_text() + "    robots: [coots]\n")
    line = settings.read_text().count("\n")
    with pytest.raises(UnusableInput, match='no robot "coots"') as told:
        run(boats)
    assert told.value.where.startswith(f"namegen.yaml:{line}:")


def test_a_damaged_record_is_said_with_its_remedy(boats: Path):
    run(boats)
    (boats / RECORD_FILE).write_text("{")
    with pytest.raises(UnusableInput, match="record of outputs"):
        run(boats)


def test_a_build_that_was_cut_off_after_the_record_is_no_edit_by_hand(boats: Path):
    run(boats)
    old = (boats / DEVICES).read_bytes()
    change(boats / "robots/heron.yaml", "bridge motor 1", "bridge motor 3")
    workspace = open_workspace(boats)
    planned = build.plan(workspace)
    changes = {o.path: o.artifact.text.encode() for o in planned.outputs if o.artifact}
    before, _ = build._records(planned, changes, [], [])
    build._write_record(workspace.folder, before)
    assert (boats / DEVICES).read_bytes() == old
    change(boats / "robots/heron.yaml", "bridge motor 3", "bridge motor 2")
    change(
        boats / "robots/heron.yaml",
        "sternThruster: {kind: motor, port: bridge motor 2}",
        "sternThruster: {kind: motor, port: bridge motor 3}",
    )
    assert set(states(boats).values()) == {State.STALE}


def test_the_diff_shows_old_and_new(boats: Path):
    run(boats)
    change(boats / "robots/heron.yaml", "bridge motor 1", "bridge motor 3")
    lines = list(build.diff(build.plan(open_workspace(boats)).outputs))
    assert f"--- a/{DEVICES}" in lines
    assert any(line.startswith("-") and "bridge motor 1" in line for line in lines)
    assert any(line.startswith("+") and "bridge motor 3" in line for line in lines)


def test_of_two_manifests_with_one_name_neither_is_built(boats: Path):
    """The copy would overwrite what was made from the robot's own manifest."""
    run(boats)
    before = (boats / DEVICES).read_bytes(), (boats / CONFIG).read_bytes()
    copy = (boats / "robots/heron.yaml").read_text().replace("bridge servo 1", "bridge servo 4")
    (boats / "robots/copy.yaml").write_text(copy)
    planned = build.plan(open_workspace(boats))
    assert planned.stopped == ("heron", "heron")
    assert {one.place.path for one in planned.report.findings} == {
        "robots/copy.yaml",
        "robots/heron.yaml",
    }
    assert build.write(planned).wrote == ()
    assert ((boats / DEVICES).read_bytes(), (boats / CONFIG).read_bytes()) == before
