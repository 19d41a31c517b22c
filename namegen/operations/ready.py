"""Ready: the last look before a robot is switched on; manifests, outputs and code in one."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from msgspec import Struct
from msgspec.structs import replace

from namegen.model.addresses import addressed
from namegen.model.findings import Finding, Severity
from namegen.model.manifests import Manifest
from namegen.model.reports import Report
from namegen.model.sheet_mark import sheet_mark
from namegen.operations import build
from namegen.operations.audit import audit_files
from namegen.operations.build import Output, Plan
from namegen.operations.code_files import CodeFiles, code_files
from namegen.operations.record import read_record
from namegen.operations.two_readers import Watch
from namegen.operations.verify import sort, verify
from namegen.operations.workspace import Workspace


class RobotState(Struct, frozen=True):
    """What stands between one robot and being switched on, and what to check on it.

    ``setup`` is None for a robot without setups; ``mark`` must stand on its printed
    sheet. ``has_code`` is whether any code of it was audited that namegen did not make.
    """

    robot: str
    errors: int
    warnings: int
    behind: tuple[Output, ...]
    setup: str | None
    mark: str
    has_code: bool
    accepted: tuple[Finding, ...]
    """Errors in its code that were accepted once: nothing stands between, yet they are there."""
    unread: tuple[str, ...]
    """Its code in languages that are not read."""

    @property
    def ready(self) -> bool:
        """Whether manifest, outputs and code agree."""
        return not (self.errors or self.warnings or self.behind)


class Readiness(Struct, frozen=True):
    """All findings of `verify` and `audit`, and the state of each robot."""

    report: Report
    robots: tuple[RobotState, ...]
    planned: Plan
    unread: tuple[str, ...]
    """Paths of manifests that could not be made out: nothing is known of their robots."""

    @property
    def ready(self) -> bool:
        """Whether every robot is ready."""
        clean = self.report.clean and not self.planned.behind and not self.unread
        return clean and all(robot.ready for robot in self.robots)

    @property
    def whole(self) -> Report:
        """The report, with what is wrong with outputs among its findings."""
        return self.planned.with_outputs(self.report)


def ready(workspace: Workspace, robots: Sequence[str] = (), watch: Watch = iter) -> Readiness:
    """Look at manifests, outputs and code of the named robots (none: all). Nothing is written.

    Code that is written for no setup in particular is held against the selected one.

    Raises:
        UnusableInput: a robot is not known, or the settings cannot be used.
        UnusableTarget: a target cannot be used.
        RefusedWrite: an output would land outside the workspace or on a folder.
    """
    chosen = workspace.chosen(robots)
    verified, planned = verify(workspace, robots), build.plan(workspace, robots)
    files = _as_selected(code_files(workspace), workspace)
    if robots:
        files = _of(files, robots)
    audited = audit_files(workspace, files, workspace.folder, watch=watch).report
    concerned = _Concerned(workspace, chosen, files)
    found = [*verified.findings, *audited.findings]
    if robots:
        found = [one for one in found if concerned.by(one)]
    report = Report(
        sort(found),
        verified.files + audited.files,
        audited.lookups,
        accepted=audited.accepted,
        unread=audited.unread,
    )
    return Readiness(
        report,
        tuple(
            _state(addressed(manifest, workspace.catalogue), report, planned, concerned)
            for manifest in chosen
        ),
        planned,
        () if robots else workspace.broken,
    )


def _as_selected(files: CodeFiles, workspace: Workspace) -> CodeFiles:
    """Return the files with the setup that is selected on the machine, where they name none."""
    selected = {manifest.robot: manifest.selected or "" for manifest in workspace.manifests}
    uses = {
        path: tuple(replace(u, setup=u.setup or selected.get(u.robot, "")) for u in some)
        for path, some in files.uses.items()
    }
    return replace(files, uses=uses)


def _of(files: CodeFiles, robots: Iterable[str]) -> CodeFiles:
    """Return the files that run on the named robots, as far as they do."""
    named = set(robots)
    uses = {path: tuple(u for u in some if u.robot in named) for path, some in files.uses.items()}
    return replace(
        files,
        uses={path: some for path, some in uses.items() if some},
        unread={p: some for p, some in files.unread.items() if named & {u.robot for u in some}},
        whole=files.whole & named,
        all=False,
    )


class _Concerned:
    """Tells which of the chosen robots a finding is about."""

    def __init__(self, workspace: Workspace, chosen: Sequence[Manifest], files: CodeFiles) -> None:
        self.chosen = {manifest.robot for manifest in chosen}
        outputs = read_record(workspace.folder)
        own = [uses for path, uses in files.uses.items() if path not in outputs]
        self.with_code = {use.robot for uses in own for use in uses}
        self.unread = files.unread
        self.of_file: dict[str, set[str]] = {path: set() for path in workspace.broken}
        for manifest in workspace.manifests:
            for path in manifest.sources:
                self.of_file.setdefault(path, set()).add(manifest.robot)
        for path, uses in files.uses.items():
            self.of_file.setdefault(path, set()).update(use.robot for use in uses)

    def by(self, finding: Finding) -> set[str]:
        """Return the robots; what belongs to no robot's file concerns them all."""
        if finding.robot is not None:
            return self.chosen & {finding.robot}
        return self.chosen & self.of_file.get(finding.place.path, self.chosen)


def _state(manifest: Manifest, report: Report, planned: Plan, concerned: _Concerned) -> RobotState:
    robot = manifest.robot
    mine = [one.severity for one in report.findings if robot in concerned.by(one)]
    return RobotState(
        robot,
        mine.count(Severity.ERROR),
        mine.count(Severity.WARNING),
        tuple(output for output in planned.behind if planned.robot_of(output) in {robot, None}),
        manifest.selected,
        sheet_mark(manifest),
        robot in concerned.with_code,
        tuple(
            one
            for one in report.accepted
            if one.severity is Severity.ERROR and robot in concerned.by(one)
        ),
        tuple(p for p, uses in concerned.unread.items() if robot in {use.robot for use in uses}),
    )
