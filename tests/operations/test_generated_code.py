"""Code that namegen made: its look-ups count as uses, and no repair is ever made in it."""

from __future__ import annotations

from pathlib import Path

import pytest

from namegen.operations import build, fix
from namegen.operations.audit import audit
from namegen.operations.build import State
from namegen.operations.code_files import ALL
from namegen.operations.workspace import open_workspace
from tests.operations.conftest import FILES, lay

BINDINGS = """\
  - target: python-bindings
    to: "code/{robot}/start_up.py"
    with:
      through: boat
      through_type: Boat
      imports: ["from boatlib import Boat, Part"]
      types: {"*": Part}
      look_up: {motor: "boat.motor({name})", servo: "boat.servo({name})"}
"""
SETUPS = """\
setups: {harvest: everything, tank-test: {without: [rudder]}}
selected: harvest
"""
START_UP = "code/heron/start_up.py"


@pytest.fixture
def bound(boats: Path) -> Path:
    """A workspace whose code is for one setup, with bindings for all, built."""
    settings = FILES["namegen.yaml"].replace(
        "robots: [heron]}\n", "robots: [heron], setup: tank-test}\n"
    )
    files = {
        "namegen.yaml": settings + BINDINGS,
        "robots/heron.yaml": FILES["robots/heron.yaml"] + SETUPS,
        "code/heron/main.py": "from start_up import start\n",
    }
    workspace = open_workspace(lay(boats, files))
    build.write(build.plan(workspace))
    assert "boat.servo" in (boats / START_UP).read_text()
    return boats


def test_bindings_use_all_devices_and_nothing_is_wrong_in_them(bound: Path):
    report = audit(open_workspace(bound)).report
    assert report.findings == ()
    assert report.lookups == 3


def test_names_that_the_bindings_make_at_run_time_are_no_gap(bound: Path):
    """With ``{call: optional}`` the generated search has a look-up whose name is a parameter."""
    settings = (bound / "namegen.yaml").read_text()
    lay(bound, {"namegen.yaml": settings.replace("code:\n", "  - {call: optional}\ncode:\n", 1)})
    assert [f.kind for f in audit(open_workspace(bound)).report.findings] == []


def test_constants_are_not_put_into_it(bound: Path):
    lay(bound, {"code/heron/main.py": 'boat.motor("bowThruster")\n'})
    workspace = open_workspace(bound)
    found = audit(workspace, asked=["loose-literal"]).report.findings
    assert [(f.kind, f.place.path) for f in found] == [("loose-literal", "code/heron/main.py")]


def test_a_name_that_is_out_of_date_is_mended_by_the_build_alone(bound: Path):
    manifest = (bound / "robots/heron.yaml").read_text()
    renamed = manifest.replace("  rudder: {kind: servo", "  helm: {formerly: rudder, kind: servo")
    settings = (bound / "namegen.yaml").read_text().replace(", setup: tank-test", "")
    lay(
        bound,
        {"robots/heron.yaml": renamed.replace("[rudder]", "[helm]"), "namegen.yaml": settings},
    )
    workspace = open_workspace(bound)
    (finding,) = audit(workspace).report.findings
    assert (finding.kind, finding.place.path, finding.fix) == ("retired-name", START_UP, None)
    assert "Run `namegen build`" in finding.message
    fixed = fix.fix(workspace, ALL, fix.SUGGESTED)
    fix.write(workspace, fixed)
    states = {o.path: o.state for o in build.plan(open_workspace(bound)).outputs}
    assert states[START_UP] is State.STALE


@pytest.mark.parametrize(
    ("code", "told"),
    [
        ("from devices import Motor\nboat.motor(Motor.FRONT_THRUSTER)", "Motor.BOW_THRUSTER"),
        ("from devices import BOW_THRUSTER\nboat.motor(BOW_THRUSTER)", "Motor.BOW_THRUSTER"),
        ("import devices\nboat.servo(devices.Motor.RUDDER)", "Servo.RUDDER"),
        ("from devices import Motor\nboat.motor(Motor.KEEL)", ""),
    ],
)
def test_a_constant_that_is_there_under_another_name_or_class_is_told(
    boats: Path, code: str, told: str
):
    lay(boats, {"code/heron/main.py": code + "\n"})
    workspace = open_workspace(boats)
    build.write(build.plan(workspace))
    (one,) = audit(workspace).report.findings
    assert one.kind == "not-checkable"
    assert (f"`. The constant is `{told}`." in one.message) if told else ("spelling" in one.message)
