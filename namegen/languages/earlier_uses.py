"""Uses of a word above its declaration, where it is another name that is further out."""

from __future__ import annotations

from bisect import bisect_left

from namegen.languages.scopes import Scope


class EarlierUses:
    """Where a word was used until now, each with the start of the region that declared it.

    Both lists are such that the last that fits is found without going through all.
    """

    def __init__(self) -> None:
        self._around: list[tuple[int, int]] = []
        self._found: list[tuple[int, int]] = []

    def declare(self, owner: int, within: Scope) -> None:
        """Take note of a region, or a type, that declares the word."""
        if owner == within.node.id:
            self._around.append((within.node.start_byte, within.node.end_byte))

    def add(self, at: int) -> None:
        """Take note of a use."""
        while self._around and self._around[-1][1] <= at:
            self._around.pop()
        declared = self._around[-1][0] if self._around else -1
        while self._found and self._found[-1][1] >= declared:
            self._found.pop()  # a later use that is declared as far out tells more
        self._found.append((at, declared))

    def are_above(self, owner: int, within: Scope) -> bool:
        """Whether a local name stands further up in its block, where it is one further out."""
        if within.sort != "region" or owner != within.node.id:
            return False
        start = within.node.start_byte
        first = bisect_left(self._found, (start, -1))
        return first < len(self._found) and self._found[first][1] <= start
