"""Audit: holds code against the manifests."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterable, Mapping, Sequence
from functools import cached_property

from msgspec import Struct

from namegen import checks, languages
from namegen.errors import UnusableInput
from namegen.model.derived import figures
from namegen.model.findings import Finding
from namegen.model.places import Place
from namegen.model.reports import Report
from namegen.operations.acceptances import (
    ACCEPTED_FILE,
    Key,
    accepted_bytes,
    gone_finding,
    key_of,
    read_accepted,
    without_accepted,
)
from namegen.operations.allowances import without_allowed
from namegen.operations.code_files import ALL, CodeFiles, Selection, code_files
from namegen.operations.code_reader import CodeReader, FileFacts, Literal
from namegen.operations.files import Folder
from namegen.operations.judging import Judge, JudgedFile
from namegen.operations.number_names import NumberNames
from namegen.operations.record import read_record
from namegen.operations.repairs import with_fixes
from namegen.operations.settings_check import settings_findings
from namegen.operations.two_readers import Watch, read_all
from namegen.operations.verify import sort
from namegen.operations.workspace import Workspace
from namegen.text.positions import split_lines


class Audit(Struct, frozen=True, dict=True):
    """The outcome of one audit: the report, and what each file says.

    ``found`` are the findings in code, ``taken`` those of them that are accepted;
    ``gone`` counts what is accepted but was not found again by an audit of all code.
    """

    report: Report
    found: Sequence[Finding]
    taken: Sequence[Finding]
    gone: Counter[Key]
    judged: Sequence[JudgedFile] = ()

    @cached_property
    def facts(self) -> Sequence[FileFacts]:
        """What each file says."""
        return [file.facts for file in self.judged]

    @cached_property
    def literals(self) -> Mapping[Place, Literal]:
        """The literals that look-ups get."""
        return _literals(self.judged)


def audit(
    workspace: Workspace,
    selection: Selection = ALL,
    *,
    asked: Iterable[str] = (),
    watch: Watch = iter,
) -> Audit:
    """Hold the workspace's code, or the selected part of it, against the manifests.

    ``asked`` names finding kinds that are left out unless asked for; ``watch``
    sees the files go by. A robot
    whose manifest could not be read without an error is not judged: its names
    are not known; the manifest's findings stand in the report instead.

    Raises:
        UnusableInput: a path or an entry of the settings cannot be used.
    """
    folder = seen_folder(workspace, selection)
    files = code_files(workspace, selection)
    return audit_files(workspace, files, folder, asked=asked, watch=watch)


def seen_folder(workspace: Workspace, selection: Selection) -> Folder:
    """Return the workspace's folder as the selection has it: with a text not yet on the disk."""
    if selection.text is None:
        return workspace.folder
    path, data = selection.text
    return workspace.folder.with_changes({workspace.folder.relative(path): data})


def audit_files(
    workspace: Workspace,
    files: CodeFiles,
    folder: Folder,
    *,
    asked: Iterable[str] = (),
    watch: Watch = iter,
    before: Audit | None = None,
) -> Audit:
    """Audit the given files as they are in ``folder``, which may hold edits not yet written.

    ``before`` is an audit of the same files as they are on the disk: only what the edits
    can touch is read again.
    """
    outputs = read_record(workspace.folder)
    numbers = NumberNames(f for m in workspace.manifests for f in figures(m, workspace.catalogue))
    reader = CodeReader(folder, workspace.settings.lookups, files.roots, outputs, numbers)
    judge = Judge(workspace, files)
    judged = _judged(judge, reader, watch, before)
    named = set(asked)
    found = [
        finding
        for finding in judge.together(judged, reader)
        if finding.kind in named or not checks.kinds()[finding.kind].on_request
    ]
    marked = [file.facts.path for file in judged if file.facts.marked]
    found = list(without_allowed(found, marked, folder))
    accepted = read_accepted(workspace.folder)
    lines = _lines({finding.place.path for finding in found} if accepted else (), folder)
    kept, taken, again = without_accepted(found, accepted, lines)
    faults = [
        *workspace.faults,
        *settings_findings(workspace),
        *(f for some in workspace.faults_of.values() for f in some),
    ]
    gone = accepted - again if files.all else Counter[Key]()
    idle = gone_finding(workspace.folder, gone)
    report = Report(
        sort([*faults, *with_fixes(kept, _literals(judged), folder), *([idle] if idle else [])]),
        files=len(judged),
        lookups=sum(len(file.facts.lookups) for file in judged),
        accepted=sort(taken),
        unread=tuple(files.unread),
    )
    return Audit(report, found, taken, gone, judged)


def _literals(judged: Iterable[JudgedFile]) -> dict[Place, Literal]:
    return {place: one for file in judged for place, one in file.facts.literals.items()}


def _judged(
    judge: Judge, reader: CodeReader, watch: Watch, before: Audit | None
) -> list[JudgedFile]:
    """Return each file judged by itself, read again only where the folder's edits can touch it."""
    edited = reader.folder.overlay.keys()
    earlier = before.judged if before is not None else ()
    known = {file.facts.path: file for file in earlier if file.facts.holds_after(edited)}
    paths = [path for path in judge.files.uses if path not in known]
    read = read_all(lambda path: judge.alone(reader.facts(path)), paths, watch)
    known |= {file.facts.path: file for file in read}
    return [known[path] for path in judge.files.uses]


class Accepted(Struct, frozen=True):
    """What is accepted now, and how many findings are new to a file that only shrinks."""

    findings: Sequence[Finding]
    new: int


def accept(workspace: Workspace) -> Accepted:
    """Accept what is found in the code now; return what is accepted.

    Once there is a file of accepted findings, it only shrinks: what is no longer
    found is taken out, and nothing is added.

    Raises:
        UnusableInput: the settings or the file cannot be used.
        RefusedWrite: the file cannot be written.
    """
    done = audit(workspace)
    if workspace.folder.exists(ACCEPTED_FILE):
        accepted = read_accepted(workspace.folder) - done.gone
        now = done.taken
    else:
        lines = _lines({finding.place.path for finding in done.found}, workspace.folder)
        accepted = Counter(key_of(finding, lines) for finding in done.found)
        now = done.found
    workspace.folder.write({ACCEPTED_FILE: accepted_bytes(accepted)})
    return Accepted(now, len(done.found) - len(now))


def _lines(paths: Collection[str], folder: Folder) -> dict[str, list[str]]:
    """Return the lines of the files, those that cannot be read left out."""
    found = {}
    for path in paths:
        try:
            data = folder.read(path)
            language = languages.for_path(path)
            text = language.decode(data).text if language else data.decode("utf-8-sig", "replace")
        except UnusableInput:
            continue
        found[path] = split_lines(text)
    return found
