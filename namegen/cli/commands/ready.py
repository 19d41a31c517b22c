"""``namegen ready``: the last look before a robot is switched on."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

from namegen.cli.options import SCREEN, Form, Where, takes_form, takes_where

if TYPE_CHECKING:
    from namegen.operations.ready import Readiness, RobotState
    from namegen.operations.workspace import Workspace

ORDER = 55

MOST_ACCEPTED = 5
"""So many accepted errors are listed of a robot."""

CAUTION = (
    "Ready means that manifest, outputs and code agree, and nothing more: it looks at no wire, no "
    "battery and no moving part. Wire with the battery unplugged, keep clear of what moves, make "
    "first moves at low power with a second person present. Local rules and the people appointed "
    "to decide come first."
)


@click.command(short_help="Take the last look before a robot is switched on.")
@click.argument("robots", nargs=-1, metavar="[ROBOT]...")
@takes_where
@takes_form
def command(robots: tuple[str, ...], where: Where, form: Form) -> int:
    """Look at manifests, outputs and code in one, and say what to check on the machine.

    Every error and warning of `verify`, `build --stale` and `audit` comes first; then, for
    each robot, whether it is ready, the setup to select and the mark of its sheet.
    """
    from namegen.cli.reporting import show, watched
    from namegen.operations.ready import ready

    space = where.open()
    found = ready(space, robots, watched)
    if form == SCREEN:
        _say(space, found)
    else:
        show(space.source, found.whole, form)
    return 0 if found.ready else 1


def _say(space: Workspace, found: Readiness) -> None:
    import textwrap

    from namegen.cli.reporting import say, show_graver

    if found.report.findings:
        show_graver(space.source, found.report, "`namegen verify` or `namegen audit`")
        say("")
    for output in found.planned.behind:
        say(f"{output.path}: {output.state.value}; {output.state.remedy}")
    for path in found.unread:
        say(f"{path}: nothing is known of this robot; mend what is said above first")
    for robot in found.robots:
        _say_robot(robot)
    say("\n" + textwrap.fill(CAUTION, 80))


def _say_robot(state: RobotState) -> None:
    from namegen.cli.reporting import count, say
    from namegen.languages import extensions
    from namegen.text.terminal import printable

    lacks = [
        count(number, one, many)
        for number, one, many in (
            (state.errors, "error", "errors"),
            (state.warnings, "warning", "warnings"),
            (len(state.behind), "output not current", "outputs not current"),
        )
        if number
    ]
    ready = "ready" if state.has_code else "manifest and outputs agree"
    if state.accepted:
        ready += f", but for {count(len(state.accepted), 'error')} that somebody accepted"
    say(f"{printable(state.robot)}: {ready if state.ready else 'NOT ready: ' + ', '.join(lacks)}")
    if state.unread:
        endings = ", ".join(sorted({path[path.rindex(".") :] for path in state.unread}))
        files = count(len(state.unread), "file")
        say(f"  code            {files} ({endings}) not read; look the names in there over")
    for finding in state.accepted[:MOST_ACCEPTED]:
        say(f"  accepted        {finding.kind} at {printable(str(finding.place))}")
    if len(state.accepted) > MOST_ACCEPTED:
        say(f"  accepted        and {len(state.accepted) - MOST_ACCEPTED} more")
    if not state.has_code and not state.unread:
        read = ", ".join(sorted(name.capitalize() for name in set(extensions().values())))
        say(f"  code            none was read; look its names over ({read} are what is read)")
    if state.setup is not None:
        say(f"  select          {printable(state.setup)}")
    say(f"  sheet mark      {state.mark}")
