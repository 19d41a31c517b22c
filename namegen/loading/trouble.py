"""Where the YAML reader stumbled, and the lines around that place."""

from __future__ import annotations

import re
from typing import NamedTuple

from msgspec import Struct

from namegen.loading.nodes import TextNode
from namegen.loading.sources import Source
from namegen.model.places import Related

_FIELD = re.compile(r"\s*(?:- +)*([\w.-]+): +(.*?)(?: +#.*)?\s*")


_LINES_UP = 100
"""So many lines above are looked at; a file may hold a million of comments."""


class Told(NamedTuple):
    """What is to be said, and the stretch that it is about; None: where the reader stumbled.

    ``also`` is the index of a second character that helps to understand it, and why.
    """

    message: str
    stretch: tuple[int, int] | None = None
    also: tuple[int, str] | None = None

    def related(self, source: Source) -> tuple[Related, ...]:
        """Return the second place."""
        if self.also is None:
            return ()
        at, message = self.also
        return (Related(source.place(at, at + 1), message),)


class Trouble(Struct, frozen=True):
    """Where the YAML reader stumbled.

    ``opened`` is the index where what it was reading begins: a quote, a bracket, a
    line. ``last`` is the single value that it read last.
    """

    source: Source
    at: int
    opened: int | None = None
    last: TextNode | None = None

    @property
    def sign(self) -> str:
        """The character that it stumbled over; empty at the end."""
        return self.source.text[self.at : self.at + 1]

    @property
    def line(self) -> str:
        """The line that it stumbled in."""
        return self.source.line_at(self.at)

    @property
    def before(self) -> str:
        """That line up to the place."""
        line = self.line
        return line[: len(line) - len(self.source.rest_of_line(self.at))]

    @property
    def above(self) -> tuple[int, str] | None:
        """Where the nearest line above that says something begins, and its text."""
        start = self.at - len(self.before)
        for _ in range(_LINES_UP):
            if start <= 0:
                break
            line = self.source.line_at(start - 1)
            start = self.source.start_of_line(start - 1)
            if line.strip() and not line.lstrip().startswith("#"):
                return start, line
        return None

    def same_line(self, index: int) -> bool:
        """Whether an index lies in the line of the place."""
        return self.source.start_of_line(index) == self.source.start_of_line(self.at)


def stretch_of(start: int, line: str) -> tuple[int, int]:
    """Return the stretch of a line that begins at ``start``, blanks around it left out."""
    return start + len(line) - len(line.lstrip()), start + len(line.rstrip())


def indent(line: str) -> int:
    """Return how many blanks stand in front of a line."""
    return len(line) - len(line.lstrip(" "))


def field_in(line: str) -> tuple[str, str] | None:
    """Return name and value of a line that is one field."""
    found = _FIELD.fullmatch(line)
    return (found[1], found[2]) if found else None


def in_quotes(line: str, quote: str = '"') -> str:
    """Return the field of a line as it is with quotes, led by ``: ``; empty where it has some."""
    found = field_in(line)
    if found is None or quote in found[1] or "\\" in found[1]:
        return ""
    return f": `{found[0]}: {quote}{found[1]}{quote}`"
