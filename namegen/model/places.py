"""Where a text stands: a file, and lines and columns in it."""

from __future__ import annotations

from msgspec import Struct


class Place(Struct, frozen=True, order=True):
    """A stretch of one file.

    ``path`` is relative to the workspace with ``/``. Lines and columns count
    from 1, columns in code points; the end is exclusive. A line ends at LF, CR
    LF or a lone CR. A byte order mark is not part of the text.
    """

    path: str
    line: int = 1
    column: int = 1
    end_line: int = 1
    end_column: int = 1

    def __str__(self) -> str:
        return f"{self.path}:{self.line}:{self.column}"


class Span(Struct, frozen=True, order=True):
    """A stretch of one text in UTF-8 bytes, as parsers give it; the end is exclusive."""

    start: int
    end: int


class Related(Struct, frozen=True):
    """A second place that helps to understand a finding ("plugged in here")."""

    place: Place
    message: str


class Edit(Struct, frozen=True):
    """The text at ``place`` is to become ``text``; nothing else of the file changes."""

    place: Place
    text: str
