"""References to constants, and where their imports go: cases before and after."""

from __future__ import annotations

import ast
import subprocess
from pathlib import Path

import pytest

from namegen import languages
from namegen.errors import UnusableInput
from namegen.model.facts import ConstantUse, Surroundings, Text
from namegen.model.places import Span

PYTHON = {
    "no imports": (
        'x = boat.motor("bow")\n',
        "from devices import Motor\n\nx = boat.motor(Motor.BOW)\n",
    ),
    "docstring and future": (
        '"""Doc."""\nfrom __future__ import annotations\n\nx = boat.motor("bow")\n',
        '"""Doc."""\nfrom __future__ import annotations\n\nfrom devices import Motor\n\n'
        "x = boat.motor(Motor.BOW)\n",
    ),
    "in order": (
        'import os\n\nfrom boatlib import Boat\nfrom watch import Watch\n\nx = motor("bow")\n',
        "import os\n\nfrom boatlib import Boat\nfrom devices import Motor\n"
        "from watch import Watch\n\nx = motor(Motor.BOW)\n",
    ),
    "after the last of an unordered group": (
        'from watch import Watch\nfrom boatlib import Boat\nx = motor("bow")\n',
        "from watch import Watch\nfrom boatlib import Boat\nfrom devices import Motor\n"
        "x = motor(Motor.BOW)\n",
    ),
    "added to an import": (
        'from devices import Servo\nx = motor("bow")\n',
        "from devices import Motor, Servo\nx = motor(Motor.BOW)\n",
    ),
    "an import with a comment is left alone": (
        'from devices import Servo  # mine\nx = motor("bow")\n',
        "from devices import Servo  # mine\nfrom devices import Motor\nx = motor(Motor.BOW)\n",
    ),
    "imported under another name": (
        "from devices import Motor as M\nx = motor('bow')\n",
        "from devices import Motor as M\nx = motor(M.BOW)\n",
    ),
    "the module is imported": (
        "import devices\nx = motor('bow')\n",
        "import devices\nx = motor(devices.Motor.BOW)\n",
    ),
    "relative": (
        "from .devices import Servo\nx = motor('bow')\n",
        "from .devices import Motor, Servo\nx = motor(Motor.BOW)\n",
    ),
    "the kind's name is taken": (
        "from boatlib import Motor\nx = fitted('bow', Motor)\n",
        "import devices\nfrom boatlib import Motor\nx = fitted(devices.Motor.BOW, Motor)\n",
    ),
    "line ends stay": (
        "import os\r\nx = motor('bow')\r\n",
        "import os\r\nfrom devices import Motor\r\nx = motor(Motor.BOW)\r\n",
    ),
    "an encoding that the text in UTF-8 has no more": (
        "# coding: cp1252\n# \u00c1\nimport os\nx = motor('bow')\n",
        "# coding: cp1252\n# \u00c1\nimport os\nfrom devices import Motor\nx = motor(Motor.BOW)\n",
    ),
    "several, once": (
        "x = [motor('bow'), motor('bow')]\n",
        "from devices import Motor\n\nx = [motor(Motor.BOW), motor(Motor.BOW)]\n",
    ),
}
JAVA_TEXT = b"package club.boats;\npublic final class HeronDevices {}\n"
JAVA = {
    "same package": (
        'package club.boats;\nclass A { Object x = motor("bow"); }\n',
        "package club.boats;\nclass A { Object x = motor(HeronDevices.Motor.BOW); }\n",
    ),
    "in order": (
        'package a;\n\nimport a.B;\nimport java.util.List;\nclass A { Object x = motor("bow"); }\n',
        "package a;\n\nimport a.B;\nimport club.boats.HeronDevices;\nimport java.util.List;\n"
        "class A { Object x = motor(HeronDevices.Motor.BOW); }\n",
    ),
    "no imports": (
        'package a;\nclass A { Object x = motor("bow"); }\n',
        "package a;\n\nimport club.boats.HeronDevices;\n"
        "class A { Object x = motor(HeronDevices.Motor.BOW); }\n",
    ),
    "a comment takes no name": (
        '// not HeronDevices\npackage a;\n\nclass A { Object x = motor("bow"); }\n',
        "// not HeronDevices\npackage a;\n\nimport club.boats.HeronDevices;\n\n"
        "class A { Object x = motor(HeronDevices.Motor.BOW); }\n",
    ),
    "what a comment holds is no import": (
        "/*\nimport a.B;\n*/\npackage a; /*\nimport z.Z;\n*/\n"
        'class A { Object x = motor("bow"); }\n',
        "/*\nimport a.B;\n*/\npackage a;\n\nimport club.boats.HeronDevices;\n /*\nimport z.Z;\n*/\n"
        "class A { Object x = motor(HeronDevices.Motor.BOW); }\n",
    ),
    "all on one line": (
        'package a; class A { Object x = motor("bow"); }',
        "package a;\n\nimport club.boats.HeronDevices;\n"
        " class A { Object x = motor(HeronDevices.Motor.BOW); }",
    ),
    "an import that goes on": (
        'package a\n  .b; import a\n  .B; // mine\nclass A { Object x = motor("bow"); }\n',
        "package a\n  .b; import a\n  .B; // mine\nimport club.boats.HeronDevices;\n"
        "class A { Object x = motor(HeronDevices.Motor.BOW); }\n",
    ),
    "lines that end with CR alone": (
        'package a;\rimport a.B;\rclass A { Object x = motor("bow"); }\r',
        "package a;\rimport a.B;\rimport club.boats.HeronDevices;\r"
        "class A { Object x = motor(HeronDevices.Motor.BOW); }\r",
    ),
    "the name is taken": (
        'package a;\nclass HeronDevices { Object x = motor("bow"); }\n',
        "package a;\nclass HeronDevices { Object x = motor(club.boats.HeronDevices.Motor.BOW); }\n",
    ),
}


def uses(code: bytes, words: tuple[str, ...], file: str, text: bytes) -> list[ConstantUse]:
    found, at = [], code.find(b"bow")
    while at >= 0:
        if code[at - 1 : at] in (b"'", b'"'):
            literal = Text("bow", Span(at, at + 3), code[at - 1 : at].decode())
            found.append(ConstantUse(literal, words, file, text))
        at = code.find(b"bow", at + 1)
    return found


@pytest.mark.parametrize("case", PYTHON)
def test_python(case: str):
    before, after = (text.encode() for text in PYTHON[case])
    language = languages.named("python")
    made = uses(before, ("Motor", "BOW"), "code/heron/devices.py", b"")
    done = language.use_constants(
        before, made, Surroundings("code/heron/main.py", ("code/heron", ""))
    )
    assert done.decode() == after.decode()
    ast.parse(done.decode())


@pytest.mark.parametrize("case", JAVA)
def test_java(case: str):
    before, after = (text.encode() for text in JAVA[case])
    language = languages.named("java")
    words = ("HeronDevices", "Motor", "BOW")
    made = uses(before, words, "src/club/boats/HeronDevices.java", JAVA_TEXT)
    done = language.use_constants(before, made, Surroundings("src/a/A.java", ("src",)))
    assert done.decode() == after.decode()


def test_java_with_the_imports_compiles(tool, tmp_path: Path):
    made = "package club.boats; public class HeronDevices { public static class Motor {"
    made += ' public static final String BOW = "bow"; } }'
    motor = "package a; public class B { public static Object motor(String name) { return 1; } }"
    (tmp_path / "HeronDevices.java").write_text(made)
    (tmp_path / "B.java").write_text(motor)
    for number, (_, after) in enumerate(JAVA.values()):
        if after.startswith("package club.boats"):
            continue  # beside the class itself
        text = after.replace("motor(", "a.B.motor(").replace("java.util.List", "java.util.Map")
        text = text.replace("import z.Z;", "")
        (tmp_path / "A.java").write_bytes(text.encode())
        out = tmp_path / str(number)
        command = [tool("javac"), "-d", str(out), *map(str, tmp_path.glob("*.java"))]
        done = subprocess.run(command, capture_output=True, check=False)
        assert done.returncode == 0, (after, done.stderr.decode())


@pytest.mark.parametrize(
    ("code", "path"),
    [
        ("devices = 1\nMotor = 2\nx = motor('bow')\n", "code/heron/main.py"),
        ("x = motor('bow' 'x')\n", "code/heron/main.py"),
        ("x = motor('bow')\n", "other/main.py"),
        ("x = motor('bow'\n", "code/heron/main.py"),
        (f"x = motor('bow')\ny = {'-' * 100_000}1\n", "code/heron/main.py"),
    ],
)
def test_what_cannot_be_named_is_refused(code: str, path: str):
    made = uses(code.encode(), ("Motor", "BOW"), "code/heron/devices.py", b"")
    with pytest.raises(UnusableInput):
        languages.named("python").use_constants(
            code.encode(), made, Surroundings(path, ("code/heron", ""))
        )


def test_a_java_variable_that_hides_the_package_leaves_no_way(tmp_path, tool):
    """JLS 17, 6.4.2: what may be a variable or a package is the variable; javac says so."""
    code = 'package a;\nclass HeronDevices { int club; Object x = motor("bow"); }\n'
    words = ("HeronDevices", "Motor", "BOW")
    made = uses(code.encode(), words, "src/club/boats/HeronDevices.java", JAVA_TEXT)
    with pytest.raises(UnusableInput, match="HeronDevices and club"):
        languages.named("java").use_constants(code.encode(), made, Surroundings("src/a/A.java"))
    (tmp_path / "A.java").write_text("class A { int java; Object x = java.lang.Math.PI; }")
    javac = [tool("javac"), "-d", str(tmp_path), str(tmp_path / "A.java")]
    assert subprocess.run(javac, capture_output=True, check=False).returncode == 1
