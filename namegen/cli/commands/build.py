"""``namegen build``: writes the outputs, or tells what is out of date."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from namegen.cli.options import FILE, SCREEN, Form, Where, takes_form, takes_where

if TYPE_CHECKING:
    from namegen.operations.build import Plan, Written

ORDER = 40


@click.command(short_help="Write constants, configuration stubs and setup sheets.")
@click.argument("robots", nargs=-1, metavar="[ROBOT]...")
@click.option("--stale", is_flag=True, help="Write nothing; exit 1 when an output is not current.")
@click.option("--diff", is_flag=True, help="Write nothing; show what would change.")
@click.option("--force", is_flag=True, help="Overwrite outputs that were edited by hand too.")
@click.option("--tidy", is_flag=True, help="Delete outputs that no manifest asks for any more.")
@click.option(
    "--target",
    "outputs",
    metavar="TARGET FILE",
    type=(str, FILE),
    multiple=True,
    help="With --manifest: a target and the file it goes to; may be repeated.",
)
@takes_where
@takes_form
def command(
    robots: tuple[str, ...],
    stale: bool,
    diff: bool,
    force: bool,
    tidy: bool,
    outputs: tuple[tuple[str, Path], ...],
    where: Where,
    form: Form,
) -> int:
    """Write constants, configuration stubs and setup sheets from the manifests.

    Only files that really differ are written. A file that was edited by hand is
    kept, and said so, unless --force is given. Errors in one robot's manifest
    stop that robot's outputs only.
    """
    from namegen.cli.reporting import say_diff, show
    from namegen.operations import build
    from namegen.operations.last_build import remember

    if form != SCREEN and (diff or not stale):
        raise click.UsageError("--report and --output go with --stale, which writes nothing else")
    planned, done = _plan(where, robots, outputs), build.NOTHING_WRITTEN
    if form == SCREEN:
        _say_findings(planned)
    if diff:
        say_diff(list(build.diff(planned.outputs, force=force)))
        _say_kept(planned, force=force)
        code = 0 if planned.current else 1
    elif stale and form != SCREEN:
        show(planned.folder.source, planned.with_outputs(planned.report), form)
        code = 0 if planned.current else 1
    elif stale:
        code = _say_states(planned)
    else:
        done = build.write(planned, force=force, tidy=tidy)
        code = _say_written(planned, done)
    remember(planned, robots, done)
    return code


def _plan(where: Where, robots: tuple[str, ...], outputs: tuple[tuple[str, Path], ...]) -> Plan:
    from namegen.operations import build
    from namegen.operations.last_build import Witness, recall
    from namegen.operations.workspace import open_folder

    if where.manifest is not None or outputs:
        return build.plan(where.open(outputs=outputs), robots)
    root = where.root()
    return recall(root, robots) or build.plan(open_folder(Witness(root)), robots)


def _say_findings(planned: Plan) -> None:
    from namegen.cli.reporting import say, show_graver

    show_graver(planned.folder.source, planned.report, "`namegen verify`")
    for robot in planned.stopped:
        say(f"{robot}: nothing was generated; mend the errors above first")


def _say_kept(planned: Plan, *, force: bool) -> None:
    from namegen.cli.reporting import say
    from namegen.operations.build import State

    for output in planned.outputs:
        if output.state is State.FOREIGN or (output.state is State.EDITED and not force):
            say(f"{output.path} would be kept: {output.state.value}; {output.state.remedy}")


def _say_states(planned: Plan) -> int:
    from namegen.cli.reporting import count, say
    from namegen.operations.build import State

    behind = [output for output in planned.outputs if output.state is not State.CURRENT]
    for output in behind:
        say(f"{output.path}: {output.state.value}; {output.state.remedy}")
    current = len(planned.outputs) - len(behind)
    say(f"{count(current, 'output')} current, {len(behind)} not")
    return 0 if planned.current else 1


def _say_written(planned: Plan, done: Written) -> int:
    from namegen.cli.reporting import count, say
    from namegen.operations.build import State

    if not planned.asked and not planned.stopped:
        say(
            "nothing to build: there are no `build` entries in namegen.yaml and no --target is "
            "given; `namegen explain target` lists the targets"
        )
        return 0
    if done.wrote:
        say("\n".join(f"wrote {path}" for path in done.wrote))
    for path in done.removed:
        say(f"deleted {path}")
    for output in planned.outputs:
        if output.path in done.kept:
            say(f"kept {output.path}: {output.state.value}; {output.state.remedy}")
    for output in planned.outputs:
        if output.artifact is None and output.path not in done.removed:
            say(f"{output.path}: {output.state.value}; {output.state.remedy}")
    same = sum(output.state is State.CURRENT for output in planned.outputs)
    say(f"{count(len(done.wrote), 'file')} written, {same} already right")
    return 1 if planned.stopped or done.kept or not planned.report.clean else 0
