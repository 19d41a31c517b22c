"""A name in the settings that fits nothing is a finding at its line, never a silent gap."""

from __future__ import annotations

from pathlib import Path

import pytest

from namegen.operations.audit import audit
from namegen.operations.verify import verify
from namegen.operations.workspace import open_workspace
from tests.operations.conftest import FILES, lay

SETUPS = "setups:\n  harvest: everything\nselected: harvest\n"


@pytest.mark.parametrize(
    ("old", "new", "line", "said"),
    [
        ("kind: motor}", "kind: motr}", 5, '"motr" is no kind. Did you mean "motor"?'),
        ("kind: servo}", "kind: servo, languages: [pyton]}", 6, 'mean "python"?'),
        ("{call: servo, kind: servo}", "{call: x, kind_at: 1, kinds: {A: serwo}}", 6, '"servo"'),
        ("robots: [heron]}", "robots: [herron]}", 8, '"herron" is no robot'),
        ("robots: [heron]}", "robots: [heron], setup: harvst}", 8, 'Did you mean "harvest"?'),
        ("target: config-json", "target: config-jsn", 12, '"config-jsn" is no target'),
    ],
)
def test_each_name_is_held_against_what_there_is(
    boats: Path, old: str, new: str, line: int, said: str
):
    assert old in FILES["namegen.yaml"]
    lay(boats, {"namegen.yaml": FILES["namegen.yaml"].replace(old, new)})
    lay(boats, {"robots/heron.yaml": FILES["robots/heron.yaml"] + SETUPS})
    for report in (verify(open_workspace(boats)), audit(open_workspace(boats)).report):
        found = [f for f in report.findings if f.place.path == "namegen.yaml"]
        assert [(f.kind, f.place.line) for f in found] == [("wrong-value", line)]
        assert said in found[0].message


def test_right_settings_have_no_finding(boats: Path):
    assert verify(open_workspace(boats)).findings == ()
