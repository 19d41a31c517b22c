"""The words that the messages about code share."""

from __future__ import annotations

from collections.abc import Sequence

from namegen.model.manifests import Device
from namegen.text.terminal import printable

_MOST = 6
"""So many names are listed; a longer list is cut, and says so."""
_LONGEST = 80
_THINGS = frozenset({"motor", "servo", "switch", "lamp", "relay", "encoder", "imu"})
"""Kinds that are called like the thing itself; the others say what the thing measures."""


def quoted(text: str) -> str:
    """Return a name as messages show it: in double quotes, nothing in it invisible.

    What is too long for a name is cut in the middle.
    """
    if len(text) > _LONGEST:
        text = f"{text[: _LONGEST - 20]}...{text[-15:]}"
    return f'"{printable(text)}"'


def listed(names: Sequence[str], last: str = "and") -> str:
    """Return quoted names as people write a list, cut when it gets long.

    >>> listed(["rudder", "netWinch", "heading"], "or")
    '"rudder", "netWinch" or "heading"'
    """
    shown = [quoted(name) for name in names[:_MOST]]
    if len(names) > _MOST:
        return f"{', '.join(shown)} and {len(names) - _MOST} more"
    return series(shown, last)


def series(words: Sequence[str], last: str = "and") -> str:
    """Return words as people write a list: ``a, b and c``."""
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} {last} {words[-1]}"


def a(kind: str) -> str:
    """Return a device of a kind: ``a motor``, ``an encoder``, ``a device of kind distance``."""
    if kind not in _THINGS:
        return f"a device of kind {printable(kind)}"
    return f"{'an' if kind[0] in 'aeiou' else 'a'} {kind}"


def plugged(device: Device) -> str:
    """Return where a device is plugged in, to tell it from its like: ``on bridge motor 1``."""
    if device.undecided:
        return "port undecided"
    return "on " + " and ".join(printable(str(port)) for port in device.ports)
