"""Imports run downwards only, and nothing below the command prints or exits."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

import namegen

PACKAGE = Path(namegen.__file__).parent
FLOORS = {
    "errors": 0,
    "bundled": 0,
    "text": 1,
    "model": 2,
    "loading": 3,
    "languages": 3,
    "resolving": 3,
    "targets": 3,
    "checks": 3,
    "reports": 3,
    "operations": 4,
    "__init__": 5,
    "cli": 6,
    "__main__": 7,
}
FILES = sorted(PACKAGE.rglob("*.py"))


def part_of(module: str) -> str:
    """Return the part of the house that a dotted module name belongs to."""
    words = module.split(".")
    return words[1] if len(words) > 1 else "__init__"


def imports_of(path: Path) -> list[str]:
    """Return the namegen modules that a file imports, at any depth of its code."""
    found = []
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            found += [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}: imports are written in full"
            module = node.module or ""
            # `from namegen import checks` imports a part, not the public face.
            names = [alias.name for alias in node.names] if module == "namegen" else []
            found += [f"{module}.{name}" for name in names] or [module]
    return [name for name in found if name.split(".")[0] == "namegen"]


def test_every_part_has_a_floor():
    parts = {path.relative_to(PACKAGE).parts[0].removesuffix(".py") for path in FILES}
    assert parts == set(FLOORS)


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.relative_to(PACKAGE).as_posix())
def test_imports_run_downwards(path: Path):
    own = path.relative_to(PACKAGE).parts[0].removesuffix(".py")
    for module in imports_of(path):
        other = part_of(module)
        assert other == own or FLOORS[other] < FLOORS[own], f"{own} imports {module}"


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.relative_to(PACKAGE).as_posix())
def test_nothing_below_the_command_prints_or_exits(path: Path):
    if path.relative_to(PACKAGE).parts[0] in {"cli", "__main__.py"}:
        pytest.skip("the command may")
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        name = ast.unparse(node.func) if isinstance(node, ast.Call) else ""
        assert name not in {"print", "exit", "quit", "sys.exit", "os._exit"}, f"line {node.lineno}"


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.relative_to(PACKAGE).as_posix())
def test_no_file_outgrows_the_house(path: Path):
    assert len(path.read_text(encoding="utf-8").splitlines()) <= 500
    assert path.stem not in {"utils", "helpers", "common", "base", "manager"}
