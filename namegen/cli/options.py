"""Options that several commands take, bundled into what they stand for."""

from __future__ import annotations

import functools
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

import click
from msgspec import Struct

if TYPE_CHECKING:
    from namegen.operations.workspace import Workspace

REPORT_FORMATS = ("text", "json", "sarif", "lines")
FILE = click.Path(path_type=Path)

Command = Callable[..., int]


class Where(Struct, frozen=True):
    """The workspace, or the one manifest, that a command is to work on."""

    workspace: Path | None = None
    manifest: Path | None = None
    catalogue: Path | None = None

    def root(self) -> Path:
        """Return the workspace's folder; for one manifest, which belongs to none, ask `open`.

        Raises:
            UnusableInput: there is none.
            click.UsageError: the options contradict each other.
        """
        from namegen.operations.roots import find_root, named_root

        if self.catalogue is not None:
            raise click.UsageError("--catalogue goes with --manifest; a workspace names its own")
        return find_root(Path.cwd()) if self.workspace is None else named_root(self.workspace)

    def open(
        self,
        *,
        lookups: tuple[str, ...] = (),
        outputs: tuple[tuple[str, Path], ...] = (),
        code: tuple[Path, ...] = (),
    ) -> Workspace:
        """Open it; what the keywords say stands for ``namegen.yaml`` with ``--manifest`` only.

        Raises:
            UnusableInput: there is none, or it cannot be used.
            click.UsageError: the options contradict each other.
        """
        from namegen.operations.alone import Alone, open_manifest
        from namegen.operations.workspace import open_workspace

        if self.manifest is None:
            root = self.root()
            if lookups or outputs:
                raise click.UsageError("namegen.yaml says this; the option goes with --manifest")
            return open_workspace(root)
        if self.workspace is not None:
            raise click.UsageError("give --workspace or --manifest, not both")
        return open_manifest(Alone(self.manifest, self.catalogue, lookups, outputs, code))


class Form(Struct, frozen=True):
    """The form of a report, and the file it goes to (None: the screen)."""

    name: str = "text"
    output: Path | None = None


SCREEN = Form()
"""Text for people, on the screen."""


def takes_where(command: Command) -> Command:
    """Add ``--workspace``, ``--manifest`` and ``--catalogue``; the command gets ``where``."""

    @click.option(
        "--workspace",
        metavar="DIR",
        type=FILE,
        help="The folder with namegen.yaml (default: the nearest one upwards).",
    )
    @click.option(
        "--manifest", metavar="FILE", type=FILE, help="Use this one manifest, without a workspace."
    )
    @click.option(
        "--catalogue",
        metavar="FILE",
        type=FILE,
        help="With --manifest: the catalogue to use (default: the nearest catalogue.yaml upwards).",
    )
    @functools.wraps(command)
    def wrapped(
        workspace: Path | None,
        manifest: Path | None,
        catalogue: Path | None,
        **others: object,
    ) -> int:
        return command(where=Where(workspace, manifest, catalogue), **others)

    return wrapped


def takes_form(command: Command) -> Command:
    """Add ``--report`` and ``--output``; the command gets ``form``."""

    @click.option(
        "--report",
        type=click.Choice(REPORT_FORMATS),
        default="text",
        show_default=True,
        help="The form of the report.",
    )
    @click.option(
        "--output", metavar="FILE", type=FILE, help="Write the report to FILE, not to the screen."
    )
    @functools.wraps(command)
    def wrapped(report: str, output: Path | None, **others: object) -> int:
        return command(form=Form(report, output), **others)

    return wrapped
