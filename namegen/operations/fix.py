"""Fix: makes the edits of an audit's findings, proves them, and only then writes."""

from __future__ import annotations

import difflib
from collections import defaultdict
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from namegen import languages
from namegen.errors import RefusedWrite, UnusableInput
from namegen.model.findings import Finding, Safety
from namegen.model.places import Edit
from namegen.model.reports import Report
from namegen.operations.audit import audit_files
from namegen.operations.code_files import code_files
from namegen.operations.files import Folder
from namegen.operations.splicing import Overlap, splice
from namegen.operations.workspace import Workspace

SAFE = frozenset({Safety.SAFE})
SUGGESTED = frozenset({Safety.SAFE, Safety.SUGGESTED})


@dataclass(frozen=True, slots=True)
class Change:
    """One file before and after its edits, as bytes and as text, with how many edits."""

    path: str
    old: bytes
    new: bytes
    old_text: str
    new_text: str
    edits: int


@dataclass(frozen=True, slots=True)
class Fixed:
    """What a fix does: the changes that are proved, those that are not with the reason why.

    ``report`` is the audit as it is with the changes made.
    """

    changes: tuple[Change, ...]
    refused: tuple[tuple[str, str], ...]
    report: Report

    @property
    def edits(self) -> int:
        """How many places change."""
        return sum(change.edits for change in self.changes)


def fix(workspace: Workspace, paths: Sequence[Path], safeties: Collection[Safety]) -> Fixed:
    """Work out all fixes of the given safeties, in memory; `write` writes them.

    An edited file is audited again as it would be: a change is kept only when
    it parses, differs nowhere but in its edits, brings no new finding, and its
    own findings are gone.

    Raises:
        UnusableInput: a path or an entry of the settings cannot be used.
    """
    files = code_files(workspace, paths)
    before = audit_files(workspace, files, workspace.folder).report
    wanted = [f for f in before.findings if f.fix is not None and f.fix.safety in safeties]
    changes, refused = _changes(workspace.folder, wanted)
    while True:
        folder = workspace.folder.with_changes({path: c.new for path, c in changes.items()})
        after = audit_files(workspace, files, folder).report
        spoilt = _spoilt(before, after, changes, wanted)
        if not spoilt:
            return Fixed(tuple(changes.values()), tuple(sorted(refused.items())), after)
        for path in spoilt:
            del changes[path]
            refused[path] = "audited again with the edit, the file would not be right"


def write(workspace: Workspace, fixed: Fixed) -> None:
    """Write the changes.

    Raises:
        RefusedWrite: a file changed since it was audited, or may not be written.
            Nothing is written then, or each file has its old or its whole new content.
    """
    for change in fixed.changes:
        if workspace.folder.read(change.path) != change.old:
            raise RefusedWrite(
                "the file changed while it was being audited",
                where=change.path,
                remedy="nothing was written; run the audit again",
            )
    workspace.folder.write({change.path: change.new for change in fixed.changes})


def diff(changes: Sequence[Change]) -> Iterator[str]:
    """Yield the lines, without line ends, of a unified diff of the changes."""
    for change in changes:
        yield from difflib.unified_diff(
            change.old_text.splitlines(),
            change.new_text.splitlines(),
            f"a/{change.path}",
            f"b/{change.path}",
            lineterm="",
        )


def _changes(folder: Folder, wanted: Sequence[Finding]) -> tuple[dict[str, Change], dict[str, str]]:
    """Return the proved changes by path, and why others are refused."""
    edits: dict[str, set[Edit]] = defaultdict(set)
    for finding in wanted:
        for edit in finding.fix.edits if finding.fix else ():
            edits[edit.place.path].add(edit)
    changes: dict[str, Change] = {}
    refused: dict[str, str] = {}
    for path in sorted(edits):
        try:
            changes[path] = _change(folder, path, edits[path])
        except UnusableInput as error:
            refused[path] = error.what
    return changes, refused


def _change(folder: Folder, path: str, edits: Collection[Edit]) -> Change:
    """Return one file's change.

    Raises:
        UnusableInput: the edits contradict each other or cannot be proved right.
    """
    language = languages.for_path(path)
    if language is None:
        raise UnusableInput("its language is not known", where=path)
    old = folder.read(path)
    decoded = language.decode(old)
    try:
        text = splice(decoded.text, edits)
    except Overlap as error:
        raise UnusableInput(
            "two look-ups want the same text to be different names", where=path
        ) from error
    doubt = language.proves(decoded.text, text)
    if doubt is not None:
        raise UnusableInput(doubt, where=path)
    try:
        new = language.encode(decoded.with_text(text))
    except UnicodeError as error:
        raise UnusableInput(f"{decoded.encoding} cannot hold the name", where=path) from error
    return Change(path, old, new, decoded.text, text, len(edits))


def _spoilt(
    before: Report, after: Report, changes: Mapping[str, Change], wanted: Sequence[Finding]
) -> set[str]:
    """Return the changed files after whose edits something is wrong that was not before.

    Lines stay where they are, because a name never holds a line end; so a
    finding is the same one when file, kind, line and found text are the same.
    """
    if not changes:
        return set()
    known = {_identity(finding) for finding in before.findings}
    gone = {_identity(finding) for finding in wanted}
    spoilt: set[str] = set()
    for finding in after.findings:
        if _identity(finding) not in known or _identity(finding) in gone:
            places = [finding.place, *(related.place for related in finding.related)]
            spoilt |= {place.path for place in places} & changes.keys()
    return spoilt


def _identity(finding: Finding) -> tuple[object, ...]:
    return (finding.place.path, finding.kind, finding.place.line, finding.found, finding.expected)


