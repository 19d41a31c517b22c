"""Moves: where the places of one text stand in another, once edits are made or taken back."""

from __future__ import annotations

from bisect import bisect
from collections import defaultdict
from collections.abc import Collection, Iterable
from operator import add

from namegen.model.findings import Finding
from namegen.model.places import Edit, Place
from namegen.text.positions import Lines


class Moves:
    """Places of one file before and after edits that do not overlap and leave no stretch empty."""

    def __init__(self, old: str, new: str, edits: Iterable[Edit]) -> None:
        self._old, self._new = Lines(old), Lines(new)
        self._ends: list[int] = []
        """Where the edited stretches of the old text end."""
        self._grown = [0]
        """By how much the text before the first of these ends grew, the second, and so on."""
        for edit in sorted(set(edits), key=lambda edit: edit.place):
            start, end = _stretch(self._old, edit.place)
            self._ends.append(end)
            self._grown.append(self._grown[-1] + len(edit.text) - (end - start))
        self._new_ends = list(map(add, self._ends, self._grown[1:]))

    def forward(self, place: Place) -> Place:
        """Return where a place of the old text stands in the new one."""
        start, end = (at + self._grown[bisect(self._ends, at)] for at in _stretch(self._old, place))
        return Place(place.path, *self._new.locate(start, end))

    def back(self, place: Place) -> Place:
        """Return where a place of the new text stood in the old one."""
        stretch = _stretch(self._new, place)
        start, end = (at - self._grown[bisect(self._new_ends, at)] for at in stretch)
        return Place(place.path, *self._old.locate(start, end))


def _stretch(lines: Lines, place: Place) -> tuple[int, int]:
    return lines.index(place.line, place.column), lines.index(place.end_line, place.end_column)


def found_again(
    before: Iterable[Finding], after: Iterable[Finding], gone: Collection[Place]
) -> dict[Place, Place]:
    """Return where the findings that are left stand in the report after a change.

    ``gone`` are the places that the change put right. Nothing else brings findings or takes
    them away, so that those that say the same come in the same order. A place is left out
    where that does not hold.
    """
    kept, now = _alike(one for one in before if one.place not in gone), _alike(after)
    return {
        old: new
        for key, places in kept.items()
        if len(places) == len(now[key])
        for old, new in zip(places, now[key], strict=True)
    }


def _alike(findings: Iterable[Finding]) -> defaultdict[tuple[str | None, ...], list[Place]]:
    """Return the places of findings that say the same of the same text in one file, in order."""
    places: defaultdict[tuple[str | None, ...], list[Place]] = defaultdict(list)
    for one in findings:
        places[one.place.path, one.kind, one.found, one.expected].append(one.place)
    return places
