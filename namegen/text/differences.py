"""Where two texts differ, for a person who must find it: carets below, or in words."""

from __future__ import annotations

import unicodedata

from msgspec.structs import replace

from namegen.text.characters import is_typeable, is_visible, name_of
from namegen.text.distance import Step, script
from namegen.text.terminal import escaped
from namegen.text.words import convert

_LONGEST = 300
"""Texts longer than this are not compared letter by letter."""
_MOST = 3
"""So many differences are spelled out; with more, a reader looks at the carets."""
_TWINS = frozenset("0O1lI|")
"""Characters that need "digit" or "capital" before them to be told apart in print."""


def marks(found: str, expected: str) -> tuple[str, str]:
    """Return a line for each text with ``^`` under the letters that differ.

    The lines fit below the texts as `namegen.text.terminal.printable` shows
    them. A letter that is missing from a text has its mark in the other line.

    >>> marks("bowTruster", "bowThruster")
    ('', '    ^')
    """
    if max(len(found), len(expected)) > _LONGEST:
        return "", ""
    steps = _steps(found, expected)
    return (
        _carets(found, {step.at + i for step in steps for i in range(len(step.found))}),
        _carets(expected, {step.to + i for step in steps for i in range(len(step.expected))}),
    )


def _carets(text: str, marked: set[int]) -> str:
    cells = (("^" if i in marked else " ") * len(escaped(char)) for i, char in enumerate(text))
    return "".join(cells).rstrip()


def spell_out(found: str, expected: str) -> str:
    """Return in a short phrase how the found text differs from the expected one.

    Letters are counted from 1 in the found text, a missing letter in the
    expected one.

    >>> spell_out("bowthruster", "bowThruster")
    'small t instead of capital T at letter 4'
    >>> spell_out("ruder", "rudder"), spell_out("rudedr", "rudder")
    ('letter 4 "d" is missing', 'letters 4 and 5 are swapped')
    """
    if found == expected:
        return "no difference"
    if max(len(found), len(expected)) > _LONGEST:
        return "a different text"
    words, wanted = (convert(text, "snake_case").split("_") for text in (found, expected))
    if words != wanted and sorted(words) == sorted(wanted):
        return "the same words in another order"
    steps = _merged(_steps(found, expected))
    if len(steps) <= _MOST and sum(map(_size, steps)) <= len(expected):
        return ", ".join(_phrase(step, found, expected) for step in steps)
    return (
        "the same words in another style" if words == wanted else _summary(found, expected, steps)
    )


def _summary(found: str, expected: str, steps: list[Step]) -> str:
    if found.lower() == expected.lower():
        return f"the case of {len(steps)} letters differs"
    return f"{sum(map(_size, steps))} letters differ"


def _size(step: Step) -> int:
    return max(len(step.found), len(step.expected))


def _steps(found: str, expected: str) -> list[Step]:
    """Return the edits between two texts; blanks around the found one are edits by themselves.

    A shortest script may shift letters into the place of a blank, which is right but of no use.
    """
    if expected != expected.strip(" ") or not found.strip(" "):
        return script(found, expected)
    core = found.strip(" ")
    lead = len(found) - len(found.lstrip(" "))
    tail = len(found) - lead - len(core)
    before = [Step("delete", i, " ", 0, "") for i in range(lead)]
    inner = [replace(step, at=step.at + lead) for step in script(core, expected)]
    end, to = lead + len(core), len(expected)
    return [*before, *inner, *(Step("delete", end + i, " ", to, "") for i in range(tail))]


def _merged(steps: list[Step]) -> list[Step]:
    """Join neighbouring insertions, and neighbouring deletions, to one step each."""
    merged: list[Step] = []
    for step in steps:
        last = merged[-1] if merged else None
        if last and step.action == last.action and step.action in {"insert", "delete"}:
            touching = step.at == last.at + len(last.found) and step.to == last.to + len(
                last.expected
            )
            if touching:
                merged[-1] = Step(
                    last.action,
                    last.at,
                    last.found + step.found,
                    last.to,
                    last.expected + step.expected,
                )
                continue
        merged.append(step)
    return merged


def _phrase(step: Step, found: str, expected: str) -> str:
    if step.action == "swap":
        return f"letters {step.at + 1} and {step.at + 2} are swapped"
    if step.action == "replace":
        return _replaced(step)
    return _missing(step, expected) if step.action == "insert" else _extra(step, found)


def _missing(step: Step, expected: str) -> str:
    where = _where(step.to, step.expected, expected)
    if not step.expected.strip(" "):
        return f"{_blanks(step.expected)} {where} is missing"
    if len(step.expected) == 1:
        return f'letter {step.to + 1} "{_plain(step.expected)}" is missing'
    return f'"{_plain(step.expected)}" {where} is missing'


def _extra(step: Step, found: str) -> str:
    where = _where(step.at, step.found, found)
    if not step.found.strip(" "):
        return f"{_blanks(step.found)} {where}"
    if all(map(is_typeable, step.found)):
        return f'"{step.found}" {where} is too much'
    return f"{', '.join(map(_called, step.found))} {where}"


def _where(index: int, piece: str, text: str) -> str:
    if index + len(piece) == len(text):
        return "at the end"
    return "at the start" if index == 0 else f"at letter {index + 1}"


def _blanks(piece: str) -> str:
    return "a blank" if len(piece) == 1 else f"{len(piece)} blanks"


def _plain(piece: str) -> str:
    return "".join(map(escaped, piece))


def _replaced(step: Step) -> str:
    found, expected = step.found, step.expected
    if found.lower() == expected.lower() or {found, expected} <= _TWINS:
        found, expected = _with_case(found), _with_case(expected)
    else:
        found, expected = _called(found), _called(expected)
    return f"{found} instead of {expected} at letter {step.at + 1}"


def _with_case(char: str) -> str:
    """Return a letter called by its case, a digit called a digit."""
    if char.isdigit():
        return f"digit {char}"
    if char.isupper() or char.islower():
        return f"{'capital' if char.isupper() else 'small'} {_called(char)}"
    return _called(char)


def _called(char: str) -> str:
    """Return a character as a reader can find it: by itself, or with script and code point."""
    if char == " ":
        return "a blank"
    if is_typeable(char):
        return char
    if not is_visible(char):
        return f"an invisible {name_of(char)}"
    script_name = unicodedata.name(char, "").split(" ")[0].capitalize()
    return f"{script_name} {char} (U+{ord(char):04X})".lstrip()
