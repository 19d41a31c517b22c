"""What a name that is no device was probably meant to be."""

from __future__ import annotations

from namegen.model.manifests import Device
from namegen.model.views import NameQuestion
from namegen.text.likeness import Candidate, Suggestion, suggest
from namegen.text.words import split


def suggestion(question: NameQuestion) -> Suggestion:
    """Return the device that was surely meant, or the near ones; cached for each text.

    A lone letter at an end that one name has and the other has not tells devices
    apart (``rudder``, ``rudderB``), so it leaves nothing sure.
    """
    known = tuple(Candidate(d.name, d.kind) for d in question.robot.devices.values())
    found = suggest(question.text, known, question.asked)
    if found.best is None:
        return found
    odd = _end_letters(question.text) ^ _end_letters(found.best)
    if not odd or _plain(question.text) == _plain(found.best):
        return found
    why = f'the letter "{min(odd)[1]}" can stand for another device'
    return Suggestion(None, (found.best,), why)


def rivals(question: NameQuestion) -> tuple[Device, ...]:
    """Return the devices whose names are near the text though none is surely meant."""
    return tuple(question.robot.devices[name] for name in suggestion(question).rivals)


def _end_letters(name: str) -> set[tuple[int, str]]:
    """Return the first and the last word of a name where they are single letters."""
    words = split(name)
    ends = [(0, words[0]), (1, words[-1])] if len(words) > 1 else []
    return {(end, word.upper()) for end, word in ends if len(word) == 1 and word.isalpha()}


def _plain(name: str) -> str:
    return "".join(split(name)).lower()
