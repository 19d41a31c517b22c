"""``namegen audit``: holds code against the manifests, and mends it."""

from __future__ import annotations

from collections.abc import Collection
from pathlib import Path
from typing import TYPE_CHECKING

import click

from namegen.cli.options import Form, Where, takes_form, takes_where

if TYPE_CHECKING:
    from namegen.model.findings import Safety
    from namegen.model.reports import Report
    from namegen.operations.workspace import Workspace

ORDER = 50


@click.command()
@click.argument("paths", nargs=-1, metavar="[PATH]...", type=click.Path(path_type=Path))
@click.option("--fix", is_flag=True, help="Make the safe repairs.")
@click.option("--fix-suggested", is_flag=True, help="Make the safe and the suggested repairs.")
@click.option("--diff", is_flag=True, help="Write nothing; show what the repairs would change.")
@takes_where
@takes_form
def command(
    paths: tuple[Path, ...],
    fix: bool,
    fix_suggested: bool,
    diff: bool,
    where: Where,
    form: Form,
) -> int:
    """Hold the code against the manifests: every look-up of a device, by its exact text.

    A repair is safe when exactly one device can be meant and it is of the kind
    that the code asks for; the others are suggestions.
    """
    from namegen.cli.reporting import show
    from namegen.operations.audit import audit
    from namegen.operations.fix import SAFE, SUGGESTED

    space = where.open()
    if fix or fix_suggested or diff:
        found = _fix(space, paths, SUGGESTED if fix_suggested else SAFE, only_diff=diff)
    else:
        found = audit(space, paths).report
    if not diff:
        show(space, found, form)
        _say_not_judged(space)
    return 0 if found.clean else 1


def _say_not_judged(space: Workspace) -> None:
    from namegen.cli.reporting import say

    for manifest in space.manifests:
        if not space.sound(manifest):
            say(
                f"{manifest.robot}: its code was not audited; mend {manifest.path} first",
                err=True,
            )


def _fix(
    space: Workspace, paths: tuple[Path, ...], safeties: Collection[Safety], *, only_diff: bool
) -> Report:
    """Make the repairs, or show them; return what is left."""
    from namegen.cli.reporting import count, say, say_diff
    from namegen.operations import fix

    fixed = fix.fix(space, paths, safeties)
    for place, reason in fixed.refused:
        say(f"{place}: not rewritten: {reason}", err=True)
    if only_diff:
        say_diff(list(fix.diff(fixed.changes)))
        return fixed.before
    fix.write(space, fixed)
    where = count(len(fixed.changes), "file")
    say(f"mended {count(fixed.edits, 'name')} in {where}", err=True)
    return fixed.after
