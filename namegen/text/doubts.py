"""Why a name that is near a text may be another device all the same."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Sequence

from namegen.text.distance import Step, script
from namegen.text.english import is_word
from namegen.text.opposites import opposed, telling
from namegen.text.rosters import Form
from namegen.text.slips import DOUBLED, slip_cost

Pair = tuple[str, str]
"""A piece of the found text, and the word of the name that it stands for."""


def pairs_of(found: Form, expected: Form) -> list[Pair]:
    """Return each word of a near name with the piece of the found text that stands for it.

    Where one of them shows fewer words (``rightmotor``), it is cut as the other is.
    """
    if len(found.words) == len(expected.words):
        return list(zip(found.words, expected.words, strict=True))
    steps = script(found.key, expected.key)
    if len(found.words) > len(expected.words) and not _stutters(found) and not _swaps(steps):
        return [(piece, word) for word, piece in pairs_of(expected, found)]
    pairs, start, end_of_word = [], 0, 0
    for word in expected.words:
        end_of_word += len(word)
        drift = sum(len(s.found) - len(s.expected) for s in steps if s.to < end_of_word)
        last = end_of_word == len(expected.key)
        end = len(found.key) if last else end_of_word + drift
        pairs.append((found.key[start:end], word))
        start = end
    return pairs


def _stutters(form: Form) -> bool:
    """Whether a doubled capital made a word of one letter: ``bowMMotor``."""
    return any(
        len(word) == 1 and after.startswith(word)
        for word, after in zip(form.words, form.words[1:], strict=False)
    )


def _swaps(steps: Sequence[Step]) -> bool:
    """Whether a capital came one letter late or early, and cut a word in two: ``oBwMotor``."""
    return len(steps) == 1 and steps[0].action == "swap"


def doubt(found: Form, expected: Form, pairs: list[Pair], known: Collection[str]) -> str:
    """Return what speaks against a slip in a short phrase, or an empty text.

    ``known`` are the words that the names at hand are made of.
    """
    if found.numbers != expected.numbers:
        return "the number differs"
    other = [(piece, word) for piece, word in pairs if piece != word]
    for piece, word in other:
        if not piece or not word:
            return _lone(piece, word)
        code = len(piece) == 1 or len(word) == 1 or len(piece) == len(word) == 2
        if code or opposed(piece, word):
            return f'"{piece}" is not "{word}"'
    real = [(piece, word) for piece, word in other if not _mere_slip(piece, word)]
    if real and all(a in known or telling(a) or is_word(a) for a, _ in real):
        return f'"{real[0][0]}" is a word of its own, not "{real[0][1]}"'
    return ""


def _mere_slip(piece: str, word: str) -> bool:
    """Whether two words are so near that the found one, though real, is hardly meant.

    A plural, or a doubled letter (``ruder`` for ``rudder``).
    """
    plural = piece + "s" == word or word + "s" == piece
    return plural or slip_cost(piece, word) <= DOUBLED


def kinship(found: Form, expected: Form) -> str:
    """Return how a name that is no near one is a relative of the text, or an empty text.

    Relatives have all words in common but one: an opposing one, or one more or
    less. They are worth naming and never sure.
    """
    if len(found.words) == len(expected.words):
        pairs = zip(found.words, expected.words, strict=True)
        other = [(piece, word) for piece, word in pairs if piece != word]
        if len(other) == 1 and opposed(*other[0]):
            return f'"{other[0][0]}" is not "{other[0][1]}"'
        return ""
    if abs(len(found.words) - len(expected.words)) > 1:
        return ""
    here, there = Counter(found.words), Counter(expected.words)
    if here - there and there - here:
        return ""
    return _lone("".join(here - there), "".join(there - here))


def _lone(piece: str, word: str) -> str:
    """Return what it means that one side has a word more; the other side's is empty."""
    if len(piece + word) == 1:
        return f'the letter "{(piece or word).upper()}" can stand for another device'
    return f'"{piece}" is too much' if piece else f'"{word}" is missing'
