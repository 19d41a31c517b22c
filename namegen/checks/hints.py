"""The nearest right word, when it is sure enough to be said."""

from __future__ import annotations

from collections.abc import Iterable

from namegen.checks.misreading import misread
from namegen.checks.wording import quoted
from namegen.text.likeness import suggest


def nearest(word: str, choices: Iterable[str]) -> str | None:
    """Return the one choice that the word was meant to be, or None.

    It is asked, never applied, so a single choice that differs by one small
    slip is good enough even where the word exists: ``harbor`` for ``harbour``.
    """
    if not word:
        return None
    found = suggest(word, tuple(choices))
    if found.best is None and len(found.rivals) == 1 and misread(word, found.rivals[0]):
        return found.rivals[0]
    return found.best


def did_you_mean(guess: str | None) -> str:
    """Return the question for a guess, or nothing without one."""
    return f"Did you mean {quoted(guess)}?" if guess else ""
