"""Code that no one here wrote: the running Python's library and its site-packages."""

from __future__ import annotations

import ast
import os
import shutil
import sysconfig
import tokenize
import warnings
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

import yaml

LOOKUPS = [
    {"call": "getattr", "name_at": 1},
    {"call": "get", "on": "environ"},
    {"call": "getLogger"},
]
SOUND, UNSOUND = "code/sound", "code/unsound"
TEST_FOLDERS = {"test", "tests"}


@dataclass
class InstalledCode:
    """A workspace whose code is a copy of the installed files; Python's own parser read them.

    ``sites`` counts the look-ups that `ast` sees in the files it accepts, and
    ``names`` are the literals in them.
    """

    root: Path
    files: int = 0
    sites: int = 0
    names: set[str] = field(default_factory=set)

    def declare(self, names: set[str]) -> None:
        """Write a manifest whose devices bear these names."""
        devices = {name: {"kind": "motor", "port": "undecided"} for name in sorted(names)}
        text = yaml.dump({"robot": "real", "controllers": {}, "devices": devices})
        (self.root / "real.yaml").write_text(text, encoding="utf-8")


def copied_to(root: Path, *, tests_too: bool = True) -> InstalledCode:
    """Copy every installed file below ``root`` and make a workspace of it.

    Files that hold a look-up but that Python itself cannot parse (there are
    some among its own tests) lie apart, in ``code/unsound``.
    """
    code = InstalledCode(root)
    for top, path in _installed():
        if not tests_too and TEST_FOLDERS & set(path.relative_to(top).parts):
            continue
        data = path.read_bytes()
        sound = True
        if any(word in data for word in (b"getattr", b"environ", b"getLogger")):
            sound = _note(code, path, data)
        copy = root / (SOUND if sound else UNSOUND) / top.name / path.relative_to(top)
        copy.parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(path, copy)
        code.files += 1
    (root / UNSOUND).mkdir(parents=True, exist_ok=True)
    settings = {
        "robots": ["real.yaml"],
        "lookups": LOOKUPS,
        "code": [{"path": path, "robots": ["real"]} for path in (SOUND, UNSOUND)],
    }
    (root / "namegen.yaml").write_text(yaml.dump(settings), encoding="utf-8")
    code.declare(code.names)
    return code


def _installed() -> Iterator[tuple[Path, Path]]:
    """Yield each installed Python file after the folder that it was installed in."""
    own = Path(sysconfig.get_path("purelib"))
    for top in (Path(sysconfig.get_path("stdlib")), own):
        for folder, below, files in os.walk(top):
            if folder == str(top) and top != own:
                below[:] = [
                    name for name in below if name not in ("site-packages", "dist-packages")
                ]
            below.sort()
            yield from ((top, Path(folder, name)) for name in sorted(files) if name.endswith(".py"))


def _note(code: InstalledCode, path: Path, data: bytes) -> bool:
    """Count the look-ups of one file and keep their literals; return whether it parses."""
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            tree = ast.parse(data)
        with tokenize.open(path) as source:
            source.read()
    except (SyntaxError, ValueError, RecursionError):
        return False
    for name in _names_looked_up(tree):
        code.sites += 1
        if isinstance(name, ast.Constant) and isinstance(name.value, str):
            code.names.add(name.value)
    return True


def _names_looked_up(tree: ast.AST) -> Iterator[ast.expr]:
    """Yield the expression that each look-up gets as the name."""
    for node in ast.walk(tree):
        if not isinstance(node, ast.Call):
            continue
        called = _last_word(node.func)
        receiver = _last_word(node.func.value) if isinstance(node.func, ast.Attribute) else ""
        at = {"getattr": 1, "getLogger": 0}.get(called, -1)
        if called == "get" and receiver == "environ":
            at = 0
        if 0 <= at < len(node.args):
            name = node.args[at]
            several = isinstance(name, (ast.List, ast.Tuple))
            yield from name.elts if several else [name]


def _last_word(node: ast.expr) -> str:
    if isinstance(node, ast.Name):
        return node.id
    return node.attr if isinstance(node, ast.Attribute) else ""
