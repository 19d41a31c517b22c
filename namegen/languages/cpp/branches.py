"""Branches of the preprocessor's conditions, of which the compiler sees one."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations, pairwise

from namegen.languages.cpp.binding import Binding
from namegen.languages.sources import Stack
from namegen.model.facts import Definition, Several

_MOST_BRANCHES = 64
"""Branches of which each may give a value; a name with more is not known."""


def branch_of(stack: Stack) -> tuple[tuple[int, int], ...]:
    """Return the conditions of the preprocessor around a place, each with the branch's place."""
    found = []
    for node, child in pairwise(stack):
        if node.type in {"preproc_if", "preproc_ifdef", "preproc_elif", "preproc_else"}:
            other = child.type in {"preproc_elif", "preproc_else", "preproc_elifdef"}
            found.append((node.start_byte, 1 if other else 0))
    return tuple(found)


def of_branches(found: list[Definition], bound: Sequence[Binding]) -> list[Definition]:
    """Return what branches of ``#if`` define as one that may be any of them."""
    if not 1 < len(found) <= _MOST_BRANCHES:
        return found
    if not all(_exclude(one, other) for one, other in combinations(bound, 2)):
        return found
    first = found[0]
    values = tuple(one.value for one in found)
    return [Definition(first.path, Several(values, first.span), first.span)]


def _exclude(one: Binding, other: Binding) -> bool:
    """Whether two places stand in different branches of one condition of the preprocessor."""
    mine, others = dict(one.branch), dict(other.branch)
    return any(mine[at] != others[at] for at in mine.keys() & others.keys())
