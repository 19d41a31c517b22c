"""Audit: holds code against the manifests."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from namegen import checks
from namegen.checks.code import not_checkable, unreadable
from namegen.checks.naming import judge_lookup
from namegen.model.findings import Finding
from namegen.model.manifests import Manifest
from namegen.model.places import Place
from namegen.model.reports import Report
from namegen.model.views import CodeView, NameQuestion, ResolvedLookup
from namegen.operations.code_files import CodeFiles, Use, code_files
from namegen.operations.code_reader import CodeReader, FileFacts, Literal
from namegen.operations.files import Folder
from namegen.operations.record import read_record
from namegen.operations.repairs import with_fixes
from namegen.operations.schemes import schemes_by_robot
from namegen.operations.verify import sort
from namegen.operations.workspace import Workspace

UNPROVEN = ("unreadable", "not-checkable")
"""Kinds of findings after which silence about a device proves nothing."""


@dataclass(frozen=True)
class Audit:
    """The outcome of one audit: the report, and the literals that its findings point at."""

    report: Report
    literals: Mapping[Place, Literal]


def audit(workspace: Workspace, paths: Sequence[Path] = (), *, asked: Iterable[str] = ()) -> Audit:
    """Hold the workspace's code, or those parts of it at ``paths``, against the manifests.

    ``asked`` names finding kinds that are left out unless asked for. A robot
    whose manifest could not be read without an error is not judged: its names
    are not known; the manifest's findings stand in the report instead.

    Raises:
        UnusableInput: a path or an entry of the settings cannot be used.
    """
    return audit_files(workspace, code_files(workspace, paths), workspace.folder, asked=asked)


def audit_files(
    workspace: Workspace, files: CodeFiles, folder: Folder, *, asked: Iterable[str] = ()
) -> Audit:
    """Audit the given files as they are in ``folder``, which may hold edits not yet written."""
    reader = CodeReader(folder, workspace.settings.lookups, files.roots)
    sound = {m.robot: m for m in workspace.manifests if workspace.sound(m)}
    facts = [reader.facts(path) for path in files.uses]
    findings = list(workspace.faults)
    for found in workspace.faults_of.values():
        findings += found
    for file in facts:
        findings += _judged_alone(workspace, file, files.uses[file.path], sound)
    meant = {finding.expected for finding in findings if finding.expected}
    for robot, code in _by_robot(files, facts, sound).items():
        findings += _judged_together(workspace, code, sound[robot], meant, reader)
    named = set(asked)
    kept = [f for f in findings if f.kind in named or not checks.kinds()[f.kind].on_request]
    lookups = sum(len(file.lookups) for file in facts)
    report = Report(
        sort(with_fixes(kept, reader.literals, folder)), files=len(facts), lookups=lookups
    )
    return Audit(report, reader.literals)


def _judged_alone(
    workspace: Workspace, file: FileFacts, uses: Sequence[Use], sound: Mapping[str, Manifest]
) -> Iterator[Finding]:
    """Yield what is wrong with each look-up by itself, on all robots that the file runs on."""
    for place, why in file.unreadable:
        yield unreadable.finding(place, why)
    known = [use for use in uses if use.robot in sound]
    for lookup in file.lookups if known else ():
        if lookup.text is None:
            yield not_checkable.finding(lookup)
            continue
        questions = [
            NameQuestion(
                lookup, lookup.text, sound[use.robot], use.setup or None, workspace.manifests
            )
            for use in known
        ]
        finding = judge_lookup(lookup, questions)
        if finding is not None:
            yield finding


@dataclass
class _Code:
    """All code of one robot; ``whole`` as long as every name in it is known."""

    lookups: list[ResolvedLookup] = field(default_factory=list)
    paths: list[str] = field(default_factory=list)
    whole: bool = True


def _by_robot(
    files: CodeFiles, facts: Sequence[FileFacts], sound: Mapping[str, Manifest]
) -> dict[str, _Code]:
    """Return the code of each robot, taken together from all entries that name it."""
    found: dict[str, _Code] = {}
    for file in facts:
        unknown = any(lookup.text is None for lookup in file.lookups)
        for robot in {use.robot for use in files.uses[file.path]} & sound.keys():
            code = found.setdefault(robot, _Code())
            code.lookups += file.lookups
            code.paths.append(file.path)
            code.whole &= robot in files.whole and not file.unreadable and not unknown
    return found


def _judged_together(
    workspace: Workspace, code: _Code, robot: Manifest, meant: set[str], reader: CodeReader
) -> Iterator[Finding]:
    """Yield what is wrong with the look-ups of one robot taken together.

    A device that a wrong name surely meant counts as used: the wrong name is
    reported already.
    """
    mentioned = meant & robot.devices.keys()
    if code.whole:
        mentioned |= _constants_used(workspace, code, robot, reader)
    view = CodeView(robot, None, code.lookups, frozenset(mentioned), code.whole)
    for check in checks.code_checks():
        for finding in check(view):
            if not checks.accepted(finding, robot):
                yield finding


def _constants_used(
    workspace: Workspace, code: _Code, robot: Manifest, reader: CodeReader
) -> set[str]:
    """Return the devices that no look-up names but whose generated constant the code uses."""
    named = {lookup.text for lookup in code.lookups}
    schemes = schemes_by_robot(workspace).get(robot.robot, ())
    constants = {
        scheme.constant(device): device.name
        for device in robot.devices.values()
        if device.name not in named
        for scheme in schemes
    }
    generated = read_record(workspace.folder) if constants else {}
    found: set[str] = set()
    for path in code.paths if constants else ():
        if path not in generated:
            found |= reader.mentions(path, tuple(constants))
    return {constants[name] for name in found}
