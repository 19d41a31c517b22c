"""Where a line that imports a name goes: in order among the others, or below what is above them."""

from __future__ import annotations

import re
from collections.abc import Sequence

from msgspec import Struct

from namegen.model.places import Span

_LINE_END = re.compile(rb"[ \t]*(?://[^\r\n]*|/\*(?:[^*\r\n]|\*(?!/))*\*/[ \t]*)?(?:\r\n?|\n)")
"""What may stand behind a declaration in its line so that another can follow below it."""


class ImportLine(Struct, frozen=True):
    """An import that is there: the name that it imports, and where it stands."""

    name: str
    span: Span


def added(
    data: bytes, name: str, statement: str, lines: Sequence[ImportLine], above: int | None
) -> tuple[Span, bytes]:
    """Return the edit that adds an import of a name.

    ``above`` is where what must stand above all imports ends, such as the package; None
    where there is nothing.
    """
    first = re.search(rb"\r\n?|\n", data)
    end = first[0] if first else b"\n"
    line = statement.encode() + end
    later = next((one for one in lines if one.name > name), None)
    if later is not None:
        return Span(later.span.start, later.span.start), line
    below = lines[-1].span.end if lines else above
    if below is None:
        return Span(0, 0), line + end
    behind = _LINE_END.match(data, below)
    at = behind.end() if behind else below
    blank = end if not lines else b""
    return Span(at, at), (b"" if behind else end) + blank + line
