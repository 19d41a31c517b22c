"""A name in the settings that fits nothing is a finding where it stands, never a silent gap."""

from __future__ import annotations

from pathlib import Path

import pytest

from namegen.errors import UnusableTarget
from namegen.model.findings import Severity
from namegen.operations.audit import audit
from namegen.operations.build import plan
from namegen.operations.verify import verify
from namegen.operations.workspace import open_workspace
from tests.operations.conftest import FILES, lay

SETUPS = "setups:\n  harvest: everything\nselected: harvest\n"


@pytest.mark.parametrize(
    ("old", "new", "found", "said"),
    [
        ("kind: motor}", "kind: motr}", "5 motr", '"motr" is no kind. Did you mean "motor"?'),
        ("kind: servo}", "kind: servo, languages: [pyton]}", "6 pyton", 'mean "python"?'),
        (
            "{call: servo, kind: servo}",
            "{call: x, kind_at: 1, kinds: {A: serwo}}",
            "6 serwo",
            '"servo"',
        ),
        ("robots: [heron]}", "robots: [herron]}", "8 herron", '"herron" is no robot'),
        (
            "robots: [heron]}",
            "robots: [heron], setup: harvst}",
            "8 harvst",
            'Did you mean "harvest"?',
        ),
        ("robots: [heron]}", "robots: herron}", "8 herron", '"herron" is no robot'),
        ("kind: servo}", "kind: servo, languages: pyton}", "6 pyton", 'mean "python"?'),
        ("target: config-json", "target: config-jsn", "12 config-jsn", '"config-jsn" is no target'),
    ],
)
def test_each_name_is_held_against_what_there_is(
    boats: Path, old: str, new: str, found: str, said: str
):
    assert old in FILES["namegen.yaml"]
    text = FILES["namegen.yaml"].replace(old, new)
    lay(boats, {"namegen.yaml": text})
    lay(boats, {"robots/heron.yaml": FILES["robots/heron.yaml"] + SETUPS})
    for report in (verify(open_workspace(boats)), audit(open_workspace(boats)).report):
        (finding,) = (f for f in report.findings if f.place.path == "namegen.yaml")
        place = finding.place
        assert finding.kind == "wrong-value" and place.line == place.end_line
        line = text.splitlines()[place.line - 1]
        assert f"{place.line} {line[place.column - 1 : place.end_column - 1]}" == found
        assert said in finding.message


def test_right_settings_have_no_finding(boats: Path):
    assert verify(open_workspace(boats)).findings == ()


@pytest.mark.parametrize(
    ("row", "slip"),
    [
        ("{call: motor, kind: motor}", "{call: motor, kind: moter}"),
        (
            "{call: fitted, kind_at: 1, kinds: {Motor: motor}}",
            "{call: fitted, kind_at: 1, kinds: {Motor: moter}}",
        ),
    ],
)
def test_a_slip_in_the_kind_of_a_row_never_blames_right_code(boats: Path, row: str, slip: str):
    right = FILES["namegen.yaml"].replace("{call: motor, kind: motor}", row)
    code = 'bow = boat.motor("rudder"), boat.fitted("rudder", Motor)\n'
    code += 'boat.motor("bowThruster"), boat.fitted("bowThruster", Motor), boat.motor("bow")\n'
    lay(boats, {"namegen.yaml": right, "code/heron/main.py": code})
    kinds = {one.kind for one in audit(open_workspace(boats)).report.findings}
    assert "wrong-kind" in kinds  # what the row means when it is right
    lay(boats, {"namegen.yaml": right.replace(row, slip)})
    found = audit(open_workspace(boats)).report.findings
    assert [one.kind for one in found if one.place.path == "namegen.yaml"] == ["wrong-value"]
    assert "wrong-kind" not in {one.kind for one in found}
    names = {one.found for one in found if one.kind == "unknown-name"}
    assert names == ({"bow"} if "call: motor" in row else set())  # names are judged as ever


def test_kinds_of_a_catalogue_that_cannot_be_read_are_not_doubted(boats: Path):
    own = FILES["namegen.yaml"].replace("kind: servo}", "kind: horn}")
    lay(boats, {"namegen.yaml": own, "catalogue.yaml": "kinds: {horn: {port: servo}}\n\tx\n"})
    found = verify(open_workspace(boats)).findings
    assert "namegen.yaml" not in {one.place.path for one in found}
    lay(boats, {"catalogue.yaml": "kinds: {horn: {port: servo}}\n"})
    assert "namegen.yaml" not in {one.place.path for one in verify(open_workspace(boats)).findings}
    lay(boats, {"catalogue.yaml": "kinds: {bell: {port: servo}}\n"})
    assert "namegen.yaml" in {one.place.path for one in verify(open_workspace(boats)).findings}


OWN = "model: 1\ndescription: A list.\nper: robot\ntemplate: list.j2\n"
BAD = {"own/crew/target.yaml": OWN + "options: {boat: {type: text}}\n", "own/crew/list.j2": "x\n"}


def test_a_target_that_cannot_be_used_stops_what_needs_it_and_nothing_else(boats: Path):
    lay(boats, BAD | {"namegen.yaml": FILES["namegen.yaml"] + "templates: own\n"})
    for report in (verify(open_workspace(boats)), audit(open_workspace(boats)).report):
        (finding,) = report.findings
        assert (finding.place.path, finding.place.line) == ("own/crew/target.yaml", 5)
        assert finding.severity is Severity.WARNING and "`help: what it is for`" in finding.message
    assert plan(open_workspace(boats)).outputs
    row = '  - {target: crew, to: "crew/{robot}.txt"}\ntemplates: own\n'
    lay(boats, {"namegen.yaml": FILES["namegen.yaml"] + row})
    for report in (verify(open_workspace(boats)), audit(open_workspace(boats)).report):
        assert [one.severity for one in report.findings] == [Severity.ERROR]
    with pytest.raises(UnusableTarget, match="option boat: needs a help text"):
        plan(open_workspace(boats))
