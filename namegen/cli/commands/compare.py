"""``namegen compare``: two manifests, or a manifest and what was found on a machine."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from namegen.cli.options import FILE, Form, takes_form

if TYPE_CHECKING:
    from namegen.operations.workspace import Workspace

ORDER = 67


@click.command(short_help="Tell two manifests apart, or a manifest and what a machine has.")
@click.argument("before")
@click.argument("after")
@click.option(
    "--setup", metavar="NAME", help="The setup to hold a list against (default: the selected one)."
)
@click.option(
    "--workspace",
    metavar="DIR",
    type=FILE,
    help="The folder with namegen.yaml (default: the nearest one upwards, if any).",
)
@takes_form
def command(before: str, after: str, setup: str | None, workspace: Path | None, form: Form) -> int:
    """Tell two manifests apart, or a manifest and an as-found list.

    BEFORE and AFTER are manifests, names of robots, or CSV files that say what somebody
    read off a machine: a row of titles (name, kind, port, address, found, or usual words for
    them; only name is needed) and a row for each device. Two plugs that were exchanged are
    one finding, and so is a machine with another setup selected.
    """
    from namegen.cli.reporting import show
    from namegen.operations.compare import catalogue_of, compare, file_of

    space = _workspace(workspace)
    files = [file_of(word, space) for word in (before, after)]
    near = [space.folder.root] if space is not None else []
    done = compare(files[0], files[1], setup, catalogue_of(space), [*near, Path.cwd()])
    show(done.source, done.report, form)
    return 0 if done.report.clean else 1


def _workspace(named: Path | None) -> Workspace | None:
    """Open the workspace that is named, or else the nearest, if there is one."""
    from namegen.errors import UnusableInput
    from namegen.operations.roots import find_root, named_root
    from namegen.operations.workspace import open_workspace

    if named is not None:
        return open_workspace(named_root(named))
    try:
        root = find_root(Path.cwd())
    except UnusableInput:
        return None  # files may be compared anywhere
    return open_workspace(root)
