"""What is said of a Java name holds when the program runs.

Checked against the Java compiler and virtual machine: classes are put together at random, from
a fixed seed, of constants, fields, arrays, loops, methods and enums; all are compiled and run at
once with a `motor` that notes what it is given. A look-up of which every text is said to be known
must get no other.
"""

from __future__ import annotations

import random
import subprocess
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from tests.languages.holding import known_of, line_of, noted_lines

CLASSES = 300
MAIN = """\
import java.util.*;

class Main {
  static int turn = 0;

  static boolean flag() {
    return turn++ % 2 == 0;
  }

  static void motor(String name) {
    StackTraceElement at = Thread.currentThread().getStackTrace()[2];
    System.out.println(at.getFileName() + " " + at.getLineNumber() + " " + name);
  }

  public static void main(String[] arguments) {
RUNS  }
}
"""
ENUM = """\
  enum E {
    X("ex"), Y("ey");
    final String id;
    E(String id) { KEPT }
    String id() { return id; }
  }
"""
KEPT = ["this.id = id;", "this.id = id;", "this.id = id;", 'id = id + "x"; this.id = id;']
METHODS = """\
  static void fill(String[] all, String text) { all[0] = text; }
  static String[] same(String[] all) { return all; }
  static int read(String[] all) { int n = 0; for (String one : all) n += one.length(); return n; }
  static class Kept { final String own; Kept(String own) { this.own = own; } }
  static class Lamp { String name; String[] all; Lamp(String[] all) { this.all = all; } }
"""
PARTS = """\
  static class Part {
    String name = FIRST;
    void tell() {
      Main.motor(name);
    }
    void tellAll() {
      Part own = new Part() {
        void tell() {
          Main.motor(name);
          Main.motor(this.name);
        }
      };
      own.tell();
    }
  }
  static class Other extends Part {
    void rename(Part other) {
      CHANGE
    }
  }
  static Part part = new Other();
"""
CHANGES = ["", "", "", "name = TEXT;", "this.name = TEXT;", "super.name = TEXT;"]
CHANGES += ["other.name = TEXT;", "String name; name = TEXT;", "new Lamp(null).name = TEXT;"]
CHANGES += ["Lamp lamp = new Lamp(null); lamp.name = TEXT;", "((Other) other).name = TEXT;"]


class Maker:
    """Makes one class at random; each look-up has a line of its own."""

    def __init__(self, seed: int) -> None:
        self.random = random.Random(seed)
        self.name = f"P{seed}"
        self.texts = ["E.X.id", "E.Y.id()"]
        self.variables: list[str] = []
        self.arrays: list[str] = []
        self.count = 0

    def fresh(self) -> str:
        self.count += 1
        return f"v{self.count}"

    def text(self, deep: int = 2) -> str:
        """Return an expression that is a text."""
        sorts = ["literal", "literal", "name", "name", "name", "sum", "choice", "element"]
        sort = self.random.choice(sorts) if deep else "literal"
        if sort == "sum":
            return f"{self.text(deep - 1)} + {self.text(deep - 1)}"
        if sort == "choice":
            return f"(Main.flag() ? {self.text(deep - 1)} : {self.text(deep - 1)})"
        if sort == "element" and self.arrays:
            return f"{self.random.choice(self.arrays)}[0]"
        if sort == "name":
            return self.random.choice(self.texts)
        return self.random.choice(['"a"', '"b"', '"c"'])

    def values(self) -> str:
        return ", ".join(self.text() for _ in range(self.random.randint(1, 3)))

    def declared(self, modifiers: str = "") -> str:
        """Return the declaration of a text or an array, which can be used from there on."""
        name, final = self.fresh(), self.random.choice(["final ", ""])
        if self.random.random() < 0.6:
            line = f"{modifiers}{final}String {name} = {self.text()};"
            self.texts.append(f"{self.name}.{name}" if modifiers and final else name)
            self.variables += [] if final else [name]
            return line
        line = f"{modifiers}{final}String[] {name} = {{{self.values()}}};"
        self.arrays.append(name)
        return line

    def block(self, deep: int) -> Iterator[str]:
        """Yield statements; what they declare is not seen behind them."""
        known = list(self.texts), list(self.variables), list(self.arrays)
        for _ in range(self.random.randint(1, 4)):
            yield from self.statement(deep)
        self.texts, self.variables, self.arrays = known

    def statement(self, deep: int) -> Iterator[str]:
        sorts = ["look-up", "look-up", "declared", "assigned", "element", "each", "if", "part"]
        sorts += ["kept"]
        sort = self.random.choice(sorts)
        if sort == "declared":
            yield self.declared()
        elif sort == "assigned" and self.variables:
            how = self.random.choice(["=", "+="])
            yield f"{self.random.choice(self.variables)} {how} {self.text()};"
        elif sort == "element" and self.arrays:
            array, other = self.random.choice(self.arrays), self.fresh()
            forms = ["{0}[0] = {1};", "Arrays.fill({0}, {1});", "String[] {2} = {0};"]
            forms += ["String[] {2} = {0}; {2}[0] = {1};", "Main.motor({0}[0] + {0}.length);"]
            forms += ["fill({0}, {1});", "same({0})[0] = {1};", "read({0});", "({0})[0] = {1};"]
            forms += ["String[][] {2} = {{{0}}}; {2}[0][0] = {1};", "new Lamp({0}).all[0] = {1};"]
            forms += ["String[] {2} = {{{0}[0]}}; {2}[0] = {1};", "fill(new String[1], {0}[0]);"]
            yield self.random.choice(forms).format(array, self.text(), other)
        elif sort == "part":
            forms = ["part.tell();", "part.tellAll();", "((Other) part).rename(part);"]
            yield self.random.choice(forms)
        elif sort == "kept":
            name = self.fresh()
            yield f"Kept {name} = new Kept({self.text()});"
            self.texts.append(f"{name}.own")
        elif sort == "each" and deep:
            name, over = self.fresh(), [f"List.of({self.values()})", *self.arrays]
            yield f"for (String {name} : {self.random.choice(over)}) {{"
            self.texts.append(name)
            yield from self.block(deep - 1)
            self.texts.remove(name)
            yield "}"
        elif sort == "if" and deep:
            yield "if (Main.flag()) {"
            yield from self.block(deep - 1)
            yield "}"
        else:
            yield f"Main.motor({self.text()});"

    def made(self) -> str:
        """Return the class."""
        fields = [self.declared("static ") for _ in range(self.random.randint(1, 4))]
        self.texts.append("called()")
        body = [*self.block(2), *self.block(2)]
        called = self.random.choice(['"a"', *(t for t in self.texts if t.startswith("P"))])
        lines = [
            *("import java.util.*;", "", f"class {self.name} {{"),
            *fields,
            *("static void run() {", *body, "}"),
            f"static String called() {{ return {called}; }}",
        ]
        change = self.random.choice(CHANGES).replace("TEXT", self.text(0))
        parts = PARTS.replace("FIRST", self.text(0)).replace("CHANGE", change)
        enum = ENUM.replace("KEPT", self.random.choice(KEPT))
        return "\n".join(lines) + "\n" + enum + METHODS + parts + "}\n"


@pytest.fixture(scope="module")
def classes() -> dict[str, str]:
    return {f"P{seed}.java": Maker(seed).made() for seed in range(CLASSES)}


@pytest.fixture(scope="module")
def looked_up(
    classes: dict[str, str], tool: Callable[[str], str], tmp_path_factory: pytest.TempPathFactory
) -> dict[tuple[str, int], set[str]]:
    """What the classes look up, by file and line, when they run."""
    javac, java = tool("javac"), tool("java")
    folder = tmp_path_factory.mktemp("java")
    runs = "".join(f"    {name[:-5]}.run();\n" for name in classes)
    for name, text in {**classes, "Main.java": MAIN.replace("RUNS", runs)}.items():
        Path(folder, name).write_text(text)
    subprocess.run([javac, "-nowarn", *classes, "Main.java"], cwd=folder, check=True)
    done = subprocess.run([java, "Main"], cwd=folder, capture_output=True, text=True, check=True)
    return noted_lines(done.stdout)


def test_a_text_that_is_known_is_the_one_that_the_program_gets(
    classes: dict[str, str], looked_up: dict[tuple[str, int], set[str]]
):
    known = known_of(classes, looked_up, line_of)
    assert known > 0.5 * len(looked_up) > CLASSES / 2
