"""``namegen rename``: another name for a device, in manifests, code and outputs."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

from namegen.cli.options import Where, takes_where

if TYPE_CHECKING:
    from namegen.operations.build import Plan

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
        _say_outputs(renamed.built)
    else:
        write(space, renamed)
        for change in renamed.changes:
            say(f"changed {change.path}")
        space = reopened(space, {})
        planned = build.plan(space, renamed.robots)
        for path in build.write(planned).wrote:
            say(f"wrote {path}")
        _say_kept(planned)
    for doubt in renamed.doubts:
        say(f"{doubt.severity.value}: {doubt.message}")
    for left in renamed.left:
        say(f"{left.place}: still says {printable(left.text)}; {left.advice}")
    return 0


def _say_outputs(planned: Plan) -> None:
    """Say which outputs would follow; what is in them shows `build --diff` afterwards."""
    from namegen.cli.reporting import say
    from namegen.operations.build import State

    for output in planned.outputs:
        if output.state in {State.STALE, State.MISSING}:
            say(f"would write {output.path}")
    _say_kept(planned)


def _say_kept(planned: Plan) -> None:
    """Say which outputs keep the old name, because they are a person's in part or in whole."""
    from namegen.cli.reporting import say
    from namegen.operations.build import KEPT

    for output in planned.outputs:
        if output.state in KEPT:
            say(f"kept {output.path}: {output.state.value}; {output.state.remedy}")
