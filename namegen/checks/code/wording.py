"""The words that the messages about code share."""

from __future__ import annotations

from collections.abc import Sequence

from namegen.model.manifests import Device
from namegen.text.terminal import printable

_MOST = 6
"""So many names are listed; a longer list is cut, and says so."""


def quoted(text: str) -> str:
    """Return a name as messages show it: in double quotes, nothing in it invisible."""
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
    """Return a device kind with its article: ``a motor``, ``an encoder``."""
    return f"{'an' if kind[:1].lower() in 'aeiou' else 'a'} {printable(kind)}"


def plugged(device: Device) -> str:
    """Return where a device is plugged in, to tell it from its like: ``on bridge motor 1``."""
    if device.undecided:
        return "port undecided"
    return "on " + " and ".join(printable(str(port)) for port in device.ports)
