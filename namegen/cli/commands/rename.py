"""``namegen rename``: another name for a device, in manifests, code and outputs."""

from __future__ import annotations

import click

from namegen.cli.options import Where, takes_where

ORDER = 60


@click.command(short_help="Give a device another name everywhere.")
@click.argument("old")
@click.argument("new")
@click.option("--diff", is_flag=True, help="Write nothing; show what would change.")
@takes_where
def command(old: str, new: str, diff: bool, where: Where) -> int:
    """Give the device OLD the name NEW: in manifests, setups, code and outputs.

    Every robot that has the device is concerned. The old name is kept under
    `formerly`, so that what still uses it is told the new one.
    """
    from namegen.cli.reporting import say, say_diff
    from namegen.operations import build, fix
    from namegen.operations.rename import rename, write
    from namegen.operations.workspace import reopened
    from namegen.text.terminal import printable

    space = where.open()
    renamed = rename(space, old, new)
    if diff:
        say_diff(list(fix.diff(renamed.changes)))
    else:
        write(space, renamed)
        for change in renamed.changes:
            say(f"changed {change.path}")
        space = reopened(space, {})
        for path in build.write(build.plan(space, renamed.robots)).wrote:
            say(f"wrote {path}")
    for doubt in renamed.doubts:
        say(f"{doubt.severity.value}: {doubt.message}")
    for place, text in renamed.left:
        say(f"{place}: still says {printable(text)}; look whether it means this device")
    return 0
