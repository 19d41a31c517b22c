"""Judging: what the checks say of the facts of code."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence

from msgspec import Struct, field
from msgspec.structs import replace

from namegen import checks
from namegen.checks.code import not_checkable, unreadable
from namegen.checks.manifest import idle_acceptance
from namegen.checks.naming import judge_lookup
from namegen.checks.wording import quoted
from namegen.model.facts import Ref
from namegen.model.findings import Finding
from namegen.model.identifiers import NamingScheme
from namegen.model.manifests import Manifest
from namegen.model.views import CodeView, NameQuestion, ResolvedLookup, TypedNumber
from namegen.operations.code_files import CodeFiles
from namegen.operations.code_reader import CodeReader, FileFacts
from namegen.operations.number_names import built_figures
from namegen.operations.record import read_record
from namegen.operations.schemes import schemes_by_robot
from namegen.operations.workspace import Workspace

ABOUT_THE_USE = frozenset({"wrong-kind", "not-in-setup"})
"""Naming findings that a right name can give, where it is used wrongly."""


class JudgedFile(Struct, frozen=True):
    """What one file says, and what is wrong with each of its look-ups by itself."""

    facts: FileFacts
    findings: tuple[Finding, ...]


class Judge:
    """Holds the facts of code against the manifests of a workspace.

    A robot whose manifest is not sound is not judged: its names are not known.
    """

    def __init__(self, workspace: Workspace, files: CodeFiles) -> None:
        self.workspace = workspace
        self.files = files
        self.sound = {m.robot: m for m in workspace.manifests if workspace.sound(m)}

    def alone(self, file: FileFacts) -> JudgedFile:
        """Judge each look-up of a file by itself, on all robots that the file runs on."""
        return JudgedFile(file, tuple(self._alone(file)))

    def _alone(self, file: FileFacts) -> Iterator[Finding]:
        for place, why in file.unreadable:
            yield unreadable.finding(place, why) if why else unreadable.finding(place)
        known = [use for use in self.files.uses[file.path] if use.robot in self.sound]
        for lookup in file.lookups if known else ():
            if lookup.text is None:
                robots = [self.sound[use.robot] for use in known] if lookup.lacking else []
                meant = _constant_meant(self.workspace, lookup, robots)
                yield not_checkable.finding(lookup, meant)
                continue
            questions = [
                NameQuestion(
                    lookup,
                    lookup.text,
                    self.sound[use.robot],
                    use.setup or None,
                    self.workspace.manifests,
                )
                for use in known
            ]
            finding = judge_lookup(lookup, questions)
            if finding is not None:
                yield _of_output(finding, lookup)

    def together(self, files: Sequence[JudgedFile], reader: CodeReader) -> Iterator[Finding]:
        """Yield all that is wrong in the code: of each file, then of each robot's together."""
        meant: set[str] = set()
        for file in files:
            for finding in file.findings:
                meant |= {finding.expected} if finding.expected else set()
                if file.facts.path not in reader.outputs:
                    yield finding
                elif finding.kind not in ABOUT_THE_USE | {not_checkable.KIND.name}:
                    yield _of_generated(finding)
        facts = [file.facts for file in files]
        robots = _by_robot(self.files, facts, self.sound, reader.outputs)
        asked = any(code.whole or code.numbers for code in robots.values())
        schemes = schemes_by_robot(self.workspace) if asked else {}
        for robot, code in robots.items():
            view = self._view(robot, code, meant, schemes.get(robot, ()), reader)
            for finding in _judged_together(view):
                if finding.place.path not in reader.outputs:
                    yield finding

    def _view(
        self,
        robot: str,
        code: _Code,
        meant: set[str],
        schemes: Sequence[NamingScheme],
        reader: CodeReader,
    ) -> CodeView:
        """Return the code of one robot as its checks see it."""
        manifest = self.sound[robot]
        mentioned = meant & manifest.devices.keys()
        if code.whole:
            mentioned |= _constants_used(self.workspace, code, manifest, schemes, reader)
        return CodeView(
            robot=manifest,
            setup=None,
            lookups=code.lookups,
            mentioned=frozenset(mentioned),
            complete=code.whole,
            numbers=code.numbers,
            figures=built_figures(self.workspace, manifest, schemes) if code.numbers else (),
        )


def _constant_meant(
    workspace: Workspace, lookup: ResolvedLookup, robots: Sequence[Manifest]
) -> str:
    """Return the constant whose last word a missing one has, or had before a rename; or nothing."""
    name = lookup.site.name
    if not robots or not isinstance(name, Ref):
        return ""
    word, schemes = name.tries[-1][-1], schemes_by_robot(workspace)
    found = {
        f"{scheme.type_name(device.kind)}.{scheme.constant(device)}"
        for robot in robots
        for scheme in schemes.get(robot.robot, ())
        if scheme.language == lookup.language
        for device in robot.devices.values()
        if word in (scheme.constant(device), *map(scheme.spelled, device.formerly))
    }
    return found.pop() if len(found) == 1 else ""


def _of_output(finding: Finding, lookup: ResolvedLookup) -> Finding:
    """Return the finding; where a built constant holds the wrong name, the build mends it."""
    if lookup.output is None or finding.kind in ABOUT_THE_USE:
        return finding
    advice = f"The constant stands in {lookup.output}, which is out of date: run `namegen build`."
    return replace(finding, message=f"{finding.message} {advice}")


def _of_generated(finding: Finding) -> Finding:
    """Return a finding in a file that namegen made: no repair there would outlive a build."""
    message = "This is a generated file, and it is out of date. Run `namegen build`."
    what = f"{quoted(finding.found)} is not right any more. " if finding.found else ""
    return replace(finding, message=what + message, repair=None)


class _Code(Struct):
    """All code of one robot; ``whole`` as long as every name in it is known."""

    lookups: list[ResolvedLookup] = field(default_factory=list)
    numbers: list[TypedNumber] = field(default_factory=list)
    paths: list[str] = field(default_factory=list)
    whole: bool = True


def _by_robot(
    files: CodeFiles,
    facts: Sequence[FileFacts],
    sound: Mapping[str, Manifest],
    outputs: Collection[str],
) -> dict[str, _Code]:
    """Return the code of each robot, taken together from all entries that name it.

    Generated code uses what it looks up, and makes no name at run time.
    """
    found: dict[str, _Code] = {}
    for file in facts:
        written = file.path not in outputs
        unknown = written and any(lookup.text is None for lookup in file.lookups)
        for robot in {use.robot for use in files.uses[file.path]} & sound.keys():
            code = found.setdefault(robot, _Code())
            code.lookups += file.lookups
            code.numbers += file.numbers
            code.paths.append(file.path)
            code.whole &= robot in files.whole and not file.unreadable and not unknown
    return found


def _judged_together(view: CodeView) -> Iterator[Finding]:
    """Yield what is wrong with the code of one robot taken together.

    Mentioned are devices that count as used: a wrong name surely meant them
    (and is reported already), or the code refers to their constants.
    """
    found = [finding for check in checks.code_checks() for finding in check(view)]
    yield from (finding for finding in found if not checks.accepted(finding, view.robot))
    if view.complete:
        yield from idle_acceptance.idle(found, view.robot, "code")


def _constants_used(
    workspace: Workspace,
    code: _Code,
    robot: Manifest,
    schemes: Sequence[NamingScheme],
    reader: CodeReader,
) -> set[str]:
    """Return the devices that no look-up names but whose generated constant the code uses."""
    named = {lookup.text for lookup in code.lookups}
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
