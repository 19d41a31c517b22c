"""Build: renders every output in memory, tells what differs, and writes only that."""

from __future__ import annotations

import difflib
import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from enum import Enum

from msgspec import Struct
from msgspec.structs import replace

from namegen import checks
from namegen.model.artifacts import Artifact
from namegen.model.findings import Finding
from namegen.model.places import Place
from namegen.model.reports import Report
from namegen.operations.files import Folder
from namegen.operations.output_paths import one_each
from namegen.operations.record import (
    RECORD_FILE,
    Entry,
    normalised,
    read_record,
    record_bytes,
    settled,
    text_hash,
)
from namegen.operations.rendering import misfits_of, render_all
from namegen.operations.schemes import schemes_by_robot
from namegen.operations.verify import judge, sort, stops
from namegen.operations.workspace import Workspace


class State(str, Enum):
    """How an output on disk compares with what the manifest says now."""

    CURRENT = "current"
    MISSING = "missing"
    STALE = "stale"
    EDITED = "edited by hand"
    FOREIGN = "not made by namegen"
    LEFT_OVER = "left over"
    LEFT_EDITED = "left over and edited by hand"

    @property
    def remedy(self) -> str:
        """What a person does about it."""
        return _REMEDIES[self]

    @property
    def kind(self) -> str:
        """The kind of finding that it is, if it is none to leave as it is."""
        return _KINDS.get(self, f"output-{self.value}")


_KINDS = {
    State.EDITED: "output-edited",
    State.FOREIGN: "output-foreign",
    State.LEFT_OVER: "output-left-over",
    State.LEFT_EDITED: "output-left-over",
}
_REMEDIES = {
    State.CURRENT: "nothing to do",
    State.MISSING: "run `namegen build`",
    State.STALE: "run `namegen build`",
    State.EDITED: "put the change into the manifest, then `namegen build --force` overwrites it",
    State.FOREIGN: "name another path in `to`, or move the file away; it is never overwritten",
    State.LEFT_OVER: "no manifest asks for it any more: `namegen build --tidy` deletes it",
    State.LEFT_EDITED: "no manifest asks for it any more; it is kept: delete it yourself",
}
KEPT = frozenset({State.EDITED, State.FOREIGN})
"""States of outputs that stay as they are, unless a person says otherwise."""
_LEFT = frozenset({State.LEFT_OVER, State.LEFT_EDITED})
_MADE = re.compile(rb"made[ _]by\W{0,4}namegen", re.IGNORECASE)
"""What outputs of the bundled targets say of themselves, in comments or as a field."""


class Output(Struct, frozen=True):
    """One output: its state, what is to be there (None: nothing) and what is (None: nothing)."""

    path: str
    state: State
    artifact: Artifact | None = None
    old: bytes | None = None

    def finding(self, robot: str | None) -> Finding:
        """Return what is wrong with an output that is not current."""
        message = f"This output is {self.state.value}; {self.state.remedy}."
        return checks.kinds()[self.state.kind].finding(Place(self.path), message, robot=robot)


class Plan(Struct, frozen=True):
    """What a build would do.

    ``stopped`` are the robots whose manifests have errors; ``asked`` is whether the
    settings ask for any output at all.
    """

    folder: Folder
    outputs: tuple[Output, ...]
    report: Report
    stopped: tuple[str, ...]
    record: Mapping[str, Entry]
    asked: bool = True

    @property
    def current(self) -> bool:
        """Whether every output is as the manifests want it and none was stopped."""
        return not self.stopped and not self.behind

    @property
    def behind(self) -> tuple[Output, ...]:
        """The outputs that are not current."""
        return tuple(one for one in self.outputs if one.state is not State.CURRENT)

    def robot_of(self, output: Output) -> str | None:
        """Return whose output it is; None: that of all robots."""
        if output.artifact is not None:
            return output.artifact.robot
        return self.record[output.path].robot

    def with_outputs(self, report: Report) -> Report:
        """Return a report with what is wrong with outputs among its findings."""
        found = [one.finding(self.robot_of(one)) for one in self.behind]
        return replace(report, findings=sort([*report.findings, *found]))


class Written(Struct, frozen=True):
    """What a build did: paths written, kept because of edits by hand, and removed."""

    wrote: tuple[str, ...]
    kept: tuple[str, ...]
    removed: tuple[str, ...]


NOTHING_WRITTEN = Written((), (), ())


def plan(workspace: Workspace, robots: Sequence[str] = ()) -> Plan:
    """Render the outputs of the named robots (none: all) and compare them with the disk.

    Errors in one manifest stop that robot's outputs only; errors in the
    settings or the catalogue stop all.

    Raises:
        UnusableInput: a robot or target is not known, or two outputs share a path.
        UnusableTarget: a target or template cannot be used.
        RefusedWrite: an output would land outside the workspace or on a folder.
    """
    chosen = workspace.chosen(robots)
    schemes = schemes_by_robot(workspace)
    findings: list[Finding] = list(workspace.faults)
    stopped = [path for path in workspace.broken if not robots]
    for path in stopped:
        findings += workspace.faults_of[path]
    ready = []
    for manifest in chosen:
        found = judge(workspace, manifest, schemes)
        unfit = misfits_of(workspace, manifest)
        findings += [*found, *unfit]
        if unfit or stops(found) or stops(workspace.faults):
            stopped.append(manifest.robot)
        else:
            ready.append(manifest)
    artifacts = render_all(workspace, ready, whole_fleet=not stopped and not robots)
    record = read_record(workspace.folder)
    each = one_each(artifacts, workspace)
    outputs = [_compared(workspace.folder, artifact, record) for artifact in each]
    unsettled = {*stopped} if not robots else {*stopped, *_others(workspace, robots)}
    outputs += _left_over(workspace, record, {o.path for o in outputs}, unsettled)
    files = {*workspace.broken, *(source for m in chosen for source in m.sources)}
    report = Report(sort(findings), files=len(files))
    asked = bool(workspace.settings.build)
    return Plan(workspace.folder, tuple(outputs), report, tuple(stopped), record, asked)


def write(planned: Plan, *, force: bool = False, tidy: bool = False) -> Written:
    """Write what differs; an output edited by hand only with ``force``, one of others never.

    Left-over outputs are removed with ``tidy``, and only while untouched.

    Raises:
        RefusedWrite: something cannot be written; every file keeps its old content
            or has its whole new one.
    """
    changes: dict[str, bytes] = {}
    kept, removed = [], []
    for output in planned.outputs:
        if output.state in _LEFT:
            removed += [output.path] if tidy and output.state is State.LEFT_OVER else []
        elif output.state is State.FOREIGN or (output.state is State.EDITED and not force):
            kept.append(output.path)
        elif output.state is not State.CURRENT and output.artifact is not None:
            changes[output.path] = output.artifact.text.encode()
    before, after = _records(planned, changes, kept, removed)
    folder = planned.folder
    _write_record(folder, before if changes or removed else after)
    folder.write(changes)
    for path in removed:
        folder.remove(path)
    _write_record(folder, after)
    return Written(tuple(changes), tuple(kept), tuple(removed))


def built_folder(planned: Plan) -> Folder:
    """Return the workspace's folder as a build would leave it, without writing anything."""
    return planned.folder.with_changes(
        {
            output.path: output.artifact.text.encode()
            for output in planned.outputs
            if output.artifact and output.state not in KEPT
        }
    )


def diff(outputs: Iterable[Output], *, force: bool = False) -> Iterator[str]:
    """Yield the lines, without line ends, of a unified diff of what `write` would change."""
    for output in outputs:
        if output.state in {State.CURRENT, State.FOREIGN} or output.artifact is None:
            continue
        if output.state is State.EDITED and not force:
            continue
        old = normalised(output.old or b"").decode("utf-8", errors="replace")
        source = "/dev/null" if output.old is None else f"a/{output.path}"
        yield from difflib.unified_diff(
            old.splitlines(),
            output.artifact.text.splitlines(),
            source,
            f"b/{output.path}",
            lineterm="",
        )


def _compared(folder: Folder, artifact: Artifact, record: Mapping[str, Entry]) -> Output:
    if not folder.exists(artifact.path):
        return Output(artifact.path, State.MISSING, artifact)
    old = folder.read(artifact.path)
    if normalised(old) == artifact.text.encode():
        return Output(artifact.path, State.CURRENT, artifact, old)
    entry = record.get(artifact.path)
    if entry is None:  # the record may be lost: what an output says of itself counts too
        state = State.EDITED if _MADE.search(old) else State.FOREIGN
    else:
        state = State.STALE if entry.made(text_hash(old)) else State.EDITED
    return Output(artifact.path, state, artifact, old)


def _others(workspace: Workspace, robots: Sequence[str]) -> set[str]:
    """Return the robots that this build leaves alone."""
    return {m.robot for m in workspace.manifests} - set(robots)


def _left_over(
    workspace: Workspace, record: Mapping[str, Entry], planned: set[str], unsettled: set[str]
) -> Iterator[Output]:
    """Yield recorded outputs that nothing asks for, unless their robot was not looked at."""
    for path, entry in sorted(record.items()):
        unsure = bool(unsettled) if entry.robot is None else entry.robot in unsettled
        if workspace.alone or workspace.broken or path in planned or unsure:
            continue
        if not workspace.folder.exists(path):
            continue
        old = workspace.folder.read(path)
        untouched = entry.made(text_hash(old))
        yield Output(path, State.LEFT_OVER if untouched else State.LEFT_EDITED, old=old)


def _records(
    planned: Plan, changes: Mapping[str, bytes], kept: Sequence[str], removed: Sequence[str]
) -> tuple[dict[str, Entry], dict[str, Entry]]:
    """Return the record to write before the outputs, and the one to write after them."""
    before = dict(planned.record)
    for output in planned.outputs:
        if output.artifact is None or output.path in kept:
            continue
        artifact = output.artifact
        replaced = output.path in changes and output.old is not None
        before[output.path] = Entry(
            artifact.target,
            artifact.robot,
            text_hash(artifact.text.encode()),
            text_hash(output.old or b"") if replaced else None,
        )
    after = {path: entry for path, entry in settled(before).items() if path not in removed}
    return before, after


def _write_record(folder: Folder, entries: Mapping[str, Entry]) -> None:
    data = record_bytes(entries)
    if not entries and not folder.exists(RECORD_FILE):
        return
    if not folder.exists(RECORD_FILE) or folder.read(RECORD_FILE) != data:
        folder.write({RECORD_FILE: data})
