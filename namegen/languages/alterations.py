"""Whether an array or a list is changed without being assigned: Java and languages like it.

It may be changed where it stands, by another name that it is given to, or by a function of the
file that gets it. A list in a list is followed too: ``depth`` says in how many lists within one
another the followed one lies in what a name stands for.
"""

from __future__ import annotations

from abc import ABC, abstractmethod
from bisect import bisect_left
from collections.abc import Iterator, Sequence

from msgspec import Struct

from namegen.languages.definitions import ALTERED, HANDED_ON
from namegen.languages.sources import Source, Stack
from namegen.model.places import Span

COPY = 2
"""The step to a list that has the same elements: what is done to it alone changes nothing."""
_DEEPEST = 4
"""Lists within one another that are told apart."""


class Handed(Struct, frozen=True):
    """A name that is given a list: just that (step 0), a part of it (-1), a list with it in it (1).

    ``within`` is where the word is that name, ``called`` whether it is a function that gives it.
    """

    word: str
    within: Span
    step: int = 0
    called: bool = False


class _Level(Struct, frozen=True):
    """What is done with one of the expressions around a name, each of which has the one before."""

    step: int
    is_changed: bool
    handed: tuple[Handed, ...]


class _Name(Struct, frozen=True):
    """A name that the followed list lies in, so deep."""

    word: str
    within: Span
    called: bool
    depth: int


class Alterations(ABC):
    """Follows what is done to lists in one file, and remembers what was asked."""

    def __init__(self, source: Source) -> None:
        self.source = source
        self._uses: dict[tuple[str, bool], list[tuple[int, tuple[_Level, ...]]]] = {}
        self._judged: dict[_Name, bool] = {}

    @abstractmethod
    def _whole(self, stack: Stack, called: bool) -> Stack | None:
        """Return the stack down to a name as a whole, or a call of it; None where it is neither."""

    @abstractmethod
    def _is_changed(self, stack: Stack) -> bool:
        """Whether the use of a list, the last of the stack, changes it."""

    @abstractmethod
    def _handed(self, stack: Stack) -> Iterator[Handed]:
        """Yield the names that are given what the last of the stack stands for."""

    @abstractmethod
    def _around(self, stack: Stack) -> tuple[Stack, int] | None:
        """Return the expression around that is, has or is a part of the last of the stack.

        The number is the step to it, as in `Handed`.
        """

    def why(self, whole: Stack) -> str:
        """Return why a list, as it stands at the end of a stack, is changed; empty if it is not."""
        is_changed, handed = _judged(self._levels(whole), 0)
        if is_changed:
            return ALTERED
        return HANDED_ON if any(self._is_changed_as(one) for one in handed) else ""

    def _is_changed_as(self, name: _Name) -> bool:
        """Whether a list is changed by a name, or by one that gets it from this in turn."""
        came: dict[_Name, _Name | None] = {name: None}
        pending = [name]
        while pending:
            one = pending.pop()
            known = self._judged.get(one)
            changed, handed = (known, []) if known is not None else self._done_with(one)
            if changed:
                at: _Name | None = one
                while at is not None:
                    self._judged[at] = True
                    at = came[at]
                return True
            for other in handed:
                if other not in came:
                    came[other] = one
                    pending.append(other)
        self._judged.update(dict.fromkeys(came, False))
        return False

    def _done_with(self, name: _Name) -> tuple[bool, list[_Name]]:
        """Return whether a list is changed by a name, and the names that get it from this one."""
        uses = self._uses_of(name.word, name.called)
        handed: list[_Name] = []
        for at in range(bisect_left(uses, (name.within.start,)), len(uses)):
            start, levels = uses[at]
            if start >= name.within.end:
                break
            is_changed, others = _judged(levels, name.depth)
            if is_changed:
                return True, []
            handed += others
        return False, handed

    def _uses_of(self, word: str, called: bool) -> list[tuple[int, tuple[_Level, ...]]]:
        """Return what is done with a name at each of its places in the file, in order."""
        key = word, called
        if key not in self._uses:
            wholes = (
                (stack[-1].start_byte, self._whole(stack, called))
                for stack in self.source.stacks([word])
                if stack[-1].type == "identifier" and len(stack) > 1
            )
            self._uses[key] = [
                (start, tuple(self._levels(whole))) for start, whole in wholes if whole is not None
            ]
        return self._uses[key]

    def _levels(self, stack: Stack) -> Iterator[_Level]:
        """Yield what is done with an expression and with those around that have what it has."""
        step = 0
        while len(stack) > 1:
            yield _Level(step, self._is_changed(stack), tuple(self._handed(stack)))
            around = self._around(stack)
            if around is None:
                return
            stack, step = around


def _judged(levels: Iterator[_Level] | Sequence[_Level], depth: int) -> tuple[bool, list[_Name]]:
    """Return whether what lies so deep in a name is changed at one place, and what else gets it."""
    handed: list[_Name] = []
    for level in levels:
        depth = _stepped(depth, level.step)
        if level.is_changed and depth == 0:
            return True, []
        handed += [
            _Name(one.word, one.within, one.called, _stepped(depth, one.step))
            for one in level.handed
        ]
    return False, handed


def _stepped(depth: int, step: int) -> int:
    """Return how deep something lies after a step; a part of the followed list is followed on."""
    if step == COPY:
        return max(depth, 1)
    return min(max(depth + step, 0), _DEEPEST)
