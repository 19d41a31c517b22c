"""Where a look-up stands, and whether two stand together."""

from __future__ import annotations

from namegen.model.facts import Path
from namegen.model.places import Place
from namegen.model.views import ResolvedLookup


def within(inner: Place, outer: Place) -> bool:
    """Whether one place lies inside another."""
    return (
        inner.path == outer.path
        and (outer.line, outer.column) <= (inner.line, inner.column)
        and (inner.end_line, inner.end_column) <= (outer.end_line, outer.end_column)
    )


def share(a: Path, b: Path) -> bool:
    """Whether one scope is the other or a class or function around it."""
    if a == b:
        return True
    outer, inner = sorted((a, b), key=len)
    return bool(outer) and inner[: len(outer)] == outer


def site(lookup: ResolvedLookup) -> Place:
    """Return the place of the look-up: its literal, or all of it when that stands elsewhere."""
    return lookup.place if within(lookup.place, lookup.at) else lookup.at
