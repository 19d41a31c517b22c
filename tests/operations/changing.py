"""Workspaces on disk whose typed names are changed to constants."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from namegen.operations import build, fix
from namegen.operations.code_files import ALL, Selection
from namegen.operations.constants import use_constants
from namegen.operations.fix import Fixed
from namegen.operations.workspace import open_workspace
from tests.operations.conftest import lay


def built(root: Path, files: Mapping[str, str]) -> Path:
    """Lay files and build the outputs."""
    workspace = open_workspace(lay(root, dict(files)))
    build.write(build.plan(workspace))
    return root


def changed(root: Path, selection: Selection = ALL) -> Fixed:
    """Change names to constants on the disk; a second time changes nothing more."""
    workspace = open_workspace(root)
    done = use_constants(workspace, selection)
    fix.write(workspace, done)
    assert use_constants(open_workspace(root), selection).changes == ()
    return done
