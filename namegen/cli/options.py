"""Options that several commands take, and what they stand for."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

import click

if TYPE_CHECKING:
    from namegen.operations.workspace import Workspace

F = TypeVar("F", bound=Callable[..., Any])

REPORT_FORMATS = ("text", "json", "sarif", "lines")


def workspace_options(command: F) -> F:
    """Add ``--workspace``, ``--manifest`` and ``--catalogue``."""
    for option in (
        click.option(
            "--catalogue",
            metavar="FILE",
            type=click.Path(path_type=Path),
            help="With --manifest: the catalogue to use (default: catalogue.yaml beside it).",
        ),
        click.option(
            "--manifest",
            metavar="FILE",
            type=click.Path(path_type=Path),
            help="Use this one manifest, without a workspace.",
        ),
        click.option(
            "--workspace",
            metavar="DIR",
            type=click.Path(path_type=Path),
            help="The folder with namegen.yaml (default: the nearest one upwards).",
        ),
    ):
        command = option(command)
    return command


def report_options(command: F) -> F:
    """Add ``--report`` and ``--output``."""
    for option in (
        click.option(
            "--output",
            metavar="FILE",
            type=click.Path(path_type=Path),
            help="Write the report to FILE instead of the screen.",
        ),
        click.option(
            "--report",
            type=click.Choice(REPORT_FORMATS),
            default="text",
            show_default=True,
            help="The form of the report.",
        ),
    ):
        command = option(command)
    return command


def opened(
    workspace: Path | None, manifest: Path | None = None, catalogue: Path | None = None
) -> Workspace:
    """Open the workspace that the options name.

    Raises:
        UnusableInput: there is none, or it cannot be used.
        click.UsageError: the options contradict each other.
    """
    from namegen.operations.workspace import find_root, open_manifest, open_workspace

    if manifest is not None:
        if workspace is not None:
            raise click.UsageError("give --workspace or --manifest, not both")
        return open_manifest(manifest, catalogue)
    if catalogue is not None:
        raise click.UsageError("--catalogue goes with --manifest; a workspace names its own")
    return open_workspace(workspace or find_root(Path.cwd()))
