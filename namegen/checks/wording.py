"""Putting findings into plain words: names in quotes, lists, articles, numbers."""

from __future__ import annotations

from collections.abc import Iterable

from namegen.text.terminal import printable

_THINGS = frozenset({"motor", "servo", "switch", "lamp", "relay", "encoder", "imu"})
"""Kinds that are called like the thing itself; the others say what the thing measures."""


def quoted(name: str) -> str:
    """Return a user's name in double quotes, made harmless to show."""
    return f'"{printable(name)}"'


def listed(words: Iterable[str], last: str = "and", most: int = 8) -> str:
    """Return words as a reader lists them; beyond ``most`` only their number is said.

    >>> listed(["2", "3", "5"]), listed(["a", "b"], last="or"), listed("abcd", most=2)
    ('2, 3 and 5', 'a or b', 'a, b and 2 more')
    """
    shown = [printable(word) for word in words]
    if len(shown) > most:
        shown = [", ".join(shown[:most]), f"{len(shown) - most} more"]
    return f" {last} ".join(filter(None, (", ".join(shown[:-1]), *shown[-1:])))


def named(names: Iterable[str], last: str = "and") -> str:
    """Return names in quotes, as a reader lists them."""
    return listed([f'"{name}"' for name in names], last)


def with_article(noun: str) -> str:
    """Return a noun with its indefinite article: ``a motor``, ``an imu``."""
    return f"{'an' if noun[:1].lower() in 'aeiou' else 'a'} {printable(noun)}"


def a_device(kind: str) -> str:
    """Return a device of a kind: ``a motor``, ``an encoder``, ``a device of kind distance``."""
    return with_article(kind) if kind in _THINGS else f"a device of kind {printable(kind)}"


def number(value: float) -> str:
    """Return a measured figure without digits that say nothing: ``9.2``, ``15``, ``1200``."""
    return f"{value:.3g}" if abs(value) < 1000 else f"{value:.0f}"


def address(value: int) -> str:
    """Return a bus address as people write it: ``0x3A``."""
    return f"0x{value:02X}"


def to_write(text: str) -> str:
    """Return what is to be written into a file or typed, set off by backticks."""
    return f"`{printable(text)}`"


def in_setups(names: Iterable[str | None]) -> str:
    """Return `` in setup "harvest"``, or nothing for a robot without setups."""
    known = [name for name in names if name is not None]
    if not known:
        return ""
    return f" in setup{'s' if len(known) > 1 else ''} {named(known)}"


def sentences(*parts: str) -> str:
    """Return sentences joined to a message with a capital at its start; empty ones are left out."""
    text = " ".join(part for part in parts if part)
    return text[:1].upper() + text[1:]
