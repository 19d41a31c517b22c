"""The report for people: each finding with its line, a caret, and what to do."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Iterable, Mapping, Sequence
from itertools import groupby

from msgspec import Struct

from namegen.model.findings import Finding, FindingKind, Safety, Severity
from namegen.model.places import Related
from namegen.model.reports import Report, SourceText
from namegen.reports.columns import width_of
from namegen.reports.excerpts import Excerpts
from namegen.reports.paint import Paint
from namegen.text.differences import marks
from namegen.text.terminal import escaped, printable

NAME = "text"
_MOST_LINES = 3
"""So many lines are shown of one fault that repeats within a file, and of related places."""
_MANY = 10
"""From so many findings on, a table of kinds stands at the end."""
_QUOTED = re.compile(r'"[^"]*"|`[^`]*`')


def render(
    report: Report,
    source: SourceText,
    kinds: Mapping[str, FindingKind],
    *,
    width: int = 80,
    colour: bool = False,
) -> str:
    """Return the report for a screen of ``width`` columns."""
    del kinds
    width = max(40, min(width, 120))
    page = _Page(Paint(colour), width, Excerpts(source, Paint(colour), width))
    lines: list[str] = []
    by_path: dict[str, list[Finding]] = {}
    for finding in report.findings:
        by_path.setdefault(finding.place.path, []).append(finding)
    for path, findings in by_path.items():
        lines += page.file(path, findings)
    return "\n".join([*lines, *page.summary(report)]) + "\n"


class _Page(Struct):
    """Lays findings out."""

    paint: Paint
    width: int
    excerpts: Excerpts

    def file(self, path: str, findings: Sequence[Finding]) -> list[str]:
        """Return the part of one file: a heading, then its faults one by one."""
        title = f"{printable(path)}: {_counts(findings)}"
        lines = [self.paint.strong(title), "-" * min(width_of(title), self.width), ""]
        for alike in _alike(findings):
            lines += [*self.fault(alike), ""]
        return lines

    def fault(self, alike: Sequence[Finding]) -> list[str]:
        """Return one fault, with every place of the file where it is found."""
        first = alike[0]
        head = self.paint.severity(f"{first.severity.value} {first.kind}", first.severity)
        lines = [f"{head} at {printable(str(first.place))}"]
        places = list(dict.fromkeys(finding.place for finding in alike))
        for place in places[:_MOST_LINES]:
            lines += self.excerpts.show(place, "")
        if len(places) > _MOST_LINES:
            rest = [f"{place.line}:{place.column}" for place in places[_MOST_LINES:]]
            lines += self.wrapped("The same at " + ", ".join(rest) + ".", "    ")
        lines += self.wrapped(first.message, "  ")
        lines += self.compared(first)
        return lines + self.related(r for finding in alike for r in finding.related)

    def wrapped(self, message: str, margin: str) -> list[str]:
        """Return a message in lines; what stands in quotes is never broken at a blank."""
        kept = _QUOTED.sub(lambda name: name[0].replace(" ", "\xa0"), printable(message))
        lines = textwrap.wrap(
            kept,
            self.width,
            initial_indent=margin,
            subsequent_indent=margin,
            break_long_words=False,
            break_on_hyphens=False,
        )
        return [line.replace("\xa0", " ") for line in lines]

    def compared(self, finding: Finding) -> list[str]:
        """Return the found and the expected text below one another, differences marked."""
        found, expected = finding.found, finding.expected
        if found is None or expected is None or found == expected:
            return []
        labels = ("    found:    ", "    expected: ")
        shown = printable(found), printable(expected)
        if max(map(width_of, shown)) + len(labels[0]) > self.width:
            return []
        below = [
            _spread(text, line)
            for text, line in zip((found, expected), marks(found, expected), strict=True)
        ]
        if below[0] == below[1]:
            below[0] = ""
        lines = []
        for label, text, line in zip(labels, shown, below, strict=True):
            lines.append(label + text)
            if line:
                lines.append(" " * len(label) + self.paint.strong(line))
        return lines

    def related(self, places: Iterable[Related]) -> list[str]:
        """Return the second places, each with its line."""
        unique = list(dict.fromkeys(places))
        lines = []
        for related in unique[:_MOST_LINES]:
            lines.append(f"  {printable(related.message)}: {printable(str(related.place))}")
            lines += self.excerpts.show(related.place, "  ")
        more = len(unique) - _MOST_LINES
        return [*lines, f"  and {more} more related places"] if more > 0 else lines

    def summary(self, report: Report) -> list[str]:
        """Return how much was found in how much that was read, and what can be done at once."""
        read = f" in {_plural(report.files, 'file')}" if report.files else ""
        if report.lookups:
            read += f" with {_plural(report.lookups, 'look-up')}"
        left_out = [
            *(self.wrapped(_accepted(report.accepted), "") if report.accepted else ()),
            *(self.wrapped(not_read(report.unread), "") if report.unread else ()),
        ]
        if not report.findings and not report.files:
            return ["Nothing was read.", *left_out]
        if not report.findings:
            return [f"Nothing {'new' if report.accepted else 'wrong'}{read}.", *left_out]
        lines = [self.paint.strong(f"{_counts(report.findings)}{read}."), *left_out]
        if len(report.findings) >= _MANY:
            lines += self.wrapped(_by_kind(report.findings), "  ")
        safe, suggested = (_fixes(report.findings, safety) for safety in Safety)
        if safe:
            lines += self.wrapped(f"`namegen audit --fix` mends {safe} of them.", "")
        if suggested:
            advice = f"`--fix-suggested` mends {suggested} more; read each before you keep it."
            lines += self.wrapped(advice, "")
        hint = f"`namegen explain {report.findings[0].kind}` tells more about a kind of finding."
        return lines + self.wrapped(hint, "")


def not_read(paths: Sequence[str]) -> str:
    """Return that these files are in languages that are not read, and which they are."""
    endings = ", ".join(sorted({path[path.rindex(".") :].lower() for path in paths}))
    shown = ", ".join(printable(path) for path in paths[:_MOST_LINES])
    more = f" and {len(paths) - _MOST_LINES} more" if len(paths) > _MOST_LINES else ""
    files = f"{_plural(len(paths), 'file')} of code {'was' if len(paths) == 1 else 'were'} not read"
    return f"{files}, for the language ({endings}): {shown}{more}. Look the names in there over."


def _accepted(findings: Sequence[Finding]) -> str:
    more = f"{_plural(len(findings), 'finding')} {'is' if len(findings) == 1 else 'are'} not shown"
    return f"{more}, accepted by `namegen audit --accept`: {_counts(findings)}."


def _alike(findings: Sequence[Finding]) -> list[list[Finding]]:
    """Return findings of one file that say the same together, in the order of the first."""
    groups: dict[tuple[object, ...], list[Finding]] = {}
    for finding in findings:
        key = (finding.kind, finding.severity, finding.message, finding.found, finding.expected)
        groups.setdefault(key, []).append(finding)
    return list(groups.values())


def _spread(text: str, line: str) -> str:
    """Return marks made for one column a character, for letters that take two or none."""
    shown = "".join(map(escaped, text))
    return "".join(
        mark * width_of(char) for char, mark in zip(shown, line.ljust(len(shown)), strict=True)
    ).rstrip()


def _counts(findings: Sequence[Finding]) -> str:
    """Return how many errors, warnings and notes there are, leaving out what there is none of."""
    counts = [
        (sum(finding.severity is severity for finding in findings), severity.value)
        for severity in Severity
    ]
    return ", ".join(_plural(count, word) for count, word in counts if count)


def _by_kind(findings: Sequence[Finding]) -> str:
    names = sorted(finding.kind for finding in findings)
    counts = sorted(((len(list(same)), name) for name, same in groupby(names)), key=lambda c: -c[0])
    return ", ".join(f"{name} {count}" for count, name in counts)


def _fixes(findings: Sequence[Finding], safety: Safety) -> int:
    return sum(finding.fix is not None and finding.fix.safety is safety for finding in findings)


def _plural(count: int, word: str) -> str:
    return f"{count} {word}" if count == 1 else f"{count} {word}s"
