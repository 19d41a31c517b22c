"""Where a line that imports a name goes: in order among the others, or below what is above them."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from msgspec import Struct

from namegen.errors import UnusableInput
from namegen.languages.sources import Source, occurrences
from namegen.model.places import Span

Edit = tuple[Span, bytes]
_LINE_END = re.compile(rb"[ \t]*(?://[^\r\n]*|/\*(?:[^*\r\n]|\*(?!/))*\*/[ \t]*)?(?:\r\n?|\n)")
"""What may stand behind a declaration in its line so that another can follow below it."""


class ImportLine(Struct, frozen=True):
    """An import that is there: the name that it imports, and where it stands."""

    name: str
    span: Span


def imported(
    source: Source, name: str, end: str, lines: Sequence[ImportLine], above: int | None
) -> tuple[str, list[Edit]]:
    """Return how a class is called in a file that imports it from now on, and the edit for that.

    Where its simple name is taken, it is called by its whole name and nothing is imported.
    ``end`` is what an import ends with; for ``above`` see `added`.

    Raises:
        UnusableInput: the first word of its whole name is taken as well.
    """
    simple, first = name.rpartition(".")[2], name.partition(".")[0]
    if not any(_in_code(source, simple)):
        return simple, [added(source.data, name, f"import {name}{end}", lines, above)]
    # A variable of that name hides the package.
    hidden = (source.data[span.end :].lstrip()[:1] != b"." for span in _in_code(source, first))
    if first == name or any(hidden):
        raise UnusableInput(f"{simple} and {first} already mean something else here")
    return name, []


def _in_code(source: Source, word: str) -> Iterator[Span]:
    """Yield where a word stands in code, even where no tree shows it, in no comment or text."""
    for span in occurrences(source.data, word):
        node = source.root.descendant_for_byte_range(span.start, span.end)
        if node is None or not ("comment" in node.type or "string" in node.type):
            yield span


def added(
    data: bytes, name: str, statement: str, lines: Sequence[ImportLine], above: int | None
) -> Edit:
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
