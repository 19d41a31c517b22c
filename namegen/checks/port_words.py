"""What a port was meant to be whose words are right and stand in another order."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from itertools import permutations

from namegen.checks.wiring import exists
from namegen.checks.wording import named
from namegen.model.manifests import Port
from namegen.model.views import RobotView

_GLUED = re.compile(r"([^\W\d_]+)[-_]?(\d+)")
_MOST = 4


def meant(view: RobotView, port: Port) -> tuple[Port, ...]:
    """Return the ports of this robot that have the same words.

    They may stand in another order, type and label may be glued together, and
    the controller may be missing.
    """
    words = str(port).split()
    apart = [part for word in words for part in _parts(view, word)]
    for tried in (_orders(words), _orders(apart), _on_each(view, apart)):
        found = dict.fromkeys(one for one in tried if _fits(view, one))
        if found:
            return tuple(found)
    return ()


def ask(ports: Iterable[Port]) -> str:
    """Return the question for the ports that may be meant, and how a port is written."""
    found = [str(port) for port in ports]
    if len(found) > _MOST:
        return "Write the controller first, then port type and label."
    order = "A port is written as controller, port type, label."
    return f"Did you mean {named(found, last='or')}? {order}" if found else ""


def _parts(view: RobotView, word: str) -> tuple[str, ...]:
    glued = _GLUED.fullmatch(word)
    return glued.groups() if glued and word not in view.manifest.controllers else (word,)


def _orders(words: list[str]) -> Iterator[Port]:
    if len(words) in {2, 3}:
        for order in permutations(words):
            yield Port(*order)


def _on_each(view: RobotView, words: list[str]) -> Iterator[Port]:
    if len(words) == 2:
        for controller in view.manifest.controllers:
            for order in permutations(words):
                yield Port(controller, *order)


def _fits(view: RobotView, port: Port) -> bool:
    """Whether the port exists; where its board is not known, whether it is written like one."""
    there = exists(view, port)
    if there is not None:
        return there
    known = port.controller in view.manifest.controllers
    return known and port.label is not None and port.type in view.catalogue.port_types
