"""What reading a YAML file gives: a value as far as it can be had, and every fault found."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Generic, TypeVar

from msgspec import Struct

from namegen.model.findings import Fault

T = TypeVar("T")

MOST_FAULTS = 100
"""More faults than this in one reading are counted, not listed."""


class Loaded(Struct, Generic[T], frozen=True):
    """A value read from YAML text, and what was wrong with the text.

    ``value`` is None when so much is wrong that nothing can be judged. Otherwise
    it is what could be made of the text, so that all findings come in one run:
    a wrong value counts as left out.
    """

    value: T | None
    faults: tuple[Fault, ...] = ()


def listed(faults: Iterable[Fault]) -> tuple[Fault, ...]:
    """Return the faults without repetitions, in order of place, at most `MOST_FAULTS`."""
    ordered = sorted(dict.fromkeys(faults), key=lambda fault: fault.place)
    if len(ordered) <= MOST_FAULTS:
        return tuple(ordered)
    last = ordered[MOST_FAULTS - 1]
    rest = len(ordered) - MOST_FAULTS + 1
    more = f"{rest} more faults follow from here on; mend the ones above, then look again."
    return (*ordered[: MOST_FAULTS - 1], Fault(last.kind, more, last.place))
