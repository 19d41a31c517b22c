"""``namegen verify``: everything that is wrong in the manifests."""

from __future__ import annotations

import click

from namegen.cli.options import Form, Where, takes_form, takes_where

ORDER = 30


@click.command(short_help="Say everything that is wrong in the manifests.")
@click.argument("robots", nargs=-1, metavar="[ROBOT]...")
@takes_where
@takes_form
def command(robots: tuple[str, ...], where: Where, form: Form) -> int:
    """Say everything that is wrong in the manifests, in one run."""
    from namegen.cli.reporting import show
    from namegen.operations.verify import verify

    space = where.open()
    found = verify(space, robots)
    show(space.source, found, form)
    return 0 if found.clean else 1
