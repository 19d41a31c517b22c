"""What a target cannot make of one robot stops that robot alone, and is told in the settings."""

from __future__ import annotations

from pathlib import Path

import pytest

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


@pytest.mark.parametrize(
    ("target", "missing", "good"),
    [
        ("python-bindings", "NotFitted", True),
        ("python-bindings", "(KeyError, boatlib.NotFitted)", True),
        ("python-bindings", "(KeyError,)", True),
        ("python-bindings", "Not Fitted", False),
        ("python-bindings", "KeyError, NotFitted", False),
        ("python-bindings", "NotFitted | KeyError", False),
        ("java-bindings", "NotFitted", True),
        ("java-bindings", "club.NotFitted | IllegalStateException", True),
        ("java-bindings", "Not Fitted", False),
        ("java-bindings", "NotFitted, KeyError", False),
    ],
)
def test_an_exception_that_would_not_compile_is_told(
    tmp_path: Path, target: str, missing: str, good: bool
):
    settings = SETTINGS.replace("python-bindings", target).replace("heron.yaml, dipper", "heron")
    if target == "java-bindings":
        settings = settings.replace("_start.py", "Start.java").replace(
            "from boatlib import Boat, Drive", "club.Boat"
        )
    workspace = _workspace(tmp_path, settings + f'      missing: "{missing}"\n')
    found = [f for f in plan(workspace).report.findings if "option missing" in f.message]
    assert bool(found) != good
    if good and target == "python-bindings":  # the language itself agrees
        compile(f"try: pass\nexcept {missing}: pass", "x", "exec")
