"""The last build, remembered: while nothing it read has changed, there is nothing to build.

What is remembered lies in the user's cache, not in the workspace: it can be deleted at any time
and costs one full build. It is only kept of a build after which every output was current.
"""

from __future__ import annotations

import contextlib
import glob
import hashlib
import importlib.util
import json
import os
import sys
import time
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

from msgspec.structs import asdict

from namegen.bundled import bundled
from namegen.errors import UnusableInput
from namegen.model.findings import Finding, Severity
from namegen.model.places import Place, Related
from namegen.model.reports import Report
from namegen.operations.build import Output, Plan, State, Written
from namegen.operations.files import Folder
from namegen.operations.record import RECORD_FILE, read_record

VARIABLE = "NAMEGEN_CACHE"
"""Environment variable that names another folder for what is remembered."""

_ENGINES = ("jinja2", "pydantic", "yaml")
_DAYS_KEPT = 60


class Witness(Folder):
    """A folder that notes, by hash, what was read in it."""

    def __init__(self, root: Path) -> None:
        super().__init__(root)
        self.hashes: dict[str, str] = {}
        self.matched: dict[str, list[str]] = {}
        self.missed = False
        """Whether something may have been read that is not noted."""

    def read(self, path: str) -> bytes:
        """Return a file's bytes, as `Folder.read` does, and note their hash."""
        data = super().read(path)
        self.hashes[path] = _hash(data)
        return data

    def matches(self, pattern: str) -> list[str]:
        """Return the paths that a glob fits, as `Folder.matches` does, and note them."""
        found = self.matched[pattern] = super().matches(pattern)
        return found

    def watch(self, folder: str) -> None:
        """Note all files of a folder; where links in it lead is not looked at."""
        for path in self.matches(f"{glob.escape(folder)}/**/*"):
            if (self.root / path).is_symlink():
                self.missed = True
            elif self.is_file(path):
                self.read(path)


def recall(root: Path, robots: Sequence[str]) -> Plan | None:
    """Return the plan that a build of these robots would make, or None if it has to be worked out.

    It is known if the last build left every output current and nothing that it read has changed.
    """
    folder = Folder(root)
    try:
        kept = json.loads(_file(root, robots).read_bytes())
        if (
            kept["program"] != program()
            or any(folder.matches(one) != paths for one, paths in kept["matched"].items())
            or any(_hash(folder.read(path)) != known for path, known in kept["hashes"].items())
            or any(path.is_symlink() for path in _ways(folder.root, kept["outputs"]))
        ):
            return None
        outputs = tuple(Output(path, State.CURRENT) for path in kept["outputs"])
        report = Report(tuple(map(_finding, kept["findings"])), kept["files"])
        return Plan(folder, outputs, report, (), read_record(folder))
    except (OSError, UnusableInput, ValueError, KeyError, TypeError, AttributeError):
        return None  # never kept, damaged, or of another version


def remember(planned: Plan, robots: Sequence[str], done: Written) -> None:
    """Keep what a build read and found, if every output is current now; else keep nothing.

    The workspace must have been opened through a `Witness`. A cache that
    cannot be written is no fault.
    """
    folder = planned.folder
    if not isinstance(folder, Witness) or folder.missed or not _all_current(planned, done):
        return
    with contextlib.suppress(OSError, UnusableInput):
        folder.read(RECORD_FILE)
        for output in planned.outputs:
            if output.path in done.wrote and output.artifact is not None:
                folder.hashes[output.path] = _hash(output.artifact.text.encode())
        kept = {
            "program": program(),
            "matched": folder.matched,
            "hashes": folder.hashes,
            "outputs": [output.path for output in planned.outputs],
            "findings": planned.report.findings,
            "files": planned.report.files,
        }
        _write(_file(folder.root, robots), json.dumps(kept, default=asdict))


def program() -> str:
    """Return a hash that is another one when namegen, its templates or what they run on changed."""
    stamps = [sys.version]
    for folder in (Path(__file__).parents[1], bundled("templates")):
        stamps += sorted(_stamps(str(folder)))
    for name in _ENGINES:
        found = importlib.util.find_spec(name)
        stamps.append(_stamp(found.origin) if found and found.origin else name)
    return _hash("\n".join(stamps).encode())


def _all_current(planned: Plan, done: Written) -> bool:
    states = {output.path: output.state for output in planned.outputs}
    now = {path: State.CURRENT if path in done.wrote else was for path, was in states.items()}
    plain = all(one.repair is None and one.fix is None for one in planned.report.findings)
    current = all(state is State.CURRENT for state in now.values())
    return bool(now) and current and plain and not planned.stopped


def _ways(root: Path, outputs: Sequence[str]) -> set[Path]:
    """Return the outputs and the folders on the way to them, below the workspace."""
    ways: set[Path] = set()
    for output in outputs:
        path = root / output
        while path != root and path not in ways:
            ways.add(path)
            path = path.parent
    return ways


def _stamps(folder: str) -> Iterator[str]:
    """Yield path, size and time of change of every file below a folder."""
    with os.scandir(folder) as entries:
        for entry in entries:
            if entry.is_dir():
                yield from _stamps(entry.path)
            elif not entry.name.endswith(".pyc"):
                yield _stamp(entry.path)


def _stamp(path: str) -> str:
    about = os.stat(path)
    return f"{path} {about.st_size} {about.st_mtime_ns}"


def _file(root: Path, robots: Sequence[str]) -> Path:
    key = _hash("\0".join([str(root.resolve()), *robots]).encode())
    return _cache() / f"{key[:32]}.json"


def _cache() -> Path:
    named = os.environ.get(VARIABLE)
    if named:
        return Path(named)
    from platformdirs import user_cache_path

    return user_cache_path("namegen", appauthor=False) / "builds"


def _write(path: Path, text: str) -> None:
    """Put the text there in one step, and forget what was not built for a long time."""
    path.parent.mkdir(parents=True, exist_ok=True)
    part = path.with_suffix(f".{os.getpid()}")
    part.write_text(text, encoding="utf-8")
    os.replace(part, path)
    for old in path.parent.iterdir():
        if old.stat().st_mtime < time.time() - _DAYS_KEPT * 86_400:
            old.unlink()


def _finding(kept: dict[str, Any]) -> Finding:
    related = tuple(Related(Place(**one["place"]), one["message"]) for one in kept["related"])
    placed = {"place": Place(**kept["place"]), "severity": Severity(kept["severity"])}
    return Finding(**{**kept, **placed, "related": related})


def _hash(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()
