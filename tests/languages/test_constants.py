"""References to constants, and where their imports go: cases before and after."""

from __future__ import annotations

import ast
import re
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
KOTLIN_TEXT = b"package club.boats\nobject HeronDevices {}\n"
KOTLIN = {
    "same package": (
        'package club.boats\nval x = motor("bow")\n',
        "package club.boats\nval x = motor(HeronDevices.Motor.BOW)\n",
    ),
    "in order": (
        'package a\n\nimport a.b\nimport java.util.Date\nval x = motor("bow")\n',
        "package a\n\nimport a.b\nimport club.boats.HeronDevices\nimport java.util.Date\n"
        "val x = motor(HeronDevices.Motor.BOW)\n",
    ),
    "no imports": (
        'package a\nval x = motor("bow") // bow\n',
        "package a\n\nimport club.boats.HeronDevices\n"
        "val x = motor(HeronDevices.Motor.BOW) // bow\n",
    ),
    "below what is about the file": (
        '@file:Suppress("unused")\nval x = motor("bow")\n',
        '@file:Suppress("unused")\n\nimport club.boats.HeronDevices\n'
        "val x = motor(HeronDevices.Motor.BOW)\n",
    ),
    "nothing above": (
        'val x = motor("""bow""")\n',
        "import club.boats.HeronDevices\n\nval x = motor(HeronDevices.Motor.BOW)\n",
    ),
    "another name": (
        'package a\nimport club.boats.HeronDevices as H\nval x = motor("bow")\n',
        "package a\nimport club.boats.HeronDevices as H\nval x = motor(H.Motor.BOW)\n",
    ),
    "all of the package": (
        'package a\nimport club.boats.*\nval x = motor("bow")\n',
        "package a\nimport club.boats.*\nval x = motor(HeronDevices.Motor.BOW)\n",
    ),
    "line ends stay": (
        'package a\r\n\r\nimport a.b\r\n\r\nval x = motor("bow")\r\n',
        "package a\r\n\r\nimport a.b\r\nimport club.boats.HeronDevices\r\n\r\n"
        "val x = motor(HeronDevices.Motor.BOW)\r\n",
    ),
    "in a constant and in a text": (
        'package a\nconst val BOW = "bow"\nval x = motor("${"bow"}")\n',
        "package a\n\nimport club.boats.HeronDevices\nconst val BOW = HeronDevices.Motor.BOW\n"
        'val x = motor("${HeronDevices.Motor.BOW}")\n',
    ),
    "the name is taken": (
        'package a\nclass HeronDevices { val x = motor("bow") }\n',
        "package a\nclass HeronDevices { val x = motor(club.boats.HeronDevices.Motor.BOW) }\n",
    ),
    "the name is taken by a type between < and >": (
        'package a\nimport a.deck.*\nval s = shelf<HeronDevices>()\nval x = motor("bow")\n',
        "package a\nimport a.deck.*\nval s = shelf<HeronDevices>()\n"
        "val x = motor(club.boats.HeronDevices.Motor.BOW)\n",
    ),
    "a comment and a text take no name": (
        '// HeronDevices of the club\npackage a\nval x = motor("bow") // club\nval y = "club"\n',
        "// HeronDevices of the club\npackage a\n\nimport club.boats.HeronDevices\n"
        'val x = motor(HeronDevices.Motor.BOW) // club\nval y = "club"\n',
    ),
    "a comment and a text hide no package": (
        '// the club\npackage a\nclass HeronDevices { val x = motor("bow") }\nval y = "club"\n',
        "// the club\npackage a\nclass HeronDevices "
        '{ val x = motor(club.boats.HeronDevices.Motor.BOW) }\nval y = "club"\n',
    ),
}


def uses(code: bytes, words: tuple[str, ...], file: str, text: bytes) -> list[ConstantUse]:
    found, at = [], code.find(b"bow")
    while at >= 0:
        if code[at - 1 : at] in (b"'", b'"'):
            opening = code[at - 3 : at] if code[at - 3 : at] == b'"""' else code[at - 1 : at]
            literal = Text("bow", Span(at, at + 3), opening.decode())
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


@pytest.mark.parametrize("case", KOTLIN)
def test_kotlin(case: str):
    before, after = (text.encode() for text in KOTLIN[case])
    words = ("HeronDevices", "Motor", "BOW")
    made = uses(before, words, "src/club/boats/HeronDevices.kt", KOTLIN_TEXT)
    done = languages.named("kotlin").use_constants(before, made, Surroundings("src/a/A.kt"))
    assert done.decode() == after.decode()


@pytest.mark.xdist_group("kotlinc")
def test_kotlin_with_the_imports_compiles(tool, tmp_path: Path):
    """Each case in packages of its own, so that kotlinc has to start but once."""
    for number, (_, after) in enumerate(KOTLIN.values()):
        made = (
            'package club.boats\nobject HeronDevices { object Motor { const val BOW = "bow" } }\n'
        )
        motor = "package a\nval b = 1\nfun motor(name: String) = name.length\n"
        deck = "package a.deck\nopen class Part\nclass HeronDevices : Part()\n"
        deck += "fun <T : Part> shelf() = listOf<T>()\n"
        text = after.replace("motor(", "a.motor(")
        if not re.search(r"^package", text, re.M):
            text = re.sub(r"^(?=import|val)", "package a.c\n", text, count=1, flags=re.M)
        for name, one in {"Made": made, "Motor": motor, "Deck": deck, "Case": text}.items():
            apart = re.sub(r"\b(club\.boats|a)\b(?=[.\r\n])", rf"n{number}.\1", one)
            (tmp_path / f"{name}{number}.kt").write_bytes(apart.encode())
    command = [tool("kotlinc"), *tmp_path.glob("*.kt"), "-d", tmp_path / "out"]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr


@pytest.mark.parametrize(
    ("code", "why"),
    [
        ("val HeronDevices = 1\nval club = motor('bow')\n", "HeronDevices and club"),
        ('val x = motor("bow"\n', "not valid Kotlin"),
        ('val x = motor("bow$y")\n', "not one literal"),
    ],
)
def test_what_cannot_be_named_in_kotlin_is_refused(code: str, why: str):
    text = code.replace("'", '"').encode()
    at = text.find(b"bow")
    literal = Text("bow", Span(at, at + 3), '"')
    words = ("HeronDevices", "Motor", "BOW")
    made = [ConstantUse(literal, words, "src/club/boats/HeronDevices.kt", KOTLIN_TEXT)]
    with pytest.raises(UnusableInput, match=why):
        languages.named("kotlin").use_constants(text, made, Surroundings("src/a/A.kt"))


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


CPP_TEXT = b"""#pragma once
namespace heron { struct Motor { static constexpr char kBow[] = "bow"; }; }
"""
CPP = {
    "first include": (
        'Motor m = motor("bow");\n',
        '#include "heron.h"\n\nMotor m = motor(heron::Motor::kBow);\n',
    ),
    "among the others, the file's own header first": (
        '#include "main.h"\n\n#include <array>\n\n#include "a.h"\n#include "z.h"\n\n'
        'Motor m = motor("bow"), n = motor(R"(bow)");\n',
        '#include "main.h"\n\n#include <array>\n\n#include "a.h"\n#include "heron.h"\n'
        '#include "z.h"\n\nMotor m = motor(heron::Motor::kBow), n = motor(heron::Motor::kBow);\n',
    ),
    "behind the others": (
        '#include "a.h"  // ours\nMotor m = motor("bow");\n',
        '#include "a.h"  // ours\n#include "heron.h"\nMotor m = motor(heron::Motor::kBow);\n',
    ),
    "behind the library's": (
        '#include <array>\n\nMotor m = motor("bow");\n',
        '#include <array>\n\n#include "heron.h"\n\nMotor m = motor(heron::Motor::kBow);\n',
    ),
    "included already": (
        '#include <heron.h>\nMotor m = motor("bow");\n',
        "#include <heron.h>\nMotor m = motor(heron::Motor::kBow);\n",
    ),
    "a header": (
        '#pragma once\n\ninline Motor m = motor("bow");\n',
        '#pragma once\n\n#include "heron.h"\n\ninline Motor m = motor(heron::Motor::kBow);\n',
    ),
    "a header with a guard": (
        '// Ours.\n#ifndef A_H\n#define A_H\ninline Motor m = motor("bow");\n#endif\n',
        '// Ours.\n#ifndef A_H\n#define A_H\n\n#include "heron.h"\n\n'
        "inline Motor m = motor(heron::Motor::kBow);\n#endif\n",
    ),
    "a condition": (
        '#ifdef POND\n#include "pond.h"\n#endif\nMotor m = motor("bow");\n',
        '#include "heron.h"\n\n#ifdef POND\n#include "pond.h"\n#endif\n'
        "Motor m = motor(heron::Motor::kBow);\n",
    ),
    "a comment at the head": (
        '// Heron\'s program.\n\n/* Starts */\nMotor m = motor("bow");\n',
        '// Heron\'s program.\n\n#include "heron.h"\n\n/* Starts */\n'
        "Motor m = motor(heron::Motor::kBow);\n",
    ),
    "a comment that goes on": (
        '#include "a.h" /* a\n b */\nMotor m = motor("bow");\n',
        '#include "heron.h"\n#include "a.h" /* a\n b */\nMotor m = motor(heron::Motor::kBow);\n',
    ),
    "other line ends": (
        '#include "a.h"\r\nMotor m = motor("bow");\r\n',
        '#include "a.h"\r\n#include "heron.h"\r\nMotor m = motor(heron::Motor::kBow);\r\n',
    ),
    "no line end": (
        '#include "a.h"\nMotor m = motor("bow");',
        '#include "a.h"\n#include "heron.h"\nMotor m = motor(heron::Motor::kBow);',
    ),
    "the name is taken": (
        'namespace a { int heron; Motor m = motor(1 ? "bow":"bow"); }\n',
        '#include "heron.h"\n\nnamespace a { int heron;'
        " Motor m = motor(1 ? ::heron::Motor::kBow: ::heron::Motor::kBow); }\n",
    ),
    "names made by hand": (
        'constexpr const char* kBow = "bow";\nconst char* const kAll[] = {"bow", kBow};\n'
        'const std::string kThe = std::string("bow") + "x";\n',
        '#include "heron.h"\n\nconstexpr const char* kBow = heron::Motor::kBow;\n'
        "const char* const kAll[] = {heron::Motor::kBow, kBow};\n"
        'const std::string kThe = std::string(heron::Motor::kBow) + "x";\n',
    ),
}
CPP_LIBRARY = "#include <string>\nstruct Motor {}; inline Motor motor(const char*) { return {}; }\n"
CPP_WORDS = ("heron", "Motor", "kBow")


def cpp_uses(code: bytes) -> list[ConstantUse]:
    found = uses(code, CPP_WORDS, "src/heron.h", CPP_TEXT)
    at = code.find(b'R"(bow)"')
    raw = [ConstantUse(Text("bow", Span(at + 3, at + 6), 'R"('), CPP_WORDS, "src/heron.h", b"")]
    return found + raw if at >= 0 else found


@pytest.mark.parametrize("case", CPP)
def test_cpp(case: str, tool, tmp_path: Path):
    """The result compiles with all warnings as errors, says g++."""
    before, after = (text.encode() for text in CPP[case])
    made = cpp_uses(before)
    here = Surroundings("src/main.cpp", ("src", ""))
    assert languages.named("cpp").use_constants(before, made, here).decode() == after.decode()
    own = {"heron.h": CPP_TEXT.decode(), "main.cpp": after.decode(), "lib.h": CPP_LIBRARY}
    for path, text in {**own, **dict.fromkeys(["a.h", "main.h", "z.h"], "#pragma once\n")}.items():
        (tmp_path / path).write_bytes(text.encode())
    flags = ["-std=c++17", "-Wall", "-Wextra", "-Wpedantic", "-Werror", "-Wno-unused"]
    command = [tool("g++"), *flags, "-fsyntax-only", "-I.", "-include", "lib.h", "-x", "c++"]
    (tmp_path / "all.cpp").write_text('#include "main.cpp"\n')
    done = subprocess.run([*command, "all.cpp"], cwd=tmp_path, capture_output=True, check=False)
    assert done.returncode == 0, done.stderr.decode()


@pytest.mark.parametrize(
    ("code", "why"),
    [
        ('constexpr char kBow[] = "bow";', "array of letters"),
        ('struct A { static constexpr char kBow[] = "bow"; };', "array of letters"),
        ('const char kAll[][9] = {"bow"};', "array of letters"),
        ('#define BOW "bow"\n', "macro"),
        ('auto m = motor("bow" "x");', "one literal"),
        ('auto m = motor("bow"s);', "one literal"),
        ('auto m = motor("bow" SIDE);', "one literal"),
        ('auto m = motor(F("bow"));', "macro"),
        ('auto m = MOTOR("bow");', "macro"),
        ('auto m = motor<"bow">();', "template"),
    ],
)
def test_what_needs_the_text_itself_in_cpp_is_left(code: str, why: str):
    made = cpp_uses(code.encode())
    with pytest.raises(UnusableInput, match=why):
        languages.named("cpp").use_constants(code.encode(), made, Surroundings("src/main.cpp"))


def test_a_header_in_another_folder_is_included_from_where_the_code_lies():
    code = b'Motor m = motor("bow");\n'
    made = uses(code, CPP_WORDS, "code/heron/heron.h", CPP_TEXT)
    here = Surroundings("code/heron/src/main.cpp", ("code/heron", ""))
    done = languages.named("cpp").use_constants(code, made, here)
    assert done.startswith(b'#include "../heron.h"\n')
    known = b'#include "heron.h"\n' + code
    made = uses(known, CPP_WORDS, "code/heron/heron.h", CPP_TEXT)
    assert languages.named("cpp").use_constants(known, made, here).count(b"#include") == 1
