"""Typed names that stay: others may take them, or no look-up is seen to take them whole."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import pytest

from namegen.operations.code_files import ALL, Selection
from namegen.operations.constants import use_constants
from namegen.operations.fix import Fixed
from namegen.operations.workspace import open_workspace
from tests.operations.changing import built, changed
from tests.operations.conftest import FILES, lay


@pytest.mark.parametrize(
    ("names", "program"),
    [
        ('NAMES = {"bow": "bowThruster"}\n', "boat.motor(names.NAMES[key()])\n"),
        ('BOW = "bowThruster"\nBOW = "sternThruster"\n', "boat.motor(names.BOW)\n"),
        ('BOW = "bow" + "Thruster"\n', "boat.motor(names.BOW)\n"),
        ('BOW = "bowThruster"\n', "print(names.BOW)\n"),
        ('BOW = "bowThruster"\n', "boat.motor(names.BOW)\nboat.servo(names.BOW)\n"),
    ],
    ids=["table", "twice", "pieces", "no look-up", "two kinds"],
)
def test_what_no_look_up_surely_takes_whole_stays_as_it_was(boats: Path, names: str, program: str):
    main = f"import names\n{program}"
    built(boats, {"code/heron/names.py": names, "code/heron/main.py": main})
    assert changed(boats).changes == ()


def told(done: Fixed) -> list[tuple[str, int, str]]:
    return [(place.path, place.line, why) for place, why in done.refused]


def test_a_type_that_is_the_text_itself_keeps_it_and_the_others_change(boats: Path):
    names = 'from typing import Literal\n\nBOW: Literal["bowThruster"] = "bowThruster"\n'
    names += 'STERN = "sternThruster"\n'
    main = "import names\nboat.motor(names.BOW)\nboat.motor(names.STERN)\n"
    built(boats, {"code/heron/names.py": names, "code/heron/main.py": main})
    done = changed(boats)
    ((path, line, why),) = told(done)
    assert (path, line) == ("code/heron/names.py", 3) and "Literal" in why
    assert done.edits == 1
    text = (boats / "code/heron/names.py").read_text()
    assert 'BOW: Literal["bowThruster"] = "bowThruster"\nSTERN = Motor.STERN_THRUSTER' in text


def test_a_part_of_the_code_does_not_decide_over_a_name_that_others_may_take(boats: Path):
    names = 'BOW = "bowThruster"\n'
    main = 'import names\nboat.motor(names.BOW)\nboat.motor("sternThruster")\n'
    built(boats, {"code/heron/names.py": names, "code/heron/main.py": main})
    done = changed(boats, Selection((boats / "code/heron",)))
    ((path, line, why),) = told(done)
    assert (path, line) == ("code/heron/names.py", 1) and "audit all code" in why
    assert "boat.motor(Motor.STERN_THRUSTER)" in (boats / "code/heron/main.py").read_text()
    assert (boats / "code/heron/names.py").read_text() == names


TWO = FILES["namegen.yaml"].replace(
    "build:", "  - {path: code/dipper, robots: [dipper]}\n  - {path: code/shared, robots: "
    "[heron, dipper]}\nbuild:",
)  # fmt: skip
DIPPER = FILES["robots/heron.yaml"].replace("robot: heron", "robot: dipper")


def two_boats(root: Path, files: Mapping[str, str]) -> Path:
    """Build a workspace with two boats that have devices of the same names."""
    empty = {"code/dipper/empty.py": "", "code/shared/empty.py": ""}
    both = {"namegen.yaml": TWO, "robots/dipper.yaml": DIPPER, "code/heron/main.py": ""}
    return built(root, empty | both | dict(files))


def test_a_constant_that_is_not_built_is_asked_for(boats: Path):
    lay(boats, {"code/heron/main.py": 'boat.motor("bowThruster")\n'})
    ((path, line, why),) = told(use_constants(open_workspace(boats), ALL))
    assert (path, line) == ("code/heron/main.py", 1)
    assert "python-constants" in why and "`namegen build`" in why


def test_names_that_several_robots_share_are_bound_to_none(boats: Path):
    names = {"code/shared/names.py": 'BOW = "bowThruster"\n'}
    main = "from names import BOW\nboat.motor(BOW)\n"
    two_boats(boats, names | {"code/heron/main.py": main, "code/dipper/main.py": main})
    done = changed(boats)
    assert done.changes == ()
    ((path, _, why),) = told(done)
    assert path == "code/shared/names.py" and "several robots" in why


def test_a_name_of_one_robot_that_code_of_another_looks_up_stays(boats: Path):
    main = "from names import BOW, STERN\nboat.motor(BOW)\n"
    names = 'BOW = "bowThruster"\nSTERN = "sternThruster"\n'
    files = {"code/heron/names.py": names, "code/heron/main.py": main + "boat.motor(STERN)\n"}
    two_boats(boats, files | {"code/dipper/main.py": main})
    done = changed(boats)
    ((path, line, why),) = told(done)
    assert (path, line) == ("code/heron/names.py", 1)
    assert "code of dipper looks it up too" in why
    text = (boats / "code/heron/names.py").read_text()
    assert text.endswith('BOW = "bowThruster"\nSTERN = Motor.STERN_THRUSTER\n')


def test_a_name_that_is_not_audited_is_left_and_said(boats: Path):
    exclude = 'robots: [heron], exclude: ["names.py"]}'
    settings = FILES["namegen.yaml"].replace("robots: [heron]}", exclude)
    names = {"code/heron/names.py": 'BOW = "bowThruster"\n', "namegen.yaml": settings}
    built(boats, names | {"code/heron/main.py": "import names\nboat.motor(names.BOW)\n"})
    done = changed(boats)
    assert done.changes == ()
    ((path, _, why),) = told(done)
    assert path == "code/heron/names.py" and "not audited" in why
