"""What is said of a name holds when the program runs.

Checked against CPython: hypothesis puts programs together from constants, tables, loops,
functions and classes, and they are run with a `motor` that notes what it is given. A look-up
of which every text is said to be known must get no other.
"""

from __future__ import annotations

import sys
from collections import defaultdict
from contextlib import suppress
from dataclasses import dataclass

import hypothesis.strategies as st
from hypothesis import given, settings

from tests.languages.asking import Code

WORDS = st.sampled_from(["'a'", "'b'", "'c'"])
NAMES = st.sampled_from(["M", "N", "T", "U"])
KEYS = st.sampled_from(["'a'", "'b'", "0", "1", "-1"])
PLAIN = st.one_of(WORDS, WORDS, NAMES, st.tuples(NAMES, KEYS).map("{0[0]}[{0[1]}]".format))


def listed(parts: st.SearchStrategy[str]) -> st.SearchStrategy[str]:
    """Return lists and tables of values."""
    some = st.lists(parts, max_size=3)
    rows = st.lists(st.tuples(KEYS, parts).map(": ".join), max_size=3)
    return st.one_of(
        some.map(lambda values: f"[{', '.join(values)}]"),
        some.map(lambda values: f"({''.join(value + ', ' for value in values)})"),
        rows.map(lambda pairs: f"{{{', '.join(pairs)}}}"),
        st.tuples(parts, parts).map(" if flag() else ".join),
        st.tuples(parts, parts).map(" + ".join),
    )


VALUES = st.recursive(PLAIN, listed, max_leaves=4)
SIMPLE = st.one_of(
    st.tuples(NAMES, VALUES).map(" = ".join),
    st.tuples(NAMES, VALUES).map(" = ".join),
    VALUES.map("motor({})".format),
    PLAIN.map("motor({})".format),
    PLAIN.map("motor({})".format),
    st.tuples(NAMES, KEYS, VALUES).map("{0[0]}[{0[1]}] = {0[2]}".format),
    st.tuples(NAMES, VALUES).map("{0[0]}.append({0[1]})".format),
    st.tuples(NAMES, VALUES).map("{0[0]}.update({0[1]})".format),
    st.tuples(NAMES, KEYS).map("del {0[0]}[{0[1]}]".format),
    st.tuples(NAMES, NAMES).map(" = ".join),
    st.tuples(NAMES, NAMES, VALUES).map("{0[0]} = {0[1]} = {0[2]}".format),
    st.tuples(NAMES, NAMES).map("{0[0]} = [{0[1]}]".format),
    st.tuples(NAMES, KEYS, KEYS, VALUES).map("{0[0]}[{0[1]}][{0[2]}] = {0[3]}".format),
    st.tuples(NAMES, KEYS, VALUES).map("{0[0]}[{0[1]}].append({0[2]})".format),
    st.tuples(NAMES, KEYS, NAMES).map("{0[0]} = {0[2]}[{0[1]}]".format),
    st.tuples(NAMES, KEYS, NAMES).map("{0[0]}[{0[1]}] = {0[2]}".format),
    st.tuples(NAMES, NAMES).map("{0[0]}.append({0[1]})".format),
    st.tuples(NAMES, NAMES).map("{0[0]} = list({0[1]})".format),
    st.tuples(NAMES, NAMES).map("{0[0]} = {0[1]}.copy()".format),
    st.tuples(NAMES, NAMES).map("{0[0]} = {0[1]}[:]".format),
    st.tuples(NAMES, NAMES, NAMES).map("{0[0]}, *{0[1]} = {0[2]}".format),
    st.tuples(NAMES, NAMES, NAMES).map("{0[0]}, {0[1]} = {0[2]}".format),
    st.tuples(NAMES, NAMES, NAMES, KEYS).map("{0[0]}, {0[1]} = {0[2]}[{0[3]}]".format),
    st.tuples(NAMES, KEYS, KEYS).map(
        "{0[0]}[{0[1]}], {0[0]}[{0[2]}] = {0[0]}[{0[2]}], {0[0]}[{0[1]}]".format
    ),
    st.tuples(NAMES, NAMES).map("{0[0]} = fill({0[1]})".format),
    VALUES.map("def give():\n    return {}".format),
    st.just("motor(give())"),
    NAMES.map("{} = give()".format),
    NAMES.map("for {0} in give():\n    motor({0})".format),
    KEYS.map("give()[{}] = 'c'".format),
    NAMES.map("fill({})".format),
    NAMES.map("fill(*{})".format),
    st.tuples(NAMES, NAMES).map("for {0[0]} in {0[1]}:\n    fill({0[0]})".format),
    st.tuples(NAMES, VALUES).map("k.{0[0]} = {0[1]}".format),
    st.tuples(NAMES, VALUES).map("k.{0[0]}.append({0[1]})".format),
    NAMES.map("motor(k.{})".format),
    st.tuples(NAMES, NAMES, VALUES, VALUES).map("{0[0]}, {0[1]} = {0[2]}, {0[3]}".format),
)


def indented(block: list[str]) -> str:
    """Return the statements of a block, one step further in."""
    return "\n".join("    " + line for part in block for line in part.split("\n"))


OBJECTS = """\
class K:
{0[0]}
    def tell(self):
        motor(self.{0[1]})
        motor(self.give())
    def give(self):
        return self.{0[1]}
class L(K):
{0[2]}
    def give(self):
        return self.{0[3]}
    def change(self):
        self.{0[3]} = {0[4]}
        motor(self.{0[3]})
k = L()
k.tell()
k.change()
k.tell()"""


def blocks(inner: st.SearchStrategy[str]) -> st.SearchStrategy[str]:
    """Return statements that hold others."""
    body = st.lists(inner, min_size=1, max_size=3).map(indented)
    return st.one_of(
        st.tuples(NAMES, VALUES, body).map("for {0[0]} in {0[1]}:\n{0[2]}".format),
        st.tuples(NAMES, NAMES, NAMES, body).map(
            "for {0[0]}, {0[1]} in {0[2]}.items():\n{0[3]}".format
        ),
        st.tuples(NAMES, NAMES, VALUES, body).map("for {0[0]}, {0[1]} in {0[2]}:\n{0[3]}".format),
        st.tuples(NAMES, NAMES, VALUES, body).map(
            "for {0[0]}, {0[1]} in enumerate({0[2]}):\n{0[3]}".format
        ),
        st.tuples(NAMES, NAMES, NAMES, VALUES, body).map(
            "for {0[0]}, {0[1]} in zip({0[2]}, {0[3]}):\n{0[4]}".format
        ),
        st.tuples(NAMES, VALUES, KEYS).map(
            "for {0[0]} in {0[1]}:\n    motor({0[0]}[{0[2]}])".format
        ),
        st.tuples(NAMES, NAMES, KEYS, body).map(
            "for {0[0]} in {0[1]}.values():\n    motor({0[0]}[{0[2]}])\n{0[3]}".format
        ),
        st.tuples(NAMES, VALUES, VALUES, body).map(
            "for {0[0]} in {0[1]}:\n    motor({0[0]})\nfor {0[0]} in {0[2]}:\n{0[3]}".format
        ),
        st.tuples(NAMES, NAMES, body).map("for {0[0]} in sorted({0[1]}):\n{0[2]}".format),
        st.tuples(NAMES, NAMES, body).map("for {0[0]} in {0[1]}.values():\n{0[2]}".format),
        body.map("if flag():\n{}".format),
        body.map("def f():\n{}\nf()".format),
        st.tuples(NAMES, body).map("def f({0[0]}):\n{0[1]}\nf('a')".format),
        st.tuples(NAMES, NAMES, body).map("def f({0[0]}):\n{0[2]}\nf({0[1]})".format),
        st.tuples(NAMES, NAMES, body).map("def fill({0[0]}):\n{0[2]}\n    return {0[1]}".format),
        st.tuples(NAMES, NAMES, body).map("def f(*, {0[0]}):\n{0[2]}\nf({0[0]}={0[1]})".format),
        st.tuples(NAMES, NAMES, body).map("def f({0[0]}={0[1]}):\n{0[2]}\nf()".format),
        st.tuples(NAMES, NAMES, body).map("def f(*{0[0]}):\n{0[2]}\nf({0[1]})".format),
        st.tuples(NAMES, body).map("def f():\n    global {0[0]}\n{0[1]}\nf()".format),
        st.tuples(NAMES, body).map("class K:\n{0[1]}\nmotor(K.{0[0]})".format),
        st.tuples(body, NAMES, body, NAMES, VALUES).map(OBJECTS.format),
    )


STARTS = st.lists(
    st.tuples(NAMES, st.one_of(WORDS, listed(WORDS), listed(listed(WORDS)))).map(" = ".join),
    min_size=1,
    max_size=3,
)
ENDS = st.lists(PLAIN.map("motor({})".format), min_size=2, max_size=6)
PROGRAMS = st.tuples(
    STARTS, st.lists(st.recursive(SIMPLE, blocks, max_leaves=6), min_size=1, max_size=5), ENDS
).map(lambda parts: [*parts[0], *parts[1], *parts[2]])


def given_to_motor(parts: list[str]) -> dict[int, set[object]]:
    """Run a program, going on behind what fails; return what motor was given in each line."""
    seen: dict[int, set[object]] = defaultdict(set)

    def note(value: object, line: int) -> None:
        if isinstance(value, list | tuple | dict):
            for part in value:
                note(part, line)
        else:
            seen[line].add(value)

    def motor(value: object) -> None:
        note(value, sys._getframe(1).f_lineno)

    turns = iter([True, False] * 100)
    world = {"motor": motor, "flag": lambda: next(turns), "dataclass": dataclass}
    above = 0
    for part in parts:
        with suppress(
            LookupError,
            NameError,
            TypeError,
            AttributeError,
            RuntimeError,
            ValueError,
            RecursionError,
        ):
            exec(compile("\n" * above + part, "<program>", "exec"), world)
        above += part.count("\n") + 1
    return seen


def holds(parts: list[str]) -> None:
    """Fail where a text that is said to be known is another one when the program runs."""
    program = "\n".join(parts) + "\n"
    try:
        compile(program, "<program>", "exec")
    except SyntaxError:  # a name is used before it is said to be global
        return
    said: dict[int, set[str | None]] = defaultdict(set)
    code = Code({"main.py": program})
    for site in code.sites("main.py"):
        line = program.count("\n", 0, site.span.start) + 1
        said[line] |= {one.text for one in code.resolver.resolve(site, "main.py")}
    for line, texts in given_to_motor(parts).items():
        assert line in said
        assert None in said[line] or texts <= said[line], (program, line)


@settings(max_examples=400, deadline=None)
@given(parts=PROGRAMS)
def test_a_text_that_is_known_is_the_one_that_the_program_gets(parts: list[str]):
    holds(parts)


ATTRIBUTES = st.sampled_from(["M", "N"])
GIVEN = st.tuples(ATTRIBUTES, st.one_of(WORDS, listed(WORDS)))
BODIES = st.lists(GIVEN.map(" = ".join), max_size=2).map(lambda some: indented([*some, "pass"]))
OF_CLASSES = st.one_of(
    st.tuples(BODIES, ATTRIBUTES, BODIES, ATTRIBUTES, WORDS).map(OBJECTS.format),
    st.tuples(st.sampled_from(["k", "K", "L"]), GIVEN).map("{0[0]}.{0[1][0]} = {0[1][1]}".format),
    st.tuples(ATTRIBUTES, WORDS).map("k.{0[0]}.append({0[1]})".format),
    st.tuples(ATTRIBUTES, WORDS).map("m = k.{0[0]}\nm.append({0[1]})".format),
    ATTRIBUTES.map("motor(k.{})".format),
    ATTRIBUTES.map("motor(K.{})".format),
    st.just("k.tell()"),
)


ARGUMENTS = st.one_of(
    st.lists(WORDS, max_size=2).map(", ".join),
    st.lists(GIVEN.map("=".join), max_size=2).map(", ".join),
    st.tuples(WORDS, GIVEN.map("=".join)).map(", ".join),
    WORDS.map("*[{}]".format),
)
FIELDS = """\
@dataclass
class D{0[0]}:
    M: object{0[1]}
    {0[2]}: object{0[3]}
    def tell(self):
        motor(self.{0[4]})
d = D({0[5]})
motor(d.M)
d.tell()"""
KEPT = """\
class I{0[0]}:
    N = {0[1]}
    def __init__(self, {0[2]}, N={0[3]}):
        self.{0[4]} = {0[2]}
        self.M = N
    def tell(self):
        motor(self.{0[5]})
d = I({0[6]})
motor(d.N)
d.tell()"""
BASES = st.sampled_from(["", "", "(K)", "(D)", "(I)"])
DEFAULTS = st.one_of(st.just(""), WORDS.map(" = {}".format))
OF_OBJECTS = st.one_of(
    OF_CLASSES,
    st.tuples(BASES, DEFAULTS, ATTRIBUTES, DEFAULTS, ATTRIBUTES, ARGUMENTS).map(FIELDS.format),
    st.tuples(BASES, WORDS, ATTRIBUTES, WORDS, ATTRIBUTES, ATTRIBUTES, ARGUMENTS)
    .filter(lambda one: one[2] != "N")
    .map(KEPT.format),
    st.tuples(st.sampled_from("DIKL"), ARGUMENTS).map("d = {0[0]}({0[1]})".format),
    st.tuples(st.sampled_from("dk"), GIVEN).map("{0[0]}.{0[1][0]} = {0[1][1]}".format),
    ATTRIBUTES.map("motor(d.{})".format),
    st.just("d.tell()"),
)


@settings(max_examples=400, deadline=None)
@given(parts=st.lists(OF_OBJECTS, min_size=2, max_size=5))
def test_an_attribute_that_is_known_is_the_one_that_the_program_gets(parts: list[str]):
    holds(parts)
