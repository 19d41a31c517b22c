"""Which files, and which places in them, need no reading: searches of bytes that rule out most."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

from msgspec.structs import replace

from namegen.languages.sources import LETTERS, occurrences
from namegen.model.places import Span
from namegen.model.workspaces import LookupRule

_BEFORE = 200
"""Bytes before a word that are looked at; what reaches further back is not judged."""
_BLANK = rb"(?:\s|//[^\r\n]*[\r\n]|/\*(?:[^*]|\*(?!/))*\*/)*"
_GAP = _BLANK + rb"(?:<[^;{}()]*>" + _BLANK + rb")?`?\Z"
"""What may stand between a sign and an identifier, which Kotlin allows in quotes."""

LooksUp = Callable[[bytes, Span], bool]
"""Whether a look-up, or another name for it, can stand at an identifier; False is certain."""


def prefilter(rules: Sequence[LookupRule], looks_up: LooksUp) -> Callable[[bytes], bool]:
    """Return a test on raw bytes: False when no rule can find a look-up in them.

    All identifiers of a rule must stand there, the called one where ``looks_up``
    says that a look-up, or another name for it, can be. Non-ASCII identifiers look
    different in other encodings, so they never rule a file out.
    """
    needs = {(rule.called, rule.on) for rule in rules}
    words = [word for pair in needs for word in pair if word is not None]
    if not all(word.isascii() for word in words):
        return lambda _data: True
    wanted = [
        (called, called.encode("ascii"), on, (on or "").encode("ascii"))
        for called, on in sorted(needs, key=lambda pair: (pair[0], pair[1] or ""))
    ]

    def holds(data: bytes) -> bool:
        return any(
            # Whether the bytes are there at all is the quickest question, and rules out most.
            called_bytes in data
            and on_bytes in data
            and (on is None or any(occurrences(data, on)))
            and any(
                looks_up(data, place) and (on is None or may_be_on(data, place, on_bytes))
                for place in occurrences(data, called)
            )
            for called, called_bytes, on, on_bytes in wanted
        )

    return holds


def candidates(utf8: bytes, rules: Sequence[LookupRule], looks_up: LooksUp) -> list[Span]:
    """Return where what a rule calls may look something up, or get another name, in order."""
    pairs = {(rule.called, rule.on) for rule in rules}
    return sorted(
        {
            place
            for called, on in pairs
            for place in occurrences(utf8, called)
            if looks_up(utf8, place) and (on is None or may_be_on(utf8, place, on.encode()))
        }
    )


def may_be_on(data: bytes, word: Span, receiver: bytes) -> bool:
    """Whether an identifier can be reached through this last word of a receiver; False is certain.

    Certain are the plain shapes on one line: in ``boat.stern.motor`` the receiver
    of ``motor`` ends in ``stern``.
    """
    before = data[max(0, word.start - _BEFORE) : word.start].rstrip(b" \t")
    if not before.endswith(b"."):
        return True
    before = before[:-1].rstrip(b" \t")
    letters = len(before)
    while letters and before[letters - 1] in LETTERS:
        letters -= 1
    return letters in (0, len(before)) or before[letters:] == receiver


def is_behind(data: bytes, word: Span, sign: re.Pattern[bytes]) -> bool:
    """Whether an identifier follows what `sign` made a pattern of; False is certain.

    Comments and types in brackets may stand between, if they are no longer than what is looked at.
    """
    return sign.search(data, max(0, word.start - _BEFORE), word.start) is not None


def behind(sign: bytes) -> re.Pattern[bytes]:
    """Return the pattern of a sign or a word that an identifier follows."""
    return re.compile(sign + _GAP)


_REFERENCE = behind(b"::")


def is_referred_to(data: bytes, word: Span) -> bool:
    """Whether an identifier is that of a reference, ``boat::motor``; False is certain."""
    return is_behind(data, word, _REFERENCE)


def without_receivers(rules: Sequence[LookupRule]) -> list[LookupRule]:
    """Return the rules as if they asked for no receiver: it may be named elsewhere."""
    return [replace(rule, on=None) for rule in rules]


def rules_for(language: str, rules: Sequence[LookupRule]) -> tuple[LookupRule, ...]:
    """Return the rules that hold for a language."""
    return tuple(rule for rule in rules if not rule.languages or language in rule.languages)
