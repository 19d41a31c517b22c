"""Constants: names typed by hand become references to the generated constants."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from pathlib import PurePosixPath

from msgspec import Struct

from namegen import languages
from namegen.errors import UnusableInput
from namegen.languages import Language
from namegen.model.facts import ConstantUse, Path, Text
from namegen.model.findings import Finding, UseConstant
from namegen.model.manifests import Manifest
from namegen.model.places import Place
from namegen.operations.audit import Audit, audit_files, seen_folder
from namegen.operations.code_files import CodeFiles, Selection, code_files
from namegen.operations.files import Folder
from namegen.operations.fix import Change, Fixed
from namegen.operations.record import read_record
from namegen.operations.schemes import schemes_by_robot
from namegen.operations.workspace import Workspace

LOOSE = "loose-literal"


class _Constant(Struct, frozen=True):
    """Where the constant of a device stands: the generated file, and the way to it inside."""

    file: str
    text: bytes
    words: Path


def use_constants(workspace: Workspace, selection: Selection) -> Fixed:
    """Work out, in memory, the change of every loose literal to its constant.

    A changed file is audited again as it would be: it is kept only when each
    look-up still gets the same name and nothing else is found.

    Raises:
        UnusableInput: a path or an entry of the settings cannot be used.
    """
    files = code_files(workspace, selection)
    folder = seen_folder(workspace, selection)
    before = audit_files(workspace, files, folder, asked=(LOOSE,))
    changes: list[Change] = []
    refused: dict[Place, str] = {}
    for findings in _by_path(before.report.findings).values():
        try:
            change = _change(workspace, files, folder, before, findings)
            _prove(workspace, files, folder, before, change)
            changes.append(change)
        except UnusableInput as error:
            refused |= dict.fromkeys((finding.place for finding in findings), error.what)
    after = folder.with_changes({change.path: change.new for change in changes})
    done = audit_files(workspace, files, after, asked=(LOOSE,)).report if changes else before.report
    return Fixed(tuple(changes), tuple(sorted(refused.items())), before.report, done)


def _by_path(findings: Iterable[Finding]) -> dict[str, list[Finding]]:
    found: dict[str, list[Finding]] = defaultdict(list)
    for finding in findings:
        if isinstance(finding.repair, UseConstant):
            found[finding.place.path].append(finding)
    return found


def _change(
    workspace: Workspace,
    files: CodeFiles,
    folder: Folder,
    before: Audit,
    findings: Sequence[Finding],
) -> Change:
    """Return one file's change.

    Raises:
        UnusableInput: a constant is not built yet, cannot be named there, or
            belongs to code of several robots.
    """
    path = findings[0].place.path
    language = languages.for_path(path)
    robots = {use.robot for use in files.uses.get(path, ())}
    if language is None or len(robots) != 1:
        raise UnusableInput("it runs on several robots, each with constants of its own", where=path)
    manifest = workspace.chosen(sorted(robots))[0]
    constants = _constants(workspace, manifest, language)
    uses = []
    for finding in findings:
        literal: Text = before.literals[finding.place].text
        constant = constants.get(finding.found or "")
        if constant is None:
            raise UnusableInput("its constants are not built; run `namegen build`", where=path)
        uses.append(ConstantUse(literal, constant.words, constant.file, constant.text))
    old = folder.read(path)
    decoded = language.decode(old)
    if not decoded.survives(old):
        raise UnusableInput("its bytes do not survive decoding and encoding", where=path)
    after = language.use_constants(decoded.utf8, uses, path, files.roots)
    objection = language.objection(after, after, ())
    if objection is not None:
        raise UnusableInput(objection, where=path)
    text = after.decode("utf-8")
    return Change(path, old, decoded.encode(text), decoded.text, text, len(uses))


def _constants(
    workspace: Workspace, manifest: Manifest, language: Language
) -> Mapping[str, _Constant]:
    """Return the built constant of each device that has one in the language."""
    schemes = schemes_by_robot(workspace).get(manifest.robot, ())
    scheme = next((one for one in schemes if one.language == language.name), None)
    found: dict[str, _Constant] = {}
    for file, entry in read_record(workspace.folder).items():
        if scheme is None or entry.robot != manifest.robot or languages.for_path(file) != language:
            continue
        text = language.decode(workspace.folder.read(file)).utf8
        reading = language.read(text, ())
        for device in manifest.devices.values():
            inside = (scheme.type_name(device.kind), scheme.constant(device))
            for words in (inside, (PurePosixPath(file).stem, *inside)):
                if reading.definitions(words):
                    found.setdefault(device.name, _Constant(file, text, words))
    return found


def _prove(
    workspace: Workspace, files: CodeFiles, folder: Folder, before: Audit, change: Change
) -> None:
    """Audit the file as it would be.

    Raises:
        UnusableInput: a look-up would get another name, or something new is found.
    """
    changed = folder.with_changes({change.path: change.new})
    after = audit_files(workspace, files, changed, asked=(LOOSE,), before=before)
    kinds = [f.kind for f in before.report.findings if f.kind != LOOSE]
    now = [f.kind for f in after.report.findings if f.kind != LOOSE]
    left = [f for f in after.report.findings if f.kind == LOOSE and f.place.path == change.path]
    if now != kinds or left or after.report.lookups != before.report.lookups:
        raise UnusableInput(
            "audited again with the constants, the file would not be right", where=change.path
        )
