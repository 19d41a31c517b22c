"""Lines of source with carets below them, as the text report shows them."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct, field

from namegen.model.places import Place
from namegen.model.reports import SourceText
from namegen.reports.columns import strip
from namegen.reports.paint import Paint
from namegen.text.positions import split_lines


class Excerpts(Struct):
    """Shows places of source files; each file is asked for and taken apart once."""

    source: SourceText
    paint: Paint
    width: int
    _files: dict[str, Sequence[str]] = field(default_factory=dict)

    def show(self, place: Place, margin: str) -> list[str]:
        """Return the line of a place with its number and carets; nothing where there is none.

        Of a place over several lines the first is shown, with carets to its end.
        """
        line = self._line(place)
        if line is None:
            return []
        start = place.column - 1
        end = place.end_column - 1 if place.end_line == place.line else len(line)
        gutter = f"{margin}{place.line:>5} | "
        shown = strip(line, start, end, max(self.width - len(gutter), 20))
        below = " " * (len(gutter) - 2) + "| " + " " * shown.start
        carets = "^" * max(shown.end - shown.start, 1)
        note = f" up to line {place.end_line}" if place.end_line > place.line else ""
        return [
            (self.paint.faint(gutter) + shown.text).rstrip(),
            self.paint.faint(below) + self.paint.strong(carets) + note,
        ]

    def _line(self, place: Place) -> str | None:
        if place.path not in self._files:
            text = self.source(place.path)
            self._files[place.path] = [] if text is None else split_lines(text)
        lines = self._files[place.path]
        return lines[place.line - 1] if 1 <= place.line <= len(lines) else None
