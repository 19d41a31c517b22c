"""Verify: everything that is wrong in the manifests, in one run."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from msgspec.structs import replace

from namegen import checks
from namegen.checks.manifest import idle_acceptance
from namegen.model.findings import Finding, Severity
from namegen.model.identifiers import NamingScheme
from namegen.model.manifests import Manifest
from namegen.model.reports import Report
from namegen.model.views import RobotView
from namegen.operations.schemes import schemes_by_robot
from namegen.operations.settings_check import settings_findings
from namegen.operations.workspace import Workspace


def verify(workspace: Workspace, robots: Sequence[str] = ()) -> Report:
    """Return all that is wrong in the named robots' manifests, the catalogue and the settings.

    Raises:
        UnusableInput: a robot is not known.
        UnusableTarget: a target that the settings name cannot be used.
    """
    chosen = workspace.chosen(robots)
    findings = [*workspace.faults, *settings_findings(workspace)]
    for check in checks.catalogue_checks():
        findings += check(workspace.catalogue)
    for path in workspace.broken:
        findings += workspace.faults_of[path]
    schemes = schemes_by_robot(workspace)
    for manifest in chosen:
        findings += judge(workspace, manifest, schemes)
    if workspace.settings.build:
        from namegen.operations.rendering import misfits_of  # loads what an audit can spare

        for manifest in chosen:
            findings += misfits_of(workspace, manifest)
    files = {source for manifest in chosen for source in manifest.sources}
    files |= {workspace.settings.path, *workspace.broken}
    if workspace.catalogue.path:
        files.add(workspace.catalogue.path)
    return Report(sort(findings), files=len(files))


def judge(
    workspace: Workspace, manifest: Manifest, schemes: Mapping[str, tuple[NamingScheme, ...]]
) -> list[Finding]:
    """Return the faults of one manifest's text and everything its checks find."""
    view = RobotView(
        manifest, workspace.catalogue, workspace.settings.names, schemes.get(manifest.robot, ())
    )
    judged = [finding for check in checks.manifest_checks() for finding in check(view)]
    found = _once_for_cut_texts(workspace.faults_of[manifest.path], judged)
    kept = [finding for finding in found if not checks.accepted(finding, manifest)]
    if workspace.sound(manifest) and not stops(workspace.faults):
        kept += idle_acceptance.idle(found, manifest, "manifest")
    return kept


def _once_for_cut_texts(faults: Sequence[Finding], judged: Sequence[Finding]) -> list[Finding]:
    """Return both without what only follows from a text that a comment cut off.

    What is left of such a text was never meant as it stands; where that is an
    error, cutting it is one.
    """
    cut = {_start(fault) for fault in faults if fault.kind == "cut-by-comment"}
    grave = {_start(finding) for finding in judged if finding.severity is Severity.ERROR} & cut
    found = [
        replace(fault, severity=Severity.ERROR) if _start(fault) in grave else fault
        for fault in faults
    ]
    return [*found, *(finding for finding in judged if _start(finding) not in cut)]


def _start(finding: Finding) -> tuple[str, int, int]:
    return finding.place.path, finding.place.line, finding.place.column


def stops(findings: Iterable[Finding]) -> bool:
    """Whether there is an error among the findings, so that nothing may be generated."""
    return any(finding.severity is Severity.ERROR for finding in findings)


def sort(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Return the findings by place, each said once.

    Robots that share an included file would otherwise repeat what is wrong in it.
    """
    once = {(finding.kind, finding.place, finding.message): finding for finding in findings}
    return tuple(sorted(once.values(), key=lambda f: (f.place, f.kind, f.message)))
