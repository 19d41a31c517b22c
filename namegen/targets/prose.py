"""Filters for the prose of comments, on text that is already escaped."""

from __future__ import annotations


def lines(text: str, width: int) -> list[str]:
    """Return the words of a text filled into lines of at most ``width`` characters.

    A word longer than that has a line of its own. Lines are never empty; there
    is at least one.
    """
    filled: list[str] = []
    for word in text.split():
        if filled and len(filled[-1]) + 1 + len(word) <= width:
            filled[-1] += " " + word
        else:
            filled.append(word)
    return filled or [""]


def sentence(text: str) -> str:
    """Return a text that ends like a sentence; nothing stays nothing."""
    text = text.rstrip()
    return text + "." if text and text[-1] not in ".!?" else text
