"""Numbers that were copied into code, held against what follows from parts and battery."""

from __future__ import annotations

from pathlib import Path

import pytest

from namegen.operations import build
from namegen.operations.audit import audit
from namegen.operations.number_names import NumberNames
from namegen.operations.workspace import open_workspace
from tests.operations.conftest import FILES, lay

GEARED = "gear: 13, encoder_cycles: 9, decoding: 2, encoder_on: motor"  # 9 x 2 x 13 = 234
CATALOGUE = FILES["catalogue.yaml"] + f"parts:\n  pusher: {{kind: motor, {GEARED}}}\n"
HERON = FILES["robots/heron.yaml"].replace(
    "bowThruster: {kind: motor,", "bowThruster: {kind: motor, part: pusher,"
)


@pytest.fixture
def geared(boats: Path) -> Path:
    """The workspace with a part whose numbers follow; its constants are built."""
    lay(boats, {"catalogue.yaml": CATALOGUE, "robots/heron.yaml": HERON})
    workspace = open_workspace(boats)
    build.write(build.plan(workspace))
    assert (
        b"BOW_THRUSTER_COUNTS_PER_OUTPUT_TURN: Final = 234.0"
        in (boats / "code/heron/devices.py").read_bytes()
    )
    return boats


def told(root: Path) -> list[tuple[str, int, str | None, str | None]]:
    """Return where the audit finds outdated numbers."""
    findings = audit(open_workspace(root)).report.findings
    assert {one.kind for one in findings} <= {"outdated-number"}, findings
    return [(f.place.path, f.place.line, f.found, f.expected) for f in findings]


def test_a_file_without_a_look_up_is_read_for_its_numbers_too(geared: Path):
    code = "PAUSE = 3\nBOW_THRUSTER_COUNTS_PER_OUTPUT_TURN = 9 * 2 * 12\n"
    java = "class Gears {\n  final double bowThrusterCountsPerOutputTurn = 216.0;\n}\n"
    kotlin = "const val BOW_THRUSTER_COUNTS_PER_OUTPUT_TURN = 9 * (2 * 12.0)\n"
    lay(geared, {"code/heron/gears.py": code, "code/heron/Gears.java": java})
    lay(geared, {"code/heron/Gears.kt": kotlin})
    assert told(geared) == [
        ("code/heron/Gears.java", 2, "216.0", "234"),
        ("code/heron/Gears.kt", 1, "9 * (2 * 12.0)", "234"),
        ("code/heron/gears.py", 2, "9 * 2 * 12", "234"),
    ]
    lay(geared, {"code/heron/gears.py": code.replace("12", "13"), "code/heron/Gears.java": ""})
    lay(geared, {"code/heron/Gears.kt": kotlin.replace("12", "13")})
    assert told(geared) == []


def test_numbers_of_arguments_keys_and_setters_are_held_too(geared: Path):
    code = (
        "hull = Hull(bow_thruster_counts_per_output_turn=216)\n"
        'gears = {"bowThrusterCountsPerOutputTurn": 217}\n'
        "def start(bow_thruster_counts_per_output_turn=218): pass\n"
        "@dataclass\nclass Gears:\n    bow_thruster_counts_per_output_turn: float = 219\n"
        "wheel = Wheel(boat.motor('bowThruster'), counts_per_output_turn=648)\n"
    )
    java = "class Gears {{\n  void f() {{ gears.setBowThrusterCountsPerOutputTurn({0}); }}\n}}\n"
    lay(geared, {"code/heron/gears.py": code, "code/heron/Gears.java": java.format(220)})
    assert told(geared) == [
        ("code/heron/Gears.java", 2, "220", "234"),
        *(
            ("code/heron/gears.py", line, str(n), "234")
            for line, n in enumerate([216, 217, 218], 1)
        ),
        ("code/heron/gears.py", 6, "219", "234"),
    ]
    for wrong in range(216, 220):
        code = code.replace(str(wrong), "234")
    lay(geared, {"code/heron/gears.py": code, "code/heron/Gears.java": java.format(234)})
    assert told(geared) == []


def test_the_constant_is_told_where_it_is_built(geared: Path):
    java = "class Gears {\n  final double bowThrusterCountsPerOutputTurn = 216.0;\n}\n"
    code = "bow_thruster_counts_per_output_turn = 216\n"
    lay(geared, {"code/heron/gears.py": code, "code/heron/Gears.java": java})
    first, second = audit(open_workspace(geared)).report.findings
    assert "constant" not in first.message
    assert 'constant "BOW_THRUSTER_COUNTS_PER_OUTPUT_TURN"' in second.message
    assert second.related[0].place.path == "robots/heron.yaml"


def test_a_generated_file_that_is_behind_is_for_the_build_to_mend(geared: Path):
    lay(geared, {"catalogue.yaml": CATALOGUE.replace("gear: 13", "gear: 12")})
    assert told(geared) == []


def test_a_file_that_several_robots_share_is_held_against_each(geared: Path):
    other = HERON.replace("robot: heron", "robot: dipper").replace("pusher", "pusher-2")
    two = CATALOGUE + f"  pusher-2: {{kind: motor, {GEARED.replace('13', '12')}}}\n"
    settings = FILES["namegen.yaml"].replace("robots: [heron]", "robots: [heron, dipper]")
    lay(geared, {"catalogue.yaml": two, "robots/dipper.yaml": other, "namegen.yaml": settings})
    lay(geared, {"code/heron/gears.py": "BOW_THRUSTER_COUNTS_PER_OUTPUT_TURN = 216\n"})
    findings = audit(open_workspace(geared)).report.findings
    assert [(f.kind, f.robot) for f in findings] == [("outdated-number", "heron")]


def test_what_any_setup_gives_is_right(geared: Path):
    setups = "setups:\n  pond: everything\n  sea: {change: {bowThruster: {part: slow}}}\n"
    two = CATALOGUE + f"  slow: {{kind: motor, {GEARED.replace('13', '12')}}}\n"
    lay(geared, {"catalogue.yaml": two, "robots/heron.yaml": HERON + setups + "selected: pond\n"})
    code = "BOW_THRUSTER_COUNTS_PER_OUTPUT_TURN = 216\nbowThrusterCountsPerOutputTurn = 218\n"
    lay(geared, {"code/heron/gears.py": code})
    assert told(geared) == [("code/heron/gears.py", 2, "218", "234")]


def test_a_comment_and_the_manifest_can_allow_it(geared: Path):
    line = "BOW_THRUSTER_COUNTS_PER_OUTPUT_TURN = 216"
    allowed = f"{line}  # namegen: allow outdated-number because the old gear is on\n"
    lay(geared, {"code/heron/gears.py": allowed})
    assert told(geared) == []


def test_without_figures_nothing_is_searched_for():
    assert NumberNames().within(b"BOW_THRUSTER_COUNTS_PER_OUTPUT_TURN = 216") == []
