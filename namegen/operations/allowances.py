"""Allowances: comments in code that say why a finding is right as it is.

``# namegen: allow misspelt because REASON`` holds for findings that begin on
its own line, or on the next line of code when it stands on a line by itself.
Several kinds are separated by commas.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence

from msgspec import Struct

from namegen import checks, languages
from namegen.checks.code import bare_allowance
from namegen.errors import UnusableInput
from namegen.model.findings import Finding
from namegen.model.places import Place
from namegen.operations.files import Folder
from namegen.text.likeness import nearest
from namegen.text.positions import split_lines

_ALLOWANCE = re.compile(
    r"(?:\#|//|/\*|\*)\s*(?P<text>namegen:\s*allow\b\s*(?P<kinds>[\w-]+(?:\s*,\s*[\w-]+)*)?"
    r"(?:\s+because\b\s*(?P<reason>.*?))?)\s*(?:\*/\s*)?$"
)


class Allowance(Struct, frozen=True):
    """One comment: the kinds it allows, the line it is for, and what is wrong with it."""

    place: Place
    line: int
    kinds: tuple[str, ...]
    fault: str | None


def without_allowed(
    findings: Iterable[Finding], paths: Sequence[str], folder: Folder
) -> Iterator[Finding]:
    """Yield the findings that no comment allows, and one for each comment that is amiss."""
    rows = [row for path in paths for row in allowances(path, folder)]
    sound = {
        (row.place.path, row.line, kind): row for row in rows if not row.fault for kind in row.kinds
    }
    used: set[tuple[Place, str]] = set()
    for finding in findings:
        row = sound.get((finding.place.path, finding.place.line, finding.kind))
        if row is None:
            yield finding
        else:
            used.add((row.place, finding.kind))
    for row in rows:
        idle = [kind for kind in row.kinds if (row.place, kind) not in used]
        if row.fault:
            yield bare_allowance.finding(row.place, row.fault)
        elif idle:
            yield bare_allowance.finding(
                row.place, f"allows {', '.join(idle)}, which is not found here: take it away"
            )


def allowances(path: str, folder: Folder) -> list[Allowance]:
    """Return the allowances in a file of code."""
    language = languages.for_path(path)
    try:
        data = folder.read(path)
        if language is None:
            return []
        lines = split_lines(language.decode(data).text)
    except UnusableInput:
        return []
    found = []
    for number, text in enumerate(lines, 1):
        match = _ALLOWANCE.search(text)
        if match:
            place = Place(path, number, match.start("text") + 1, number, match.end("text") + 1)
            kinds = tuple(re.split(r"\s*,\s*", match["kinds"])) if match["kinds"] else ()
            target = number if text[: match.start()].strip() else _next_code(lines, number)
            found.append(Allowance(place, target, kinds, _fault(kinds, match["reason"])))
    return found


def _next_code(lines: Sequence[str], number: int) -> int:
    """Return the number of the first line after ``number`` that is no blank or comment."""
    for later in range(number, len(lines)):
        if lines[later].strip() and not lines[later].lstrip().startswith(("#", "//", "*", "/*")):
            return later + 1
    return number


def _fault(kinds: Sequence[str], reason: str | None) -> str | None:
    if not kinds:
        return "names no kind of finding"
    for kind in kinds:
        if kind not in checks.kinds():
            best = nearest(kind, list(checks.kinds()))
            return f'names "{kind}", which is no kind of finding' + (
                f' (did you mean "{best}"?)' if best else ""
            )
    return None if reason else "gives no reason"
