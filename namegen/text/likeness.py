"""Which name was meant: a suggestion when one is sure, the rivals when none is.

A wrong suggestion can move another machine, so this abstains rather than
guesses. A name is suggested only when the text is a slip of it (a cost by
`namegen.text.slips` that is small for its length, word by word), no other name
is about as near, its kind fits, and the difference is none that tells devices
apart: an opposing word, another word that exists, a number, a lone letter.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache

from namegen.text.differences import spell_out
from namegen.text.distance import script
from namegen.text.lookalikes import skeleton
from namegen.text.english import is_word
from namegen.text.opposites import opposed, telling
from namegen.text.slips import slip_cost
from namegen.text.words import split

MARGIN = 0.4
"""How much more the second-best must cost than the best."""
_REWRITTEN = 0.1
"""Cost of another case style, another case or other separators alone."""
_MOST_EDITS = 6
_MORE_EDITS = 2
"""Candidates that are so many plain edits further than the nearest cannot come within the margin."""
_LONGEST = 120
"""Longer texts are no names that anybody mistyped."""
_NUMBER = re.compile(r"\d+")


@dataclass(frozen=True, slots=True)
class Candidate:
    """A name that may have been meant, and what kind of thing it names."""

    name: str
    kind: str | None = None


@dataclass(frozen=True, slots=True)
class Suggestion:
    """``best`` is the one name that was surely meant, or None.

    ``rivals`` are the near ones when nothing is sure, nearest first. ``why`` is
    a short phrase for a message: how the text differs, or why nothing is sure.
    """

    best: str | None
    rivals: tuple[str, ...]
    why: str


def suggest(
    text: str, candidates: Sequence[Candidate | str], kind: str | None = None
) -> Suggestion:
    """Return which candidate a text that is none of them was meant to be.

    ``kind`` is what the place asks for; a candidate of another kind is never best.

    >>> suggest("bowThrustr", ["bowThruster", "sternThruster", "rudder"]).best
    'bowThruster'
    >>> suggest("portPump", ["starboardPump", "netWinch"])
    Suggestion(best=None, rivals=('starboardPump',), why='"port" is not "starboard"')
    """
    known = tuple(Candidate(c) if isinstance(c, str) else c for c in candidates)
    return _suggest(text, _roster(known), kind)


def nearest(text: str, words: Iterable[str]) -> str | None:
    """Return the word that a text was surely meant to be, or None.

    >>> nearest("lable", ["label", "port", "kind"])
    'label'
    """
    return suggest(text, tuple(words)).best


@dataclass(frozen=True, slots=True)
class _Form:
    """A name taken apart."""

    words: tuple[str, ...]
    key: str
    """All letters and digits in lower case."""
    numbers: tuple[str, ...]

    @classmethod
    def of(cls, text: str) -> _Form:
        words = tuple(word.casefold() for word in split(text))
        key = "".join(words)
        return cls(words, key, tuple(_NUMBER.findall(key)))


class _Roster:
    """Candidates prepared for many questions; compared by identity, so that answers cache."""

    def __init__(self, candidates: tuple[Candidate, ...]) -> None:
        self.candidates = candidates
        self.forms = [_Form.of(candidate.name) for candidate in candidates]
        self.keys = [form.key for form in self.forms]
        self.words = {word for form in self.forms for word in form.words}
        self.skeletons = [skeleton(candidate.name).casefold() for candidate in candidates]


@lru_cache(maxsize=64)
def _roster(candidates: tuple[Candidate, ...]) -> _Roster:
    return _Roster(candidates)


@dataclass(frozen=True, slots=True)
class _Near:
    """A candidate near the text; ``doubt`` says why it may still be another device."""

    candidate: Candidate
    cost: float
    doubt: str


@lru_cache(maxsize=8192)
def _suggest(text: str, roster: _Roster, kind: str | None) -> Suggestion:
    found = _Form.of(text)
    if not found.key or len(found.key) > _LONGEST:
        return Suggestion(None, (), "no name is near")
    near = _near(text, found, roster, kind)
    if not near:
        return _abstain(_relatives(found, roster))
    best = near[0]
    rivals = [other for other in near if other.cost < best.cost + MARGIN]
    if len(rivals) > 1:
        doubts = [other.doubt for other in rivals if other.doubt]
        return _abstain(rivals, doubts[0] if doubts else "several names are equally near")
    if best.doubt:
        return _abstain(near, best.doubt)
    return Suggestion(best.candidate.name, (), spell_out(text, best.candidate.name))


def _abstain(rivals: list[_Near], why: str = "") -> Suggestion:
    why = why or (rivals[0].doubt if rivals else "no name is near")
    return Suggestion(None, tuple(rival.candidate.name for rival in rivals), why)


def _near(text: str, found: _Form, roster: _Roster, kind: str | None) -> list[_Near]:
    """Return the candidates that the text may be a slip of, nearest first."""
    from rapidfuzz.distance import OSA  # noqa: PLC0415 - loaded when something is not found
    from rapidfuzz.process import extract  # noqa: PLC0415

    look = skeleton(text).casefold()
    most = min(len(found.key) // 2 + 1, _MOST_EDITS)
    hits = extract(found.key, roster.keys, scorer=OSA.distance, score_cutoff=most, limit=None)
    indices = {index for _, edits, index in hits if edits <= hits[0][1] + _MORE_EDITS}
    indices |= {i for i, other in enumerate(roster.skeletons) if other == look}
    near = []
    for index in indices:
        candidate, form = roster.candidates[index], roster.forms[index]
        if form.key == found.key or roster.skeletons[index] == look:
            cost, doubt = (0.0 if candidate.name == text else _REWRITTEN), ""
        else:
            cost = slip_cost(found.key, form.key)
            if cost > allowance(len(form.key)):
                continue
            pairs = _pairs(found, form)
            doubt = _doubt(found, form, pairs, roster)
            if not doubt and any(slip_cost(a, b) > allowance(len(b)) for a, b in pairs if a != b):
                continue
        if kind and candidate.kind and candidate.kind != kind:
            doubt = doubt or f"{candidate.name} is of kind {candidate.kind}"
        near.append(_Near(candidate, cost, doubt))
    return sorted(near, key=lambda n: n.cost)


def allowance(length: int) -> float:
    """Return what the slips in a name of so many letters, or in one of its words, may cost."""
    return min(0.7 + 0.35 * length, 3.4)


def _pairs(found: _Form, expected: _Form) -> list[tuple[str, str]]:
    """Return each expected word with the piece of the found text that stands for it."""
    if len(found.words) == len(expected.words):
        return list(zip(found.words, expected.words, strict=True))
    steps = script(found.key, expected.key)
    pairs, start, end_of_word = [], 0, 0
    for word in expected.words:
        end_of_word += len(word)
        drift = sum(len(s.found) - len(s.expected) for s in steps if s.to < end_of_word)
        end = len(found.key) if end_of_word == len(expected.key) else end_of_word + drift
        pairs.append((found.key[start:end], word))
        start = end
    return pairs


def _doubt(found: _Form, expected: _Form, pairs: list[tuple[str, str]], roster: _Roster) -> str:
    """Return why a near name may be another device all the same, or an empty text."""
    if found.numbers != expected.numbers:
        return "the number differs"
    for piece, word in pairs:
        if piece == word:
            continue
        if not piece:
            return f'"{word}" is missing'
        if opposed(piece, word) or len(piece) == 1 or len(word) == 1:
            return f'"{piece}" is not "{word}"'
        real = piece in roster.words or telling(piece) or is_word(piece)
        if real and not _plural(piece, word):
            return f'"{piece}" is a word of its own, not "{word}"'
    return ""


def _plural(a: str, b: str) -> bool:
    return a + "s" == b or b + "s" == a


def _relatives(found: _Form, roster: _Roster) -> list[_Near]:
    """Return the candidates that differ from the text by one opposing or one extra word."""
    relatives = []
    for candidate, form in zip(roster.candidates, roster.forms, strict=True):
        if len(form.words) == len(found.words):
            different = [(a, b) for a, b in zip(found.words, form.words, strict=True) if a != b]
            if len(different) == 1 and opposed(*different[0]):
                a, b = different[0]
                relatives.append(_Near(candidate, 1.0, f'"{a}" is not "{b}"'))
    return relatives
