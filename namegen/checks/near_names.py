"""Device names that people take for one another, in one robot or between robots."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from namegen.checks.misreading import misread
from namegen.model.manifests import Device
from namegen.text.differences import spell_out
from namegen.text.lookalikes import look_alike, skeleton
from namegen.text.words import convert


def near(devices: Sequence[Device]) -> Iterator[tuple[Device, Device]]:
    """Yield the pairs that may be one edit apart, each once, in the order of the manifest.

    Two texts are one edit apart only if they share a text that is one letter
    shorter, so that no pair needs to be compared that shares none.
    """
    holders: dict[str, list[int]] = {}
    pairs: set[tuple[int, int]] = set()
    for index, device in enumerate(devices):
        for key in _keys(device.name):
            others = holders.get(key)
            if others is None:
                holders[key] = [index]
            else:
                pairs.update((other, index) for other in others)
                others.append(index)
    for one, other in sorted(pairs):
        yield devices[one], devices[other]


def _keys(name: str) -> set[str]:
    """Return what a name looks like, and that without each of its letters.

    A capital and its small letter may look like different things: m looks like rn,
    and M does not; so both orders of folding count.
    """
    looks = {skeleton(name).casefold(), skeleton(name.casefold())}
    return {*looks, *(look[:at] + look[at + 1 :] for look in looks for at in range(len(look)))}


def difference(earlier: str, later: str) -> str:
    """Return how two names differ where people would misread one for the other, or nothing."""
    if earlier.casefold() == later.casefold():
        return "only capitals differ"
    if look_alike(earlier.casefold(), later.casefold()) or look_alike(earlier, later):
        return f"they look alike ({spell_out(later, earlier)})"
    if convert(earlier, "snake_case") == convert(later, "snake_case"):
        return "only capitals and the signs between words differ"
    return spell_out(later, earlier) if misread(earlier, later) else ""
