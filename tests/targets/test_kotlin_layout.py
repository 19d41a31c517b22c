"""The layout of generated Kotlin, held against published rules.

No formatter for Kotlin is at hand, so each rule is asked for by itself. They are those of Kotlin's
coding conventions (kotlinlang.org/docs/coding-conventions.html: source file organization, naming
rules, formatting), and for the width of 100 columns and imports that name everything those of the
Kotlin style guide of Android (developer.android.com/kotlin/style-guide). What the compiler itself
would warn of is asked of kotlinc in test_kotlin_bindings.py and test_kotlin_constants.py.
"""

from __future__ import annotations

import re

import pytest
from msgspec.structs import replace

from targets.boats import HERON, robot
from targets.machines import BOATS
from targets.standins import KOTLIN
from targets.test_java_layout import LADDER

TEXT = re.compile(r'"(?:[^"\\\n]|\\.)*"')
COMMENT = re.compile(r"^\s*(/\*\*|\*|//).*")
LONG_NAME = re.compile(r"\w{30,}")
WIDTH = 100
IMPORTS = (*KOTLIN["imports"], "java.util.UUID", "kotlin.math.abs", "zoo.Keeper")


def faults(source: str) -> list[str]:
    """Return each line that breaks a rule, with the rule in front."""
    found = []
    if not source.endswith("\n") or source.endswith("\n\n"):
        found.append("one line end at the end of the file")
    lines = source.split("\n")[:-1]
    for before, line, after in zip(["{", *lines], lines, [*lines[1:], ""], strict=False):
        code = "" if COMMENT.match(line) else TEXT.sub('""', line)
        depth = len(line) - len(line.lstrip(" "))
        rules = {
            "no tabs": "\t" in line,
            "no blanks at the end": line != line.rstrip(),
            "four blanks a level": depth % 4 != int(line.lstrip(" ").startswith("*")),
            "no semicolon at the end": code.endswith(";"),
            "no empty line behind another": line == before == "",
            "no empty line at the edges of a block": line == ""
            and (before.endswith("{") or after.strip() == "}"),
            "an opening brace stands at the end of its line, behind a blank": bool(
                re.search(r"[^ (]\{|^\s*\{", code)
            ),
            "a colon has no blank before it, except before a base class": bool(
                re.search(r" :", re.sub(r"(class \w+.*\)|<T|find) :", "", code))
            ),
            "a colon and a comma have a blank after them": bool(
                re.search(r"[^:]:[^: \n]|,[^ \n]", code)
            ),
            "one blank around what joins two values": bool(
                re.search(r"\w(=|->|&&|==)|(=|->|&&|==)\w|[a-z]\+[a-z]", code)
            ),
            "imports name everything": line.startswith("import ") and line.endswith("*"),
            "constants are in capitals": bool(re.search(r"const val (?![A-Z][A-Z0-9_]* =)", code)),
            "100 columns, where texts and names leave room": len(LONG_NAME.sub("", code)) > WIDTH,
            "comments keep to 100 columns, where words leave room": bool(
                COMMENT.match(line) and len(re.sub(r"\S{30,}", "", line)) > WIDTH
            ),
        }
        found += [f"{rule}: {line}" for rule, broken in rules.items() if broken]
    return found


@pytest.mark.parametrize(
    ("target", "options"),
    [("kotlin-constants", {"former_names": True}), ("kotlin-bindings", KOTLIN)],
    ids=["constants", "bindings"],
)
def test_the_rules_are_kept(make, hostile_robots, target, options):
    bare = replace(HERON, setups={}, selected=None)
    for boat in (*BOATS.values(), bare, robot(), LADDER, *hostile_robots):
        assert faults(make(target, boat, "Boat.kt", **options)) == []


def test_imports_stand_in_the_order_of_kotlins_own_editor(make):
    """Lexicographic, those of java, javax and kotlin at the end: ktlint's default order too."""
    text = make("kotlin-bindings", path="Boat.kt", **{**KOTLIN, "imports": IMPORTS})
    names = re.findall(r"^import (\S+)$", text, re.M)
    assert names == [*sorted(KOTLIN["imports"]), "zoo.Keeper", "java.util.UUID", "kotlin.math.abs"]


@pytest.mark.parametrize(
    ("right", "wrong", "rule"),
    [
        ("        const val ROBOT", "       const val ROBOT", "four blanks a level"),
        ("    private class Search {\n", "    private class Search {\n\n", "no empty line at the"),
        ("private class Search {", "private class Search{", "an opening brace"),
        ("val missing = ", "val missing= ", "one blank around"),
        ("const val SETUP", "const val setup", "constants are in capitals"),
        ("val rudder: Hinge", "val rudder : Hinge", "a colon has no blank"),
        ("val rudder: Hinge", "val rudder:Hinge", "a colon and a comma"),
        ("import club.boatlib.Boat\n", "import club.boatlib.*\n", "imports name everything"),
        ("val search = Search()\n", "val search = Search() \n", "no blanks at the end"),
        ("    return", f"    return{' 1 +' * 20}", "100 columns"),
        ("/** What was found", f"/** {'It ' * 30}", "comments keep to 100 columns"),
    ],
)
def test_a_rule_that_is_broken_is_found(make, right, wrong, rule):
    text = make("kotlin-bindings", path="Boat.kt", **KOTLIN)
    assert right in text
    (fault,) = faults(text.replace(right, wrong, 1))
    assert fault.startswith(rule)
