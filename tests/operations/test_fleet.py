"""Robots side by side: what is accepted, what cannot be read, and which robots are asked for."""

from __future__ import annotations

from pathlib import Path

import pytest

from namegen.errors import UnusableInput
from namegen.operations.fleet import fleet
from namegen.operations.workspace import open_workspace

DIPPER = """\
robot: dipper
controllers:
  bridge: {board: harbour}
devices:
  bowThruster: {kind: motor, port: bridge motor 1}
  rudder: {kind: servo, port: bridge servo 4}
"""
ACCEPT = "accept:\n  - {finding: same-name-other-port, because: another hull, device: rudder}\n"


@pytest.fixture
def two(boats: Path) -> Path:
    (boats / "robots/dipper.yaml").write_text(DIPPER)
    manifest = boats / "robots/heron.yaml"  # the pattern is the robot whose path comes first
    manifest.rename(boats / "robots/a-heron.yaml")
    return boats


def found(root: Path, *robots: str) -> list[tuple[str, str | None]]:
    return [(one.kind, one.robot) for one in fleet(open_workspace(root), robots).report.findings]


def test_the_table_has_all_devices_and_what_each_robot_lacks(two: Path):
    side_by_side = fleet(open_workspace(two))
    assert side_by_side.robots == ("heron", "dipper")
    assert [row[0] for row in side_by_side.rows[:2]] == ["sheet mark", "setup"]
    assert side_by_side.rows[2:] == (
        ("bowThruster", "bridge motor 1", "bridge motor 1"),
        ("sternThruster", "bridge motor 2", "-"),
        ("rudder", "bridge servo 1", "bridge servo 4"),
    )


def test_a_difference_is_found_and_can_be_accepted(two: Path):
    assert found(two) == [("same-name-other-port", "dipper")]
    (two / "robots/dipper.yaml").write_text(DIPPER + ACCEPT)
    assert found(two) == []


def test_an_acceptance_that_is_not_needed_any_more_is_told_when_all_robots_are_there(two: Path):
    mended = (DIPPER + ACCEPT).replace("bridge servo 4", "bridge servo 1")
    (two / "robots/dipper.yaml").write_text(mended)
    assert found(two) == [("idle-acceptance", "dipper")]
    assert found(two, "dipper") == []


def test_a_robot_that_cannot_be_read_is_told(two: Path):
    (two / "robots/dipper.yaml").write_text("robot: [")
    side_by_side = fleet(open_workspace(two))
    assert side_by_side.robots == ("heron",)
    assert [one.place.path for one in side_by_side.report.findings] == ["robots/dipper.yaml"]
    assert not side_by_side.report.clean


def test_a_robot_that_is_not_known_is_told(two: Path):
    with pytest.raises(UnusableInput, match="there is no robot"):
        fleet(open_workspace(two), ["diper"])


def test_two_manifests_of_one_name_are_told_and_not_held_against_each_other(two: Path):
    copy = (two / "robots/dipper.yaml").read_text().replace("bridge servo 4", "bridge servo 5")
    (two / "robots/z-copy.yaml").write_text(copy)
    side_by_side = fleet(open_workspace(two))
    assert side_by_side.robots == ("heron",)
    assert [(one.kind, one.place.path) for one in side_by_side.report.findings] == [
        ("wrong-value", "robots/dipper.yaml"),
        ("wrong-value", "robots/z-copy.yaml"),
    ]


def test_manifests_that_cannot_be_read_are_counted_among_the_files(two: Path):
    for path in (two / "robots").iterdir():
        path.write_text("robot: [")
    assert fleet(open_workspace(two)).report.files == 2
