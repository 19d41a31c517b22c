"""Code that no one here wrote: the running Python's library and its site-packages."""

from __future__ import annotations

import ast
import io
import os
import re
import shutil
import sysconfig
import tokenize
import warnings
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path, PurePosixPath
from typing import NamedTuple

import yaml

LOOKUPS = [
    {"call": "getattr", "name_at": 1},
    {"call": "get", "on": "environ"},
    {"call": "getLogger"},
]
SOUND, UNSOUND = PurePosixPath("code/sound"), PurePosixPath("code/unsound")
TEST_FOLDERS = {"test", "tests"}


class Site(NamedTuple):
    """A literal that is looked up: where its text begins, and the text."""

    path: str
    line: int
    column: int
    text: str


@dataclass
class InstalledCode:
    """A workspace whose code is a copy of the installed files; Python's own parser read them.

    ``sites`` are the literals in look-ups that `ast` sees in the files it
    accepts; literals joined from several pieces are left out.
    """

    root: Path
    files: int = 0
    sites: set[Site] = field(default_factory=set)

    @property
    def names(self) -> set[str]:
        """The texts that are looked up."""
        return {site.text for site in self.sites}

    def declare(self, names: set[str]) -> None:
        """Write a manifest whose devices bear these names."""
        devices = {name: {"kind": "motor", "port": "undecided"} for name in sorted(names)}
        text = yaml.dump({"robot": "real", "controllers": {}, "devices": devices})
        (self.root / "real.yaml").write_text(text, encoding="utf-8")


def copied_to(
    root: Path, *, tests_too: bool = True, most_sites: int | None = None
) -> InstalledCode:
    """Copy the installed files below ``root`` and make a workspace of them.

    ``most_sites`` ends the copy when so many look-ups were found.

    Files that hold a look-up but that Python itself cannot parse (there are
    some among its own tests) lie apart, in ``code/unsound``.
    """
    code = InstalledCode(root)
    for top, path in installed():
        below = Path(top.name) / path.relative_to(top)
        if not tests_too and TEST_FOLDERS & set(below.parts):
            continue
        sites = _sites(path, (SOUND / below).as_posix())
        copy = root / (UNSOUND if sites is None else SOUND) / below
        copy.parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(path, copy)
        code.files += 1
        code.sites |= sites or set()
        if most_sites is not None and len(code.sites) >= most_sites:
            break
    (root / UNSOUND).mkdir(parents=True, exist_ok=True)
    settings = {
        "robots": ["real.yaml"],
        "lookups": LOOKUPS,
        "code": [{"path": str(path), "robots": ["real"]} for path in (SOUND, UNSOUND)],
    }
    (root / "namegen.yaml").write_text(yaml.dump(settings), encoding="utf-8")
    code.declare(code.names)
    return code


def installed() -> Iterator[tuple[Path, Path]]:
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


def _sites(path: Path, copy: str) -> set[Site] | None:
    """Return the literals that one file looks up, or None when Python cannot parse it."""
    data = path.read_bytes()
    if not any(word in data for word in (b"getattr", b"environ", b"getLogger")):
        return set()
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            tree = ast.parse(data)
        with tokenize.open(path) as source:
            lines = source.read().split("\n")
    except (SyntaxError, ValueError, RecursionError):
        return None
    found = set()
    for name in _names_looked_up(tree):
        if isinstance(name, ast.Constant) and isinstance(name.value, str):
            before = lines[name.lineno - 1].encode()[: name.col_offset].decode()
            opening = _opening(_source(lines, name))
            if opening is not None:
                column = len(before) + len(opening) + 1
                found.add(Site(copy, name.lineno, column, name.value))
    return found


def _source(lines: list[str], node: ast.Constant) -> str:
    """Return the code of a literal; `ast.get_source_segment` splits the whole file each time."""
    own = [line.encode() for line in lines[node.lineno - 1 : node.end_lineno]]
    own[-1] = own[-1][: node.end_col_offset]
    own[0] = own[0][node.col_offset :]
    return b"\n".join(own).decode()


def _opening(source: str) -> str | None:
    """Return what stands before the text of a literal; None when there are several literals."""
    tokens = tokenize.generate_tokens(io.StringIO(f"({source})").readline)
    strings = [token.string for token in tokens if token.type == tokenize.STRING]
    start = re.match(r"""[a-zA-Z]*('{3}|"{3}|'|")""", source)
    return start.group() if start and len(strings) == 1 else None


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
