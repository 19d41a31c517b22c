"""Constants: names typed by hand become references to the generated constants."""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Collection, Iterable, Mapping, Sequence
from posixpath import dirname

from msgspec import Struct

from namegen import languages
from namegen.checks.code import loose_literal
from namegen.checks.code.places import within
from namegen.errors import UnusableInput
from namegen.languages import Language
from namegen.model.facts import ConstantUse, Surroundings
from namegen.model.findings import Finding, UseConstant
from namegen.model.places import Place
from namegen.model.views import ResolvedLookup
from namegen.operations.audit import Audit, audit_files, seen_folder
from namegen.operations.built_constants import built_constants
from namegen.operations.code_files import CodeFiles, Selection, code_files
from namegen.operations.files import Folder
from namegen.operations.fix import Change, Fixed
from namegen.operations.moves import found_again
from namegen.operations.workspace import Workspace
from namegen.resolving.modules import ModuleFinder

LOOSE = loose_literal.KIND.name
_ALL_NAMES = re.compile(rb"\bimport\b[\s(]*\*")
"""An import of all names, as Python writes it."""


class _Code(Struct, frozen=True):
    """The code as it was audited, and what is known of it besides.

    ``takers`` are the look-ups, each with its file, that take a literal;
    ``exposed`` are the files of which others import all names.
    """

    workspace: Workspace
    files: CodeFiles
    folder: Folder
    before: Audit
    takers: Mapping[Place, Sequence[tuple[str, ResolvedLookup]]]
    exposed: Collection[str]


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
    loose = _by_path(before.report.findings)
    takers, exposed = _takers(before), _exposed(files, folder) if loose else ()
    code = _Code(workspace, files, folder, before, takers, exposed)
    changes: list[Change] = []
    refused: dict[Place, str] = {}
    for path, places in loose.items():
        try:
            change, left = _change(code, path, places)
            refused |= left
            if change.edits:
                _prove(code, change, len(left))
                changes.append(change)
        except UnusableInput as error:
            refused |= dict.fromkeys(places, error.what)
    after = folder.with_changes({change.path: change.new for change in changes})
    done = audit_files(workspace, files, after, asked=(LOOSE,)).report if changes else before.report
    gone = {place for places in loose.values() for place in places} - refused.keys()
    return Fixed(
        tuple(changes),
        tuple(sorted(refused.items())),
        before.report,
        done,
        found_again(before.report.findings, done.findings, gone),
        sum(change.edits for change in changes),
    )


def _by_path(findings: Iterable[Finding]) -> dict[str, dict[Place, str]]:
    """Return the places of loose literals, each with its name, by file."""
    found: dict[str, dict[Place, str]] = defaultdict(dict)
    for finding in findings:
        if isinstance(finding.repair, UseConstant):
            found[finding.place.path][finding.place] = finding.repair.device
    return found


def _takers(before: Audit) -> dict[Place, list[tuple[str, ResolvedLookup]]]:
    found: dict[Place, list[tuple[str, ResolvedLookup]]] = defaultdict(list)
    for file in before.facts:
        for lookup in file.lookups:
            if lookup.literal:
                found[lookup.place].append((file.path, lookup))
    return found


def _exposed(files: CodeFiles, folder: Folder) -> set[str]:
    """Return the files of which another file imports all names: an import there is one more."""
    find = ModuleFinder(folder.is_file, files.roots)
    found: set[str] = set()
    for path in files.uses:
        language = languages.for_path(path)
        try:
            data = folder.read(path)
            if language is None or not _ALL_NAMES.search(data):
                continue
            stars = language.read(language.decode(data).utf8, ()).imported("*")
        except UnusableInput:  # an audit says so
            continue
        found |= {file for one in stars for file in find(one, path)}
    return found


def _change(code: _Code, path: str, names: Mapping[Place, str]) -> tuple[Change, dict[Place, str]]:
    """Return one file's change, and the places that it leaves alone with the reason.

    Raises:
        UnusableInput: no place of the file can be changed.
    """
    language = languages.for_path(path)
    assert language is not None, "a file was audited"
    uses, left = _uses(code, language, _owner(code, path), names)
    old = code.folder.read(path)
    decoded = language.decode(old)
    if not decoded.survives(old):
        raise UnusableInput("its bytes do not survive decoding and encoding", where=path)
    after, unnamed = _written(code, path, language, decoded.utf8, uses)
    objection = language.objection(after, after, ())
    if objection is not None:
        raise UnusableInput(objection, where=path)
    left |= unnamed
    text = after.decode("utf-8")
    change = Change(path, old, decoded.encode(text), decoded.text, text, len(names) - len(left))
    return change, left


def _uses(
    code: _Code, language: Language, robot: str, names: Mapping[Place, str]
) -> tuple[dict[Place, ConstantUse], dict[Place, str]]:
    """Return the robot's constant for each place that may have one, and why others may not."""
    constants = built_constants(code.workspace, code.workspace.chosen([robot])[0], language)
    uses: dict[Place, ConstantUse] = {}
    left: dict[Place, str] = {}
    for place, name in names.items():
        reason = _objection(code, place, robot)
        constant = constants.get(name)
        if reason is not None:
            left[place] = reason
        elif constant is None:
            left[place] = (
                f"its constant is not built: with target {language.name}-constants under `build` "
                "in the settings, `namegen build` makes it"
            )
        else:
            literal = code.before.literals[place].text
            uses[place] = ConstantUse(literal, constant.words, constant.file, constant.text)
    return uses, left


def _owner(code: _Code, path: str) -> str:
    """Return the one robot that a file runs on.

    Raises:
        UnusableInput: there are several, or it is not known.
    """
    robots = {use.robot for use in code.files.uses.get(path, ())}
    if not robots:
        raise UnusableInput("it was not audited as code of a robot", where=path)
    if len(robots) > 1:
        raise UnusableInput("it runs on several robots, each with constants of its own", where=path)
    return robots.pop()


def _objection(code: _Code, place: Place, robot: str) -> str | None:
    """Return why a literal must not become a constant of the robot, or None.

    What stands in a look-up is taken there alone; from elsewhere any code may take it.
    """
    takers = code.takers[place]
    others = {use.robot for path, _ in takers for use in code.files.uses[path]} - {robot}
    if others:
        return f"code of {' and '.join(sorted(others))} looks it up too"
    if not code.files.all and not all(within(place, taker.at) for _, taker in takers):
        return "code that was not audited may take it too; audit all code at once"
    return None


def _written(
    code: _Code, path: str, language: Language, utf8: bytes, uses: Mapping[Place, ConstantUse]
) -> tuple[bytes, dict[Place, str]]:
    """Return the text with constants, and the places where one cannot be named with the reason.

    Raises:
        UnusableInput: none can be named.
    """
    here = Surroundings(
        path,
        code.files.roots,
        packaged=code.folder.is_file(f"{dirname(path)}/__init__.py"),
        exposed=path in code.exposed,
    )

    def written(some: Iterable[ConstantUse]) -> bytes:
        return language.use_constants(utf8, list(some), here)

    try:
        return written(uses.values()), {}
    except UnusableInput:
        left: dict[Place, str] = {}
    for place, use in uses.items():
        try:
            written([use])
        except UnusableInput as error:
            left[place] = error.what
    return written(use for place, use in uses.items() if place not in left), left


def _prove(code: _Code, change: Change, left: int) -> None:
    """Audit the file as it would be: ``left`` of its names are still typed.

    Raises:
        UnusableInput: a look-up would get another name, or something new is found.
    """
    changed = code.folder.with_changes({change.path: change.new})
    before = code.before
    after = audit_files(code.workspace, code.files, changed, asked=(LOOSE,), before=before)
    loose = _by_path(after.report.findings)[change.path]
    if len(loose) != left or _said(after) != _said(before):
        raise UnusableInput(
            "audited again with the constants, the file would not be right", where=change.path
        )


def _said(audit: Audit) -> tuple[Counter[str], list[list[str | None]]]:
    """Return the kinds of all other findings, and what each look-up of each file gets."""
    kinds = Counter(one.kind for one in audit.report.findings if one.kind != LOOSE)
    return kinds, [[lookup.text for lookup in file.lookups] for file in audit.facts]
