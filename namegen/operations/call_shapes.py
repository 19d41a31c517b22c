"""What stands before a device's name in the text of code: a guess at the look-up around it.

A guess only: `namegen.operations.learn` proves it by reading the code. To read all
calls of a program for the few that get a name would take many times longer.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Collection, Iterator
from typing import Literal

from msgspec import Struct, field
from msgspec.structs import replace

from namegen.languages import Making
from namegen.model.workspaces import LookupRule, Shape
from namegen.text.lookalikes import skeleton

_FAR = 400
"""Characters before a name in which the bracket around it is looked for."""
_LITERAL = re.compile(r"""(["'])((?:(?!\1)[^\\\r\n]){1,120})\1""")
_BEFORE_ROUND = re.compile(
    r"(?:(\w+)(?:\(\))?\s*(?:\.|->|::)\s*(?:template\s+)?)?(?:<[^<>()]*>\s*)?"
    r"(@?)(\w+)\s*(?:\[[^\[\]]*\]|<[^<>()]*>)?\s*\Z"
)
_BEFORE_SQUARE = re.compile(r"(?:(\w+)\s*(?:\.|->)\s*)?(\w+)\s*\Z")
_MADE = re.compile(
    r"\bmake_(?:unique|shared)\s*<\s*(?:\w+\s*::\s*)*(\w+)\s*(?:<[^<>()]*>\s*)?>\s*\Z"
)
_CONSTRUCTED = re.compile(r"(?<![\w.>])(?:\w+\s*::\s*)*(\w+)\s*(?:<[^<>()]*>)?\s+\w+\s*\Z")
"""The type of a variable that is given something: ``lib::Sensor bow(``, ``Sensor bow{``."""
_LISTED = re.compile(r"(?<![\w.>])(?:\w+\s*::\s*)*(\w+)\s*(?:<[^<>()]*>)?\s*\Z")
_NO_TYPES = frozenset(
    {"and", "await", "case", "co_return", "co_yield", "do", "elif", "else", "if", "in", "is", "new"}
    | {"not", "or", "return", "throw", "while", "with", "yield"}
)
_KEYWORD = re.compile(r"(\w+)\s*=\s*\Z")
_NEW = re.compile(r"\bnew\s+(?:\w+\s*\.\s*)*\Z")


class Seen(Struct):
    """How one thing that is called was seen with names of devices."""

    positions: Counter[int] = field(default_factory=Counter)
    keys: Counter[str] = field(default_factory=Counter)
    receivers: set[str | None] = field(default_factory=set)

    def rules(self, shape: Shape, called: str) -> Iterator[LookupRule]:
        """Yield the rules that would find it: without a receiver, and with the only one seen."""
        key = min(self.keys) if self.keys else None
        places = tuple(sorted(self.positions)) or (0,)
        name_at: tuple[int, ...] | Literal["rest"] = "rest" if len(places) > 2 else places
        rule = LookupRule(shape, called, name_at=name_at, name_key=key)
        yield rule
        (receiver, *others) = self.receivers
        if receiver is not None and not others:
            yield replace(rule, on=receiver)


def propose(
    text: str, makes: Making, looks: Collection[str], seen: dict[tuple[Shape, str], Seen]
) -> None:
    """Note what stands before each text that looks like a device's name to a reader."""
    for found in _LITERAL.finditer(text):
        if skeleton(found[2]).casefold() not in looks:
            continue
        around = _bracket(text[max(0, found.start() - _FAR) : found.start()])
        if around is None:
            continue
        before, inside = around
        for shape, word, receiver in _called(before, makes):
            one = seen.setdefault((shape, word), Seen())
            one.receivers.add(receiver)
            keyword = _KEYWORD.search(inside)
            if keyword is not None:
                one.keys[keyword[1]] += 1
            else:
                one.positions[_commas(inside)] += 1


def _called(before: str, makes: Making) -> Iterator[tuple[Shape, str, str | None]]:
    """Yield what may be called by the bracket at the end of a text: shape, word and receiver."""
    text, bracket = before[:-1], before[-1]
    made = _MADE.search(text)
    if made is not None:
        yield "new", made[1], None
        return
    constructed = _CONSTRUCTED.search(text) if bracket != "[" else None
    if constructed is None and bracket == "{":
        constructed = _LISTED.search(text)
    if constructed is not None and constructed[1] not in _NO_TYPES:
        yield "new", constructed[1], None
    if bracket == "{":
        return
    square = bracket == "["
    called = (_BEFORE_SQUARE if square else _BEFORE_ROUND).search(text)
    if called is not None:
        word = called[called.lastindex or 0]
        yield _shape(text, called, makes, square=square), word, called[1]


def _shape(before: str, called: re.Match[str], makes: Making, *, square: bool) -> Shape:
    if square:
        return "subscript"
    if called[2]:
        return "annotation"
    says_new = _NEW.search(before[: called.start(3)])
    is_class = called[3][:1].isupper() and makes != "new"
    if says_new or (is_class and (called[1] is None or makes == "class")):
        return "new"
    return "call"


def _bracket(before: str) -> tuple[str, str] | None:
    """Return the text up to the bracket that is still open at its end, and what follows that."""
    depth = 0
    for at in range(len(before) - 1, -1, -1):
        if before[at] in ")]}":
            depth += 1
        elif before[at] in "([{":
            if depth == 0:
                return before[: at + 1], before[at + 1 :]
            depth -= 1
        elif before[at] == ";" and depth == 0:
            return None
    return None


def _commas(inside: str) -> int:
    """Return how many commas stand outside of inner brackets."""
    depth = count = 0
    for char in inside:
        depth += (char in "([{") - (char in ")]}")
        count += char == "," and depth == 0
    return count
