"""A new robot in a workspace: from the catalogue, or like another one."""

from __future__ import annotations

from pathlib import Path

import pytest

from namegen.errors import RefusedWrite, UnusableInput
from namegen.operations.new import new_robot
from namegen.operations.verify import verify
from namegen.operations.workspace import open_workspace
from tests.operations.conftest import FILES, lay


def made(root: Path, name: str = "wren", like: str | None = None) -> str:
    """Return the text of the new robot's manifest."""
    return (root / new_robot(open_workspace(root), name, like)).read_text(encoding="utf-8")


def wrong(root: Path, robot: str = "wren") -> list[str]:
    return [one.kind for one in verify(open_workspace(root), [robot]).findings]


@pytest.mark.parametrize(
    ("ports", "devices"),
    [
        ("{motor: 1-3, servo: 1-5, digital: 1-6}", 2),
        ("{servo: [A, B]}", 1),
        ("{analog: 0-2}", 1),
        ("{i2c: 1-2}", 0),
        ("{lin: 1-2}", 0),
    ],
)
def test_a_new_robot_has_a_board_of_the_catalogue_and_passes(boats: Path, ports: str, devices: int):
    catalogue = f"boards:\n  'deck board':\n    ports: {ports}\nport_types: {{lin: {{}}}}\n"
    lay(boats, {"catalogue.yaml": catalogue, "namegen.yaml": "robots: [robots/*.yaml]\n"})
    settings = FILES["namegen.yaml"].replace("style: camelCase", "style: snake_case")
    lay(boats, {"namegen.yaml": settings})
    text = made(boats)
    assert "board: deck board" in text
    assert text.count("port:") == devices
    assert wrong(boats) == []


def test_without_any_board_verify_says_what_to_add(boats: Path):
    lay(boats, {"catalogue.yaml": "boards: {}\n"})
    made(boats)
    assert wrong(boats) == ["no-such-board"]


def test_like_another_leaves_out_what_is_its_own(boats: Path):
    manifest = FILES["robots/heron.yaml"].replace(
        "robot: heron\n", "# The old boat\nrobot: heron\ntitle: Heron\nrevision: spring\n"
    )
    accept = "accept:\n  - {finding: port-undecided, because: later}\n"
    lay(boats, {"robots/heron.yaml": manifest + accept})
    text = made(boats, like="heron")
    assert text == FILES["robots/heron.yaml"].replace(
        "robot: heron\n", "# The old boat\nrobot: wren\n"
    ).replace(", formerly: [frontThruster]", "")
    assert wrong(boats) == []


def test_the_name_of_an_included_file_is_not_touched(boats: Path):
    own = "includes: [../shared/boat.yaml]\n" + FILES["robots/heron.yaml"].split("\n", 1)[1]
    lay(boats, {"shared/boat.yaml": "robot: heron\n", "robots/heron.yaml": own})
    assert made(boats, like="heron").startswith("robot: wren\nincludes: [../shared/boat.yaml]\n")
    assert (boats / "shared/boat.yaml").read_text() == "robot: heron\n"


def test_a_manifest_that_cannot_be_read_is_not_copied(boats: Path):
    lay(boats, {"robots/heron.yaml": "{robot: heron\n"})
    with pytest.raises(UnusableInput):
        made(boats, like="heron")
    lay(boats, {"robots/heron.yaml": "{devices: {}}\n"})
    with pytest.raises(UnusableInput, match="cannot be copied"):
        made(boats, like="heron")
    assert not (boats / "robots/wren.yaml").exists()


@pytest.mark.parametrize("name", ["heron", "Heron", "my first", "../wren", "2wren", ""])
def test_a_name_that_is_taken_or_names_no_file_is_refused(boats: Path, name: str):
    with pytest.raises(UnusableInput):
        made(boats, name)


def test_a_file_that_is_there_is_kept(boats: Path):
    lay(boats, {"robots/wren.yaml": "robot: other\n"})
    with pytest.raises(RefusedWrite):
        made(boats)
