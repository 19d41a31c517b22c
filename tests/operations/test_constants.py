"""Names made by hand are filled from the generated constants, and the code does the same.

Checked from outside: CPython runs each program before and after against a stand-in boat, and
mypy takes the types. Java is in ``test_java_constants.py``.
"""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Mapping
from pathlib import Path

import pytest

from namegen.operations import build, fix
from namegen.operations.code_files import ALL, Selection
from namegen.operations.constants import use_constants
from namegen.operations.fix import Fixed
from namegen.operations.workspace import open_workspace
from tests.operations.conftest import FILES, lay

BOAT = """\
class Boat:
    def motor(self, name: str) -> str:
        print("motor", repr(name), name == "bowThruster")
        return name

    def servo(self, name: str) -> str:
        print("servo", repr(name))
        return name
"""
EACH = "\n\ndef each(boat):\n    return [boat.motor(name) for name in THRUSTERS]\n"
RUN = "from boatlib import Boat\n\nboat = Boat()\n"

PYTHON = {
    "module": (
        'BOW = "bowThruster"\n',
        "from devices import Motor\n\nBOW = Motor.BOW_THRUSTER\n",
        "import names\nboat.motor(names.BOW)\nprint(names.BOW, {names.BOW: 1})\n",
    ),
    "Final": (
        'from typing import Final\n\nBOW: Final = "bowThruster"\nRUDDER: Final[str] = "rudder"\n',
        "from devices import Motor, Servo\nfrom typing import Final\n\n"
        "BOW: Final = Motor.BOW_THRUSTER\nRUDDER: Final[str] = Servo.RUDDER\n",
        "from names import BOW, RUDDER\nboat.motor(BOW)\nboat.servo(RUDDER)\n",
    ),
    "class": (
        'class Names:\n    """Ours."""\n\n    BOW = "bowThruster"  # at the bow\n',
        "from devices import Motor\n\n"
        'class Names:\n    """Ours."""\n\n    BOW = Motor.BOW_THRUSTER  # at the bow\n',
        "from names import Names\nboat.motor(Names.BOW)\nprint(vars(Names)['BOW'])\n",
    ),
    "class named as ours are": (
        'class Motor:\n    BOW = "bowThruster"\n',
        "import devices\n\nclass Motor:\n    BOW = devices.Motor.BOW_THRUSTER\n",
        "from names import Motor\nboat.motor(Motor.BOW)\n",
    ),
    "text enum": (
        'from enum import Enum\n\n\nclass Names(str, Enum):\n    BOW = "bowThruster"\n',
        "from devices import Motor\nfrom enum import Enum\n\n\n"
        "class Names(str, Enum):\n    BOW = Motor.BOW_THRUSTER\n",
        "from names import Names\nboat.motor(Names.BOW.value)\nprint(Names('bowThruster').name)\n"
        "boat.motor(Names.BOW)\n",
    ),
    "enum": (
        'from enum import Enum\n\n\nclass Names(Enum):\n    BOW = "bowThruster"\n',
        "from devices import Motor\nfrom enum import Enum\n\n\n"
        "class Names(Enum):\n    BOW = Motor.BOW_THRUSTER\n",
        "from names import Names\nboat.motor(Names.BOW.value)\nprint(Names('bowThruster').name)\n",
    ),
    "tuple": (
        f'THRUSTERS = ("bowThruster", "sternThruster")\n{EACH}',
        "from devices import Motor\n\n"
        f"THRUSTERS = (Motor.BOW_THRUSTER, Motor.STERN_THRUSTER)\n{EACH}",
        "import names\nnames.each(boat)\n",
    ),
    "a type of names": (
        'from typing import NewType\n\nName = NewType("Name", str)\nBOW = Name("bowThruster")\n',
        "from devices import Motor\nfrom typing import NewType\n\n"
        'Name = NewType("Name", str)\nBOW = Name(Motor.BOW_THRUSTER)\n',
        "from names import BOW\nboat.motor(BOW)\n",
    ),
    "below comments that are read": (
        '#!/usr/bin/env python3\n# -*- coding: utf-8 -*-\nBOW = "bowThruster"  # \u00e9\n',
        "#!/usr/bin/env python3\n# -*- coding: utf-8 -*-\n\nfrom devices import Motor\n\n"
        "BOW = Motor.BOW_THRUSTER  # \u00e9\n",
        "from names import BOW\nboat.motor(BOW)\n",
    ),
    "below a comment about the file": (
        '# All names.\n\n# The bow:\nBOW = "bowThruster"\n',
        "# All names.\n\nfrom devices import Motor\n\n# The bow:\nBOW = Motor.BOW_THRUSTER\n",
        "from names import BOW\nboat.motor(BOW)\n",
    ),
    "all names imported": (
        'BOW = "bowThruster"\n',
        "import devices as _devices\n\nBOW = _devices.Motor.BOW_THRUSTER\n",
        "Motor = 'a word of mine'\nfrom names import *\nboat.motor(BOW)\nprint(Motor)\n",
    ),
    "all names imported, and the constants are there already": (
        'from devices import Motor\n\nBOW = "bowThruster"\n',
        "from devices import Motor\n\nBOW = Motor.BOW_THRUSTER\n",
        "from names import *\nboat.motor(BOW)\n",
    ),
    "followed and put together": (
        'BOW = "bowThruster"\nFRONT = BOW\nEND = "Thruster"\n',
        'from devices import Motor\n\nBOW = Motor.BOW_THRUSTER\nFRONT = BOW\nEND = "Thruster"\n',
        "import names\nboat.motor(names.FRONT)\nboat.motor('stern' + names.END)\n",
    ),
}


def built(root: Path, files: Mapping[str, str]) -> Path:
    """Lay files and build the outputs."""
    workspace = open_workspace(lay(root, dict(files)))
    build.write(build.plan(workspace))
    return root


def changed(root: Path, selection: Selection = ALL) -> Fixed:
    """Change names to constants on the disk; a second time changes nothing more."""
    workspace = open_workspace(root)
    done = use_constants(workspace, selection)
    fix.write(workspace, done)
    assert use_constants(open_workspace(root), selection).changes == ()
    return done


def ran(program: Path) -> str:
    """Run a program and return what it printed."""
    done = subprocess.run(
        [sys.executable, program], capture_output=True, text=True, check=False, timeout=30
    )
    assert done.returncode == 0, done.stderr
    return done.stdout


@pytest.mark.parametrize("case", PYTHON)
def test_python_names_made_by_hand_are_filled_from_the_constants(boats: Path, case: str):
    before, after, program = PYTHON[case]
    files = {"boatlib.py": BOAT, "names.py": before, "main.py": RUN + program}
    built(boats, {f"code/heron/{name}": text for name, text in files.items()})
    said = ran(boats / "code/heron/main.py")
    assert "motor 'bowThruster'" in said or "Names.BOW" in said
    done = changed(boats)
    assert done.refused == ()
    assert (boats / "code/heron/names.py").read_bytes().decode() == after
    assert (boats / "code/heron/main.py").read_text() == RUN + program
    assert ran(boats / "code/heron/main.py") == said


def test_the_types_of_python_names_stay_right(boats: Path):
    """mypy --strict takes the names before and after, and a servo for a motor neither time."""
    kinds = "def motor(name: str) -> None:\n    print(name)\n\n\n"
    files = {"code/heron/main.py": kinds + "import names\nmotor(names.BOW)\nmotor(names.RUDDER)\n"}
    names = 'from typing import Final\n\nBOW: Final = "bowThruster"\nRUDDER: str = "rudder"\n'
    names += 'BOTH: tuple[str, ...] = ("bowThruster", "rudder")\n'
    files |= {"code/heron/names.py": names}
    files |= {"namegen.yaml": FILES["namegen.yaml"].replace(", kind: motor}", "}")}
    built(boats, files)
    for _ in ("before", "after"):
        mypy = [sys.executable, "-m", "mypy", "--strict", "main.py", "names.py", "devices.py"]
        done = subprocess.run(
            mypy, cwd=boats / "code/heron", capture_output=True, text=True, check=False
        )
        assert done.returncode == 0, done.stdout
        changed(boats)
    assert "RUDDER: str = Servo.RUDDER" in (boats / "code/heron/names.py").read_text()


@pytest.mark.parametrize(
    ("names", "program"),
    [
        ('NAMES = {"bow": "bowThruster"}\n', "boat.motor(names.NAMES['bow'])\n"),
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


@pytest.mark.parametrize(
    ("own", "added"),
    [
        ("from .other import SPEED\n", "from .devices import Motor\n"),
        ("from club.other import SPEED\n", "from club.devices import Motor\n"),
        ("", "from club.devices import Motor\n"),
    ],
)
def test_a_package_imports_its_constants_as_a_member(boats: Path, own: str, added: str):
    settings = FILES["namegen.yaml"].replace("{robot}/devices.py", "{robot}/club/devices.py")
    names = {
        "__init__.py": "",
        "other.py": "SPEED = 1\n",
        "names.py": f'{own}BOW = "bowThruster"\n',
    }
    files = {f"code/heron/club/{name}": text for name, text in names.items()}
    program = RUN + "from club.names import BOW\nboat.motor(BOW)\n"
    files |= {"code/heron/boatlib.py": BOAT, "code/heron/main.py": program}
    built(boats, files | {"namegen.yaml": settings})
    said = ran(boats / "code/heron/main.py")
    assert changed(boats).refused == ()
    text = (boats / "code/heron/club/names.py").read_text()
    assert added in text and text.endswith("BOW = Motor.BOW_THRUSTER\n")
    assert ran(boats / "code/heron/main.py") == said


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
