"""``namegen verify``: everything that is wrong in the manifests."""

from __future__ import annotations

from pathlib import Path

import click

from namegen.cli.options import opened, report_options, workspace_options

ORDER = 30


@click.command()
@click.argument("robots", nargs=-1, metavar="[ROBOT]...")
@workspace_options
@report_options
def command(
    robots: tuple[str, ...],
    workspace: Path | None,
    manifest: Path | None,
    catalogue: Path | None,
    report: str,
    output: Path | None,
) -> int:
    """Say everything that is wrong in the manifests, in one run."""
    from namegen.cli.reporting import show
    from namegen.operations.verify import verify

    space = opened(workspace, manifest, catalogue)
    found = verify(space, robots)
    show(space, found, report, output)
    return 0 if found.clean else 1
