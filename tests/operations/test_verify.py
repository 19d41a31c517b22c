"""What verify says beyond the checks of its parts: each cause once, and who names a bad path."""

from __future__ import annotations

from pathlib import Path

import pytest

from namegen.errors import UnusableInput
from namegen.operations.verify import verify
from namegen.operations.workspace import open_workspace
from tests.operations.conftest import FILES, lay

RUDDER = "  rudder: {kind: servo, port: bridge servo 1}\n"


def said(boats: Path, written: str) -> list[tuple[str, str]]:
    """Return kind and severity of each finding when the rudder's row is another."""
    lay(boats, {"robots/heron.yaml": FILES["robots/heron.yaml"].replace(RUDDER, written)})
    return [(one.kind, one.severity.value) for one in verify(open_workspace(boats)).findings]


def test_what_follows_from_a_text_cut_off_is_not_said_and_as_grave(boats: Path):
    cut = "  rudder:\n    kind: servo\n    port: bridge servo #1\n"
    assert said(boats, cut) == [("cut-by-comment", "error")]
    harmless = "  rudder:\n    kind: servo\n    port: bridge servo 1\n    does: Steers #1\n"
    assert said(boats, harmless) == [("cut-by-comment", "warning")]
    unreadable = "  rudder: {kind: servo, port: bridge servo #1}\n"
    assert said(boats, unreadable) == [("cut-by-comment", "error")]


def test_an_acceptance_is_idle_only_where_all_was_read(boats: Path):
    accept = "accept:\n  - {finding: port-undecided, because: it comes in May}\n"
    assert said(boats, RUDDER + accept) == [("idle-acceptance", "note")]
    broken = RUDDER.replace("bridge servo 1", "somewhere")
    assert said(boats, broken + accept) == [("wrong-value", "error")]


@pytest.mark.parametrize(
    ("settings", "words"),
    [
        (
            "robots: [robots/*.yaml]\ncatalogue: none.yaml\n",
            "namegen.yaml:2:12: `none.yaml` cannot",
        ),
        ("robots: [boats/*.yaml]\n", "namegen.yaml:1:9: `robots` names no file"),
        ("catalogue: catalogue.yaml\n", "namegen.yaml:1:1: A workspace has no `robots`"),
    ],
)
def test_settings_that_name_no_file_say_in_which_line(boats: Path, settings: str, words: str):
    lay(boats, {"namegen.yaml": settings})
    with pytest.raises(UnusableInput) as caught:
        open_workspace(boats)
    assert str(caught.value).startswith(words)


def test_a_robot_whose_manifest_cannot_be_read_is_not_called_unknown(boats: Path):
    manifest = FILES["robots/heron.yaml"] + "includes: [../shared/hul.yaml]\n"
    twin = FILES["robots/heron.yaml"].replace("robot: heron", "robot: dipper")
    lay(boats, {"robots/heron.yaml": manifest, "robots/dipper.yaml": twin})
    with pytest.raises(UnusableInput, match=r'robot "heron" cannot be read:\n.*hul\.yaml'):
        verify(open_workspace(boats), ["heron"])
    with pytest.raises(UnusableInput) as told:
        verify(open_workspace(boats), ["haron"])
    assert told.value.remedy == "the robots are: dipper; robots/heron.yaml cannot be read"


def test_a_file_that_bears_the_name_of_another_robot_is_told(boats: Path):
    lay(boats, {"robots/dipper.yaml": FILES["robots/heron.yaml"].replace("heron", "grebe")})
    with pytest.raises(UnusableInput) as told:
        verify(open_workspace(boats), ["dipper"])
    assert told.value.remedy.startswith("robots/dipper.yaml says `robot: grebe`; the robots are")
