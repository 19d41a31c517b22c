"""What is said of a Kotlin name holds when the program runs.

Checked against kotlinc: files are put together at random, from a fixed seed, of properties,
objects, enums, templates, lists, lambdas, branches and functions; all are compiled in one go and
run with a `motor` that notes what it is given. A look-up of which every text is said to be known
must get no other.
"""

from __future__ import annotations

import random
import re
import subprocess
from collections import defaultdict
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from namegen.model.facts import LookupSite
from tests.languages.holding import known_of

pytestmark = pytest.mark.xdist_group("kotlinc")  # one worker, so that one compiles at a time
FILES = 40
MAIN = """\
package start

var turn = 0

fun flag(): Boolean = turn++ % 2 == 0

fun maybe(text: String): String? = if (flag()) text else null

fun motor(name: String, at: String) = println("$at $name")

fun tried(run: () -> Unit) {
    try { run() } catch (_: ConcurrentModificationException) { }  // a list changed in its own loop
}

fun main() {
RUNS}
"""
OBJECTS = """\
object Names {
    const val ONE = FIRST
    var two = SECOND
    val three: String get() = ONE
}
enum class E(val id: String) { X("ex"), Y("ey") }
open class Part(val own: String = "own") { var name = FIRST; open val kind = "part" }
class Other : Part() { override val kind = "other" }
fun Part.renamed() { name = "renamed" }
open class Deck(val where: String = FIRST) { var name = SECOND; val side = FIRST; CHANGED }
class Upper : Deck() { fun rename() { UPPER } }
const val side = "outside"
fun on(deck: Deck, run: Deck.() -> Unit) = deck.run()
fun <T> T.onto(run: T.() -> Unit) = run()
fun made() = Deck()
class Lamp(val all: MutableList<String>) {
    var name = "lamp"
    constructor() : this(mutableListOf("l"))
}
fun fill(all: MutableList<String>, text: String) { all[0] = text }
fun same(all: MutableList<String>) = all
fun read(all: List<String>) = all.size
"""
WITHIN = ["with(made()) {", "made().apply {", "deck.onto {"]
WITHIN += ["with(Deck()) {", "with(deck) {", "deck.apply {", "deck.run {", "on(deck) {"]
"""Lambdas in which the names of a deck hide those outside of it, which no local name bears."""


class Maker:
    """Makes one file at random; each look-up has a line of its own, which it names."""

    def __init__(self, seed: int) -> None:
        self.random = random.Random(seed)
        self.name = f"p{seed}"
        self.texts = ["Names.ONE", "Names.two", "Names.three", "E.X.id", "E.Y.id"]
        self.texts += ["part.name", "part.kind", "part.own", "called()"]
        self.variables = ["Names.two", "part.name"]
        self.lists: list[str] = []
        self.mutable: list[str] = []
        self.count = self.lookups = 0

    def fresh(self) -> str:
        self.count += 1
        return f"v{self.count}"

    def text(self, deep: int = 2, without: str = "") -> str:  # noqa: PLR0911 - one per form
        """Return an expression that is a text."""
        sorts = ["literal", "literal", "name", "name", "name", "sum", "choice", "template", "maybe"]
        sort = self.random.choice([*sorts, "when", "element"]) if deep else "literal"
        inner = [self.text(deep - 1, without) for _ in range(2)] if deep else []
        names = [name for name in self.texts if name != without]
        match sort:
            case "sum":
                return f"({inner[0]} + {inner[1]})"
            case "choice":
                return f"(if (flag()) {inner[0]} else {inner[1]})"
            case "when":
                return f"when {{ flag() -> {inner[0]}; else -> {inner[1]} }}"
            case "maybe":
                return f"(maybe({inner[0]}) ?: {inner[1]})"
            case "template" if names:
                return f'"${{{self.random.choice(names)}}}x"'
            case "element" if self.lists:
                return f"{self.random.choice(self.lists)}[0]"
            case "name" if names:
                return self.random.choice(names)
        return self.random.choice(['"a"', '"b"', '"c"'])

    def values(self) -> str:
        return ", ".join(self.text() for _ in range(self.random.randint(1, 3)))

    def declared(self, name: str = "") -> str:
        """Return the declaration of a text or a list, which can be used from there on."""
        hidden, name = bool(name), name or self.fresh()
        sort = self.random.choice(["val", "val", "var", "lazy", "list", "mutable", "array"])
        if sort in {"list", "mutable", "array"} and not hidden:
            of = {"list": "listOf", "mutable": "mutableListOf", "array": "arrayOf"}[sort]
            line = f"val {name} = {of}({self.values()})"
            self.lists.append(name)
            self.mutable += [name] if sort == "mutable" else []
            return line
        value = self.text(without=name)
        if name in self.variables:
            self.variables.remove(name)
        self.texts.append(name)
        if sort == "lazy":
            return f"val {name} by lazy {{ {value} }}"
        self.variables += [name] if sort == "var" else []
        return f"{'var' if sort == 'var' else 'val'} {name} = {value}"

    def block(self, deep: int, taken: str = "") -> Iterator[str]:
        """Yield statements; what they declare is not seen behind them, ``taken`` not hidden."""
        known = [list(one) for one in (self.texts, self.variables, self.lists, self.mutable)]
        mine = {taken}
        for _ in range(self.random.randint(1, 4)):
            hidden = [one for one in known[0] if re.fullmatch(r"v\d+", one) and one not in mine]
            if hidden and self.random.random() < 0.15:
                name = self.random.choice(hidden)
                mine.add(name)
                yield self.declared(name)
            else:
                yield from self.statement(deep)
        self.texts, self.variables, self.lists, self.mutable = known

    def statement(self, deep: int) -> Iterator[str]:
        sorts = ["look-up", "look-up", "look-up", "declared", "changed", "each", "if", "lambda"]
        sorts += ["deck"]
        sort = self.random.choice(sorts)
        if sort == "declared":
            yield self.declared()
        elif sort == "changed":
            yield self.changed()
        elif sort == "each" and deep:
            yield from self.each(deep)
        elif sort == "if" and deep:
            yield from ("if (flag()) {", *self.block(deep - 1), "}")
        elif sort == "lambda" and deep:
            begin = self.random.choice(["run {", "part.apply {", "with(part) {", "part.let { _ ->"])
            yield from (begin, *self.block(deep - 1), "}")
        elif sort == "deck" and deep:
            yield from self.deck(deep)
        else:
            self.lookups += 1
            yield f'motor({self.text()}, "{self.name}:{self.lookups}")'

    def deck(self, deep: int) -> Iterator[str]:
        """Yield what is done with a deck; its names hide those outside that no function has."""
        names = ["side", "where"]
        self.texts += names
        self.lookups += 1
        own = self.random.choice(["side", "where", "name"])
        yield from (self.random.choice(WITHIN), f'motor(this.{own}, "{self.name}:{self.lookups}")')
        yield from (*self.block(deep - 1), "}")
        self.texts = [one for one in self.texts if one not in names]

    def each(self, deep: int) -> Iterator[str]:
        """Yield a loop over a list."""
        over = self.random.choice([f"listOf({self.values()})", *self.lists])
        name = self.fresh() if self.random.random() < 0.7 else "it"
        begin = f"for ({name} in {over}) {{" if name != "it" else f"{over}.forEach {{"
        if name != "it" and self.random.random() < 0.3:
            begin = f"{over}.forEach {{ {name} ->"
        if name == "it" and "it" in self.texts:
            name = ""  # an inner one hides the outer one, and a run between them both
        self.texts += [name] if name else []
        yield from (begin, *self.block(deep - 1, name), "}")
        if name:
            self.texts.remove(name)

    def changed(self) -> str:
        """Return a statement that changes a text or a list."""
        variable, text = self.random.choice(self.variables), self.text()
        forms = ["{0} = {1}", "{0} += {1}", "run {{ {0} = {1} }}", "part.apply {{ name = {1} }}"]
        forms += ["with(part) {{ this.name = {1} }}", "part.renamed()"]
        forms += ["(deck as? Upper)?.rename()", "Upper().rename()"]
        forms += ["{2}.add({1})", "{2} += {1}", "{2}[0] = {1}"] if self.mutable else []
        forms += (
            ["val {3} = {2}; {3}.add({1})", "{2}.also {{ it.add({1}) }}"] if self.mutable else []
        )
        forms += ["with({2}) {{ add({1}) }}", "{2}.apply {{ add({1}) }}"] if self.mutable else []
        forms += ["part.name = {1}", "Lamp().name = {1}", "val {3} = Lamp(); {3}.name = {1}"]
        forms += ["fill({2}, {1})", "same({2})[0] = {1}", "read({2})"] if self.mutable else []
        forms += ["val {3} = listOf({2}); {3}[0].add({1})"] if self.mutable else []
        forms += (
            ["Lamp({2}).all[0] = {1}", "mutableListOf({2}[0]).add({1})"] if self.mutable else []
        )
        mutable = self.random.choice(self.mutable) if self.mutable else ""
        return self.random.choice(forms).format(variable, text, mutable, self.fresh())

    def made(self) -> str:
        """Return the file."""
        literals = [self.text(0), self.text(0)]
        objects = OBJECTS.replace("FIRST", literals[0]).replace("SECOND", literals[1])
        changes = ["", "", "fun again() { name = OTHER }", "fun same() { var name = OTHER }"]
        upper = ["", "", "name = OTHER", "this.name = OTHER", "super.name = OTHER"]
        upper += ["var name: String; name = OTHER"]
        for mark, forms in (("CHANGED", changes), ("UPPER", upper)):
            form = self.random.choice(forms).replace("OTHER", self.text(0))
            objects = objects.replace(mark, form)
        deck = self.random.choice(["Deck()", "Upper()", f"Deck({self.text(0)})"])
        part = self.random.choice(["Part()", "Other()", 'Part("mine")'])
        first = [self.declared() for _ in range(self.random.randint(1, 3))]
        body = ["run {", *self.block(2), "}", "run {", *self.block(2), "}"]
        called = self.random.choice(['"a"', "Names.ONE", "E.X.id"])
        lines = [
            *(f"package {self.name}", "import start.*", objects, f"val part = {part}"),
            *(f"val deck = {deck}", *first),
            *("fun run() {", *body, "}", f"fun called() = {called}"),
        ]
        return "\n".join(lines) + "\n"


@pytest.fixture(scope="module")
def files() -> dict[str, str]:
    return {f"{name}/Trip.kt": Maker(seed).made() for seed in range(FILES) for name in [f"p{seed}"]}


@pytest.fixture(scope="module")
def looked_up(
    files: dict[str, str], tool: Callable[[str], str], tmp_path_factory: pytest.TempPathFactory
) -> dict[str, set[str]]:
    """What the files look up when they run, by the mark of each look-up."""
    compiler, java, folder = tool("kotlinc"), tool("java"), tmp_path_factory.mktemp("kotlin")
    runs = "".join(f"    tried {{ {path.partition('/')[0]}.run() }}\n" for path in files)
    for path, text in {**files, "Main.kt": MAIN.replace("RUNS", runs)}.items():
        Path(folder, path).parent.mkdir(exist_ok=True)
        Path(folder, path).write_text(text)
    command = [compiler, "-nowarn", *files, "Main.kt", "-include-runtime", "-d", "all.jar"]
    subprocess.run(command, cwd=folder, check=True, capture_output=True)
    run = [java, "-cp", "all.jar", "start.MainKt"]
    done = subprocess.run(run, cwd=folder, capture_output=True, text=True, check=True)
    found: dict[str, set[str]] = defaultdict(set)
    for line in done.stdout.splitlines():
        at, _, text = line.partition(" ")
        found[at].add(text)
    return found


def mark_of(path: str, text: str, site: LookupSite) -> str:
    """Return the mark that a look-up names as its second text."""
    whole = text.encode()[site.span.start : site.span.end].decode()
    return whole.rpartition('"')[0].rpartition('"')[2]


def test_a_text_that_is_known_is_the_one_that_the_program_gets(
    files: dict[str, str], looked_up: dict[str, set[str]]
):
    known = known_of(files, looked_up, mark_of)
    assert known > 0.4 * len(looked_up) > FILES / 2
