"""Applying edits to a text, so that nothing outside them changes."""

from __future__ import annotations

from collections.abc import Iterable

from namegen.model.places import Edit, Place
from namegen.text.positions import Lines


class Overlap(ValueError):
    """Two edits want to change the same stretch of text differently."""


def splice(text: str, edits: Iterable[Edit]) -> str:
    """Return the text with all edits made; edits of one and the same stretch count once.

    Raises:
        Overlap: two different edits touch the same stretch.
    """
    lines = Lines(text)
    ordered = sorted(set(edits), key=lambda edit: edit.place)
    pieces: list[str] = []
    done = 0
    for edit in ordered:
        start, end = _stretch(lines, edit.place)
        if start < done:
            raise Overlap(f"{edit.place}: overlaps the edit before it")
        pieces += (text[done:start], edit.text)
        done = end
    return "".join([*pieces, text[done:]])


def _stretch(lines: Lines, place: Place) -> tuple[int, int]:
    """Return the code point indices of a place."""
    return lines.index(place.line, place.column), lines.index(place.end_line, place.end_column)
