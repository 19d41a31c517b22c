"""The accepted findings, ``namegen.accepted.json``: what a workspace lives with for now.

It lets an audit begin on old code: what is wrong already is accepted once, and
only what is new is reported. Findings are known by kind, file and the text of
their line, so that moving code changes nothing. The file only ever shrinks.
"""

from __future__ import annotations

import difflib
import json
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping

from namegen.checks.manifest import idle_acceptance
from namegen.errors import UnusableInput
from namegen.model.findings import Finding
from namegen.model.places import Place
from namegen.operations.files import Folder
from namegen.text.positions import Lines, split_lines

ACCEPTED_FILE = "namegen.accepted.json"
FORMAT = "namegen-accepted/1"

Key = tuple[str, str, str]
"""Kind, path, and the text of the line without the blanks around it."""


def key_of(finding: Finding, lines: Mapping[str, list[str]]) -> Key:
    """Return what a finding is known by."""
    place = finding.place
    text = lines.get(place.path, [])
    line = text[place.line - 1].strip() if 0 < place.line <= len(text) else ""
    return finding.kind, place.path, line


def read_accepted(folder: Folder) -> Counter[Key]:
    """Return how often each finding is accepted; empty when there is no such file.

    Raises:
        UnusableInput: the file was damaged.
    """
    if not folder.exists(ACCEPTED_FILE):
        return Counter()
    try:
        content = json.loads(folder.read(ACCEPTED_FILE))
        if content["format"] != FORMAT:
            raise KeyError(content["format"])
        rows = [(r["kind"], r["path"], r["line"], int(r["count"])) for r in content["findings"]]
    except (ValueError, KeyError, TypeError) as error:
        raise UnusableInput(
            "the accepted findings cannot be read",
            where=ACCEPTED_FILE,
            remedy="restore the file from version control, or delete it and accept anew",
        ) from error
    return Counter({(kind, path, line): count for kind, path, line, count in rows})


def without_accepted(
    findings: Iterable[Finding], accepted: Counter[Key], lines: Mapping[str, list[str]]
) -> tuple[list[Finding], list[Finding], Counter[Key]]:
    """Return the findings that are not accepted, those that are, and how often each of these is."""
    left = Counter(accepted)
    kept, taken = [], []
    for finding in findings:
        key = key_of(finding, lines)
        if left[key] > 0:
            left[key] -= 1
            taken.append(finding)
        else:
            kept.append(finding)
    return kept, taken, accepted - left


def carried(accepted: Counter[Key], texts: Mapping[str, tuple[str, str]]) -> Counter[Key]:
    """Return what is accepted, known by the lines as they are after a change of files.

    ``texts`` are the files that change, each as it was and as it will be.
    """
    renewed = {
        (path, old.strip()): new.strip()
        for path, (before, after) in texts.items()
        for old, new in _pairs(split_lines(before), split_lines(after))
    }
    moved = Counter[Key]()
    for (kind, path, line), count in accepted.items():
        moved[kind, path, renewed.get((path, line), line)] += count
    return moved


def _pairs(before: list[str], after: list[str]) -> Iterator[tuple[str, str]]:
    """Yield each line that changes with the line that stands in its place."""
    matcher = difflib.SequenceMatcher(None, before, after, autojunk=False)
    for change, start, end, new_start, new_end in matcher.get_opcodes():
        if change == "replace":
            yield from zip(before[start:end], after[new_start:new_end], strict=False)


def gone_finding(folder: Folder, gone: Counter[Key]) -> Finding | None:
    """Return the note about accepted findings that are gone, placed at the first of them."""
    if not gone:
        return None
    text = folder.read(ACCEPTED_FILE).decode("utf-8-sig", errors="replace")
    span = next((span for key, span in _rows(text) if key in gone), (0, 0))
    place = Place(ACCEPTED_FILE, *Lines(text).locate(*span))
    counts = Counter[tuple[str, str]]()
    for (kind, path, _), count in gone.items():
        counts[kind, path] += count
    rows = sorted((kind, path, count) for (kind, path), count in counts.items())
    return idle_acceptance.gone(rows, place)


def _rows(text: str) -> Iterator[tuple[Key, tuple[int, int]]]:
    """Yield each row of the file that was read already, and where its line of code stands."""
    decoder = json.JSONDecoder()
    at = text.find("{", text.find('"findings"'))
    while at >= 0:
        row, end = decoder.raw_decode(text, at)
        start = text.find('"line"', at)
        stop = text.find("\n", start, end)
        yield (row["kind"], row["path"], row["line"]), (start, end if stop < 0 else stop)
        at = text.find("{", end)


def accepted_bytes(accepted: Counter[Key]) -> bytes:
    """Return the file's content, in one stable form."""
    findings = [
        {"kind": kind, "path": path, "line": line, "count": count}
        for (kind, path, line), count in sorted(accepted.items())
        if count > 0
    ]
    content = {"format": FORMAT, "findings": findings}
    return (json.dumps(content, indent=2, ensure_ascii=False) + "\n").encode()
