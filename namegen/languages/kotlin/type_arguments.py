"""Where type arguments of Kotlin end: ``<A, out B<C>?, (D) -> E>``, told from comparisons.

What can be types counts as such, as it does to Kotlin where a bracket follows.
"""

from __future__ import annotations

import re

_TOKEN = re.compile(
    rb"[ \t\r\n]*(?:([A-Za-z_\x80-\xff][\w\x80-\xff]*|`[^`\r\n]+`)|(->|[<>,.()?*]))"
)
_MOST = 300
"""Words and signs that are looked at; what goes on for longer counts as comparisons."""
_VARIANCE = frozenset({b"in", b"out"})
_BEGINS = (b"<", b",", b"(", b"->")
_AFTER = {
    b"w": (*_BEGINS, b"."),
    b"(": _BEGINS,
    b"*": (b"<", b","),
    b">": (b"w", b">", b"?", b"*"),
    b")": (b"w", b">", b"?", b"("),
    b",": (b"w", b">", b"?", b"*"),
    b"->": (b")",),
    b"<": (b"w",),
    b"?": (b"w", b">", b")"),
    b".": (b"w", b">"),
}
"""After what a sign may stand; ``w`` is a word."""
_CLOSED = {b">": b"<", b")": b"("}
"""What a sign closes."""


def end_of_types(data: bytes, at: int) -> int | None:
    """Return where the type arguments end whose ``<`` is before a place; None if they are none."""
    opened, last = [b"<"], b"<"
    for _ in range(_MOST):
        token = _TOKEN.match(data, at)
        if token is None:
            return None
        at = token.end()
        sign = token[2] if token[2] is not None else b"w"
        if token[1] in _VARIANCE and last in (b"<", b","):
            continue
        if not _fits(sign, last, opened[-1]):
            return None
        if sign in (b"<", b"("):
            opened.append(sign)
        elif sign in (b">", b")"):
            opened.pop()
            if not opened:
                return at
        last = sign
    return None


def _fits(sign: bytes, last: bytes, around: bytes) -> bool:
    """Whether a word or a sign may follow another inside of a bracket."""
    if sign in _CLOSED:
        return around == _CLOSED[sign] and last in _AFTER[sign]
    return last in _AFTER[sign] and (sign != b"*" or around == b"<")
