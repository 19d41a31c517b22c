"""The controllers that a chart names, under one spelling each."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from msgspec import Struct
from msgspec.structs import replace

from namegen.loading.charts.entries import Entry, one_word
from namegen.loading.charts.kinds import kind_of
from namegen.loading.charts.ports import Reading
from namegen.model.manifests import Port
from namegen.text.likeness import suggest

ONLY = "main"
"""The controller of a chart that names none."""


class Controllers(Struct, frozen=True):
    """Small letters -> the controller as it is spelled first.

    ``slips`` are controllers named once -> the one that is near.
    """

    spellings: dict[str, str]
    slips: dict[str, str]

    def ports(self, entry: Entry, kind: str | None) -> Reading:
        """Return the ports of a row, each with its controller where that is sure."""
        found = entry.ports(kind, self.spellings)
        return replace(found, ports=tuple(self._settled(port) for port in found.ports))

    def example(self, entry: Entry) -> str:
        """Return the controller to show in an example of a port for this row."""
        said = one_word(entry.cell("controller"))
        return said or next(iter(self.spellings.values()), ONLY)

    def _settled(self, port: Port) -> Port:
        """Return a port with its controller as it is spelled first, or the only one there is."""
        if port.controller:
            key = port.controller.casefold()
            return replace(port, controller=self.spellings.get(key, port.controller))
        if len(self.spellings) > 1:
            return port
        return replace(port, controller=next(iter(self.spellings.values()), ONLY))


def controllers_in(entries: Sequence[Entry]) -> Controllers:
    """Return the controllers that the rows name."""
    found: dict[str, str] = {}
    uses: Counter[str] = Counter()
    for entry in entries:
        kind = kind_of(entry.cell("kind") or "?")
        named = [port.controller for port in entry.ports(kind, found).ports]
        named.append(one_word(entry.cell("controller")))
        for name in filter(None, dict.fromkeys(named)):
            found.setdefault(name.casefold(), name)
            uses[name.casefold()] += 1
    often = tuple(name for name, times in uses.items() if times > 1)
    slips: dict[str, str] = {}
    for name in uses.keys() - set(often):
        meant = suggest(name, often).best
        if meant:
            slips[found.pop(name)] = found[meant]
    return Controllers(found, slips)
