"""``namegen fleet``: the robots side by side."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from typing import TYPE_CHECKING

import click

from namegen.cli.options import Form, Where, takes_form, takes_where

if TYPE_CHECKING:
    from namegen.operations.fleet import Fleet

ORDER = 65
_GAP = "  "


@click.command(short_help="Show the robots side by side, and where they should be alike.")
@click.argument("robots", nargs=-1, metavar="[ROBOT]...")
@takes_where
@takes_form
def command(robots: tuple[str, ...], where: Where, form: Form) -> int:
    """Show the robots side by side: mark, setup, and where each device is plugged in.

    Below it stands what differs between robots and should not: names that are spelt
    in two ways or mean two kinds of thing, and plugs that sit elsewhere.
    """
    from namegen.cli.reporting import say, show
    from namegen.operations.fleet import fleet

    space = where.open()
    found = fleet(space, robots)
    if form.name == "text" and form.output is None:
        for line in _table(found, shutil.get_terminal_size().columns):
            say(line)
    show(space.source, found.report, form)
    return 0 if found.report.clean else 1


def _table(found: Fleet, width: int) -> Iterator[str]:
    """Yield the table's lines; robots that are too many for one width come in the next table."""
    from namegen.reports.columns import width_of
    from namegen.text.terminal import printable

    rows = [tuple(map(printable, row)) for row in (("", *found.robots), *found.rows)]
    sizes = [max(map(width_of, column)) for column in zip(*rows, strict=True)]
    first = 1
    while first < len(sizes):
        last = first + 1
        while (
            last < len(sizes)
            and sum(sizes[first : last + 1]) + sizes[0] + len(_GAP) * (last - first + 2) <= width
        ):
            last += 1
        for row in rows:
            shown = zip((row[0], *row[first:last]), (sizes[0], *sizes[first:last]), strict=True)
            yield _GAP.join(cell + " " * (size - width_of(cell)) for cell, size in shown).rstrip()
        yield ""
        first = last
