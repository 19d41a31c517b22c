"""What a target cannot make of one robot stops that robot alone, and is told in the settings."""

from __future__ import annotations

from pathlib import Path

from namegen.operations.build import plan
from namegen.operations.verify import verify
from namegen.operations.workspace import open_workspace

SETTINGS = """\
robots: [heron.yaml, dipper.yaml]
build:
  - target: python-bindings
    to: "{robot}_start.py"
    with:
      through: boat
      through_type: Boat
      types: {motor: Drive}
      look_up: {motor: "boat.motor({name})"}
      imports: from boatlib import Boat, Drive
"""
ROBOT = """\
robot: ROBOT
controllers: {}
devices:
  winch: {kind: KIND, port: undecided}
"""


def _workspace(folder: Path, settings: str = SETTINGS):
    (folder / "namegen.yaml").write_text(settings)
    (folder / "heron.yaml").write_text(ROBOT.replace("ROBOT", "heron").replace("KIND", "motor"))
    (folder / "dipper.yaml").write_text(ROBOT.replace("ROBOT", "dipper").replace("KIND", "servo"))
    return open_workspace(folder)


def test_a_kind_that_an_option_leaves_out_stops_its_robot_alone(tmp_path: Path):
    workspace = _workspace(tmp_path)
    planned = plan(workspace)
    assert [output.path for output in planned.outputs] == ["heron_start.py"]
    assert planned.stopped == ("dipper",)
    for report in (planned.report, verify(workspace)):
        unfit = [finding for finding in report.findings if finding.kind == "missing-field"]
        assert {(f.place.path, f.place.line, f.robot) for f in unfit} == {
            ("namegen.yaml", 8, "dipper"),
            ("namegen.yaml", 9, "dipper"),
        }
        assert all('the kind "servo"' in finding.message for finding in unfit)
        assert all(finding.related[0].place.path == "dipper.yaml" for finding in unfit)


def test_an_option_that_no_target_has_is_told_at_its_line(tmp_path: Path):
    workspace = _workspace(tmp_path, SETTINGS.replace("through_type", "throgh_type"))
    report = verify(workspace)
    unknown = [f for f in report.findings if f.kind == "unknown-field"]
    assert {(f.place.path, f.place.line) for f in unknown} == {("namegen.yaml", 7)}
    assert "through_type" in unknown[0].message
    assert not plan(workspace).outputs
