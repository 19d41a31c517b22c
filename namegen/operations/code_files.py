"""Which files of code belong to which robots."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path, PurePosixPath

from msgspec import Struct, field

from namegen import languages
from namegen.errors import UnusableInput
from namegen.model.workspaces import CodeEntry
from namegen.operations.history import changed_since
from namegen.operations.record import read_record
from namegen.operations.walking import spec, walk
from namegen.operations.workspace import Workspace
from namegen.text.likeness import nearest

NOT_READ = (
    ".c",
    ".cs",
    ".go",
    ".groovy",
    ".ipynb",
    ".js",
    ".lua",
    ".rs",
    ".scala",
    ".swift",
    ".ts",
)
"""Usual endings of code in languages that are not read. Common practice, no source."""


class Use(Struct, frozen=True, order=True):
    """A robot that a file of code runs on, and the setup it is written for (empty: any)."""

    robot: str
    setup: str = ""


class CodeFiles(Struct, frozen=True):
    """The files to audit with what they are for; ``whole`` are robots with all of their code.

    A robot with code that is not read is none of them: what only that code uses looks unused.
    """

    uses: dict[str, tuple[Use, ...]]
    whole: frozenset[str]
    all: bool
    """Whether these are all files of all entries."""
    roots: tuple[str, ...]
    """Folders below which modules are found, besides the importing file's own."""
    unread: dict[str, tuple[Use, ...]] = field(default_factory=dict)
    """Code in languages that are not read, but for what namegen made: nothing is known of it."""


class Selection(Struct, frozen=True):
    """Which part of the code is to be audited; nothing given means all of it.

    ``paths`` are files and folders, ``since`` is a revision of which only the
    files count that have changed. ``text`` stands for one file, with its path:
    an editor has it and the disk does not yet.
    """

    paths: tuple[Path, ...] = ()
    since: str | None = None
    text: tuple[Path, bytes] | None = None


ALL = Selection()


def code_files(workspace: Workspace, selection: Selection = ALL) -> CodeFiles:
    """Return the files of the ``code`` entries that are selected.

    What ``.gitignore`` or an entry's ``exclude`` leaves out stays out even when
    a path names it: an editor or a commit hook passes whatever it has.

    Raises:
        UnusableInput: a path does not exist, or belongs to no ``code`` entry; or
            git cannot tell what changed.
    """
    if selection.text is not None:
        return _one_text(workspace, selection.text[0])
    wanted = [_wanted(workspace, path) for path in selection.paths]
    changed = changed_since(workspace.folder.root, selection.since) if selection.since else None
    renewed = _renewed(workspace, changed or set())
    uses: dict[str, frozenset[Use]] = {}
    others: dict[str, frozenset[Use]] = {}
    for entry in workspace.settings.code:
        robots = _known(workspace, entry)
        on = frozenset(Use(robot, entry.setup or "") for robot in robots)
        for path, is_read in _files_of(workspace, entry):
            if wanted and not any(_below(path, want) for want in wanted):
                continue
            if changed is not None and path not in changed and not renewed & {*robots}:
                continue
            found = uses if is_read else others
            found[path] = found[path] | on if path in found else on
    whole = not wanted and changed is None
    left = _not_made(workspace, others)
    unknown = {use.robot for some in left.values() for use in some}
    return CodeFiles(
        uses=_in_order(uses),
        whole=frozenset(_robots_with_code(workspace) if whole else ()) - unknown,
        all=whole,
        roots=_roots(workspace),
        unread=left,
    )


def _in_order(uses: Mapping[str, frozenset[Use]]) -> dict[str, tuple[Use, ...]]:
    """Return the files by their paths. Most share what they are for, so that is sorted once."""
    ordered = {some: tuple(sorted(some)) for some in set(uses.values())}
    return {path: ordered[uses[path]] for path in sorted(uses)}


def _not_made(
    workspace: Workspace, others: Mapping[str, frozenset[Use]]
) -> dict[str, tuple[Use, ...]]:
    """Return the files in languages that are not read, without those that namegen made."""
    made = read_record(workspace.folder) if others else {}
    return {path: uses for path, uses in _in_order(others).items() if path not in made}


def _renewed(workspace: Workspace, changed: set[str]) -> set[str]:
    """Return the robots whose names or look-ups may have changed: all their code is to be read."""
    if {workspace.settings.path, workspace.settings.catalogue} & changed:
        return {manifest.robot for manifest in workspace.manifests}
    return {m.robot for m in workspace.manifests if changed.intersection(m.sources)}


def _one_text(workspace: Workspace, path: Path) -> CodeFiles:
    """Return the one file whose text is given, whether or not it is on the disk."""
    relative = _belonging(workspace, path)
    uses: set[Use] = set()
    for entry in workspace.settings.code:
        if _below(relative, entry.path.rstrip("/")):
            robots = _known(workspace, entry)
            uses |= {Use(robot, entry.setup or "") for robot in robots}
    if languages.for_path(relative) is None:
        raise UnusableInput("not a language that namegen reads", where=relative)
    return CodeFiles(
        {relative: tuple(sorted(uses))}, whole=frozenset(), all=False, roots=_roots(workspace)
    )


def _known(workspace: Workspace, entry: CodeEntry) -> Sequence[str]:
    """Return the entry's robots that there are; a name that is none is a finding elsewhere."""
    readable = {manifest.robot for manifest in workspace.manifests}
    return [robot for robot in entry.robots if robot in readable]


def _robots_with_code(workspace: Workspace) -> Iterator[str]:
    for entry in workspace.settings.code:
        yield from entry.robots


def _roots(workspace: Workspace) -> tuple[str, ...]:
    """Return the code entries' folders, then the workspace's own."""
    root = workspace.folder.root
    entries = [entry.path.rstrip("/") for entry in workspace.settings.code]
    folders = [path if (root / path).is_dir() else _parent(path) for path in entries]
    return tuple(dict.fromkeys([*folders, ""]))


def _parent(path: str) -> str:
    parent = PurePosixPath(path).parent.as_posix()
    return "" if parent == "." else parent


def _wanted(workspace: Workspace, path: Path) -> str:
    if not path.exists() and str(path) in set(_robots_with_code(workspace)):
        code = [one.path for one in workspace.settings.code if str(path) in one.robots]
        raise UnusableInput(
            "this is a robot, and an audit takes paths",
            where=str(path),
            remedy=f"its code: `namegen audit {' '.join(code)}`",
        )
    if not path.exists():
        raise UnusableInput(
            "there is no such file or folder",
            where=str(path),
            remedy="check the spelling of the path, capitals too",
        )
    return _belonging(workspace, path)


def _belonging(workspace: Workspace, path: Path) -> str:
    """Return the path within the workspace, if a ``code`` entry knows it."""
    relative = workspace.folder.relative(path)
    entries = [entry.path.rstrip("/") for entry in workspace.settings.code]
    if not any(_below(relative, entry) or _below(entry, relative) for entry in entries):
        near = nearest(_parent(relative), entries) if not path.exists() else None
        meant = f"did you mean a file in {near}? " if near else ""
        raise UnusableInput(
            "this path belongs to no `code` entry, so its robot is not known",
            where=relative,
            remedy=f"{meant}add it to `code` in {workspace.settings.path}: "
            f"{{path: {relative}, robots: [NAME]}}",
        )
    return "" if relative == "." else relative


def _below(path: str, folder: str) -> bool:
    return folder in ("", ".") or path == folder or path.startswith(folder + "/")


def _files_of(workspace: Workspace, entry: CodeEntry) -> Iterator[tuple[str, bool]]:
    """Yield the files of code of an entry, and whether their language is read."""
    root = workspace.folder.root
    start = root / entry.path
    where = str(entry.places.get("path", workspace.settings.path))
    if not start.exists():
        raise UnusableInput(
            f"`code` names {entry.path}, which does not exist",
            where=where,
            remedy="correct the path, or take the entry away",
        )
    if not start.resolve().is_relative_to(root):
        raise UnusableInput(f"`code` names {entry.path}, outside the workspace", where=where)
    below = workspace.folder.relative(start)
    below = "" if below == "." else below
    excluded = spec(entry.exclude)
    extensions = tuple(languages.extensions())
    for path in [below] if start.is_file() else walk(root, below):
        lowered = path.lower()
        is_read = lowered.endswith(extensions)
        if not is_read and not lowered.endswith(NOT_READ):
            continue
        if excluded is None or not excluded.match_file(path[len(below) :].lstrip("/")):
            yield path, is_read
