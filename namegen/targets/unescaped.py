"""Manifest text on its way into a generated file: it cannot get there without an escape."""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache, total_ordering


class UnescapedText(Exception):
    """A template puts manifest text out without saying how to escape it."""

    def __init__(self) -> None:
        super().__init__("text of the manifest is put out without an escape")


class NotText(TypeError):
    """A value stands where text should; the message is for the author of the template."""


@total_ordering
class Unescaped:
    """Text that somebody typed. Anything may stand in it, so only a filter turns it into a string.

    Not a subclass of ``str`` on purpose: joining, formatting or printing it in
    a template fails instead of letting the raw text through. Comparing it,
    sorting it, asking its length and whether it is empty are safe.
    """

    __slots__ = ("_text",)

    def __init__(self, text: str) -> None:
        self._text = text

    def __str__(self) -> str:
        raise UnescapedText

    def __format__(self, spec: str) -> str:
        raise UnescapedText

    def __add__(self, other: object) -> str:
        raise UnescapedText

    __radd__ = __mod__ = __add__

    def __repr__(self) -> str:
        return "<text of the manifest>"

    def __eq__(self, other: object) -> bool:
        return self._text == raw(other) if isinstance(other, Unescaped | str) else NotImplemented

    def __lt__(self, other: object) -> bool:
        return self._text < raw(other) if isinstance(other, Unescaped | str) else NotImplemented

    def __hash__(self) -> int:
        return hash(self._text)

    def __bool__(self) -> bool:
        return bool(self._text)

    def __len__(self) -> int:
        return len(self._text)


def raw(value: object) -> str:
    """Return the text behind a value of the template data; an escape is the only caller."""
    if isinstance(value, Unescaped):
        return value._text
    if isinstance(value, str):
        return value
    from namegen.targets.wording import kind_of  # it knows this module

    str(value)  # a name that is not there says so itself
    raise NotText(f"an escape takes text, not {kind_of(value)}")


def unwrapping(function: Callable[..., str]) -> Callable[[object], str]:
    """Return an escape as a filter that takes manifest text beside other values."""
    known = lru_cache(maxsize=4096)(function)

    def unwrapped(value: object) -> str:
        # A file says each name several times, and a robot has several files.
        return known(value._text) if type(value) is Unescaped else function(value)

    return unwrapped
