"""Fix: makes the repairs of an audit in memory, proves them, and only then writes."""

from __future__ import annotations

import difflib
from collections import defaultdict
from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence

from msgspec import Struct, field

from namegen import languages
from namegen.errors import RefusedWrite, UnusableInput
from namegen.languages.edits import respelt
from namegen.model.findings import Finding, Safety
from namegen.model.places import Edit, Place
from namegen.model.reports import Report
from namegen.operations.audit import Audit, audit_files, seen_folder
from namegen.operations.code_files import Selection, code_files
from namegen.operations.files import Folder
from namegen.operations.moves import Moves
from namegen.operations.repairs import respelling_of
from namegen.operations.workspace import Workspace

SAFE = frozenset({Safety.SAFE})
SUGGESTED = frozenset({Safety.SAFE, Safety.SUGGESTED})


HIDDEN_BY_A_SLIP = frozenset({"double-lookup"})
"""What was so before a name was put right, and only could not be seen: no reason to leave it."""


class Change(Struct, frozen=True):
    """One file before and after its edits, as bytes and as text, with how many edits.

    ``spliced`` are these where they alone make the new text of the old one.
    """

    path: str
    old: bytes
    new: bytes
    old_text: str
    new_text: str
    edits: int
    spliced: tuple[Edit, ...] = ()

    @property
    def moves(self) -> Moves:
        """Where the places of the old text stand in the new one."""
        return Moves(self.old_text, self.new_text, self.spliced)


class Fixed(Struct, frozen=True):
    """What a fix does: the changes that are proved, and the places left alone with the reason.

    ``before`` and ``after`` are the audits without and with the changes. The places
    left alone are those of the files before; ``moved`` says of those that the
    changes move where they stand afterwards. ``constants`` counts the edits that write one.
    """

    changes: tuple[Change, ...]
    refused: tuple[tuple[Place, str], ...]
    before: Report
    after: Report
    moved: Mapping[Place, Place] = field(default_factory=dict)
    constants: int = 0

    def text_of(self, path: str, otherwise: bytes) -> bytes:
        """Return the new bytes of a file, or the given ones where it does not change."""
        return next((one.new for one in self.changes if one.path == path), otherwise)

    @property
    def edits(self) -> int:
        """How many places change."""
        return sum(change.edits for change in self.changes)


def fix(
    workspace: Workspace,
    selection: Selection,
    safeties: Collection[Safety],
    only: Callable[[Finding], bool] = lambda _: True,
) -> Fixed:
    """Work out all repairs of the given safeties in memory; `write` writes them.

    ``only`` tells which findings are to be mended.

    An edited file is audited again as it would be. A repair is kept only when
    the file still parses and differs nowhere else, the finding is gone, and no
    other appears on its line.

    Raises:
        UnusableInput: a path or an entry of the settings cannot be used.
    """
    files = code_files(workspace, selection)
    seen = seen_folder(workspace, selection)
    found = audit_files(workspace, files, seen)
    wanted = [f for f in found.report.findings if f.fix and f.fix.safety in safeties and only(f)]
    refused: dict[Place, str] = {}
    while True:
        kept = [finding for finding in wanted if finding.place not in refused]
        changes, doubts = _changes(seen, found, kept)
        if not doubts:
            folder = seen.with_changes({c.path: c.new for c in changes})
            after = found.report
            if changes:
                after = audit_files(workspace, files, folder, before=found).report
            doubts = _spoilt(found.report, after, kept)
        if not doubts:
            moves = {change.path: change.moves for change in changes}
            moved = {at: moves[at.path].forward(at) for at in refused if at.path in moves}
            left = tuple(sorted(refused.items()))
            return Fixed(tuple(changes), left, found.report, after, moved)
        refused |= doubts


def write(workspace: Workspace, fixed: Fixed) -> None:
    """Write the changes.

    Raises:
        RefusedWrite: a file changed since it was audited, or may not be written.
            Each file then has its old or its whole new content.
    """
    write_changes(workspace.folder, fixed.changes)


def write_changes(folder: Folder, changes: Sequence[Change]) -> None:
    """Write changes, if every file is still as it was read.

    Raises:
        RefusedWrite: one is not, or may not be written.
    """
    for change in changes:
        if folder.read(change.path) != change.old:
            raise RefusedWrite(
                "the file changed while it was being read",
                where=change.path,
                remedy="nothing was written; run the command again",
            )
    folder.write({change.path: change.new for change in changes})


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


def one_each(changes: Iterable[Change]) -> Iterator[Change]:
    """Yield the changes of each file, made one after the other, as one."""
    by_path: dict[str, Change] = {}
    for now in changes:
        one = by_path.get(now.path)
        by_path[now.path] = (
            now
            if one is None
            else Change(
                now.path, one.old, now.new, one.old_text, now.new_text, one.edits + now.edits
            )
        )
    yield from by_path.values()


def _changes(
    folder: Folder, found: Audit, wanted: Sequence[Finding]
) -> tuple[list[Change], dict[Place, str]]:
    """Return the changes by file, and the places whose repair cannot be proved with the reason."""
    by_path: dict[str, list[Finding]] = defaultdict(list)
    for finding in wanted:
        by_path[finding.place.path].append(finding)
    changes, doubts = [], {}
    for path, findings in sorted(by_path.items()):
        try:
            changes.append(_change(folder, path, found, findings))
        except UnusableInput as error:
            doubts.update(dict.fromkeys((finding.place for finding in findings), error.what))
    return changes, doubts


def _change(folder: Folder, path: str, found: Audit, findings: Sequence[Finding]) -> Change:
    """Return one file's change.

    Raises:
        UnusableInput: the repairs contradict each other or cannot be proved right.
    """
    language = languages.for_path(path)
    if language is None:
        raise UnusableInput("its language is not known", where=path)
    wanted = {respelling_of(finding, found.literals, language) for finding in findings}
    respellings = sorted((r for r in wanted if r is not None), key=lambda r: r.literal.span)
    spans = [respelling.literal.span for respelling in respellings]
    if len(set(spans)) < len(spans):
        raise UnusableInput("two look-ups want one text to be different names", where=path)
    old = folder.read(path)
    decoded = language.decode(old)
    after = respelt(decoded.utf8, respellings)
    objection = language.objection(decoded.utf8, after, respellings)
    if objection is not None:
        raise UnusableInput(objection, where=path)
    text = after.decode("utf-8")
    edits = tuple(edit for finding in findings if finding.fix for edit in finding.fix.edits)
    new = decoded.encode(text)
    return Change(path, old, new, decoded.text, text, len(respellings), edits)


def _spoilt(before: Report, after: Report, kept: Sequence[Finding]) -> dict[Place, str]:
    """Return the repairs after which something is wrong that was not before.

    Lines stay where they are, because a name never holds a line end; so a
    finding is the same one when path, line, kind, found and expected text are.
    """
    known = {_identity(finding) for finding in before.findings} - {_identity(f) for f in kept}
    doubts: dict[Place, str] = {}
    for finding in after.findings:
        if _identity(finding) in known or finding.kind in HIDDEN_BY_A_SLIP:
            continue
        places = [finding.place, *(related.place for related in finding.related)]
        lines = {(place.path, place.line) for place in places}
        for repaired in kept:
            if (repaired.place.path, repaired.place.line) in lines:
                doubts[repaired.place] = f"with the new name there would be {finding.kind}"
    return doubts


def _identity(finding: Finding) -> tuple[object, ...]:
    place = finding.place
    return (place.path, place.line, finding.kind, finding.found, finding.expected)
