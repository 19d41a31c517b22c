"""The nearest right word, when it is sure enough to be said."""

from __future__ import annotations

from collections.abc import Iterable

from namegen.checks.wording import quoted
from namegen.text.likeness import nearest as nearest_word


def nearest(word: str, choices: Iterable[str]) -> str | None:
    """Return the one choice that the word was surely meant to be, or None."""
    return nearest_word(word, choices) if word else None


def did_you_mean(guess: str | None) -> str:
    """Return the question for a guess, or nothing without one."""
    return f"Did you mean {quoted(guess)}?" if guess else ""
