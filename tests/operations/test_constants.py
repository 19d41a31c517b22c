"""Names made by hand are filled from the generated constants, and the code does the same.

Checked from outside: CPython runs each program before and after against a stand-in boat, and
mypy takes the types. Java is in ``test_java_constants.py``.
"""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from tests.operations.changing import built, changed
from tests.operations.conftest import FILES

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
    "table": (
        'NAMES = {"bow": "bowThruster", "aft": "sternThruster"}\nSPEED = {"bowThruster": 1}\n',
        "from devices import Motor\n\n"
        'NAMES = {"bow": Motor.BOW_THRUSTER, "aft": Motor.STERN_THRUSTER}\n'
        'SPEED = {"bowThruster": 1}\n',
        "import names\nboat.motor(names.NAMES['bow'])\nboat.motor(names.NAMES['aft'])\n"
        "for name, speed in names.SPEED.items():\n    boat.motor(name)\n",
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


TYPED = """\
from enum import Enum
from typing import Final

BOW: Final = "bowThruster"
RUDDER: str = "rudder"
BOTH: tuple[str, ...] = ("bowThruster", "rudder")


class Names(str, Enum):
    STERN = "sternThruster"
"""
TYPED_USES = """\
import names


def motor(name: str) -> None:
    print(name)


motor(names.BOW)
motor(names.RUDDER)
motor(names.Names.STERN)
for name in names.BOTH:
    print(name)
"""


def test_mypy_takes_the_types_of_the_names_before_and_after(boats: Path):
    settings = FILES["namegen.yaml"].replace(", kind: motor}", "}")
    files = {"code/heron/main.py": TYPED_USES, "code/heron/names.py": TYPED}
    built(boats, files | {"namegen.yaml": settings})
    for _ in ("before", "after"):
        mypy = [sys.executable, "-m", "mypy", "--strict", "main.py", "names.py", "devices.py"]
        done = subprocess.run(
            mypy, cwd=boats / "code/heron", capture_output=True, text=True, check=False
        )
        assert done.returncode == 0, done.stdout
        changed(boats)
    text = (boats / "code/heron/names.py").read_text()
    assert "RUDDER: str = Servo.RUDDER\n" in text and "    STERN = Motor.STERN_THRUSTER\n" in text


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
