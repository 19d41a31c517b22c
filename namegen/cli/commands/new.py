"""``namegen new``: starts a workspace, or another robot in one."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from namegen.cli.options import Where

ORDER = 20


@click.command(short_help="Start a workspace, or another robot in one.")
@click.argument("words", nargs=-1, metavar="[DIR] | robot NAME")
@click.option("--like", metavar="ROBOT", help="With `robot NAME`: copy this robot's manifest.")
@click.option(
    "--workspace",
    metavar="DIR",
    type=click.Path(path_type=Path),
    help="With `robot NAME`: the folder with namegen.yaml (default: the nearest one upwards).",
)
@click.option(
    "--from",
    "chart",
    metavar="CHART",
    type=click.Path(path_type=Path),
    help="Make the workspace from a chart that exists: CSV or .xlsx.",
)
@click.option(
    "--columns",
    multiple=True,
    metavar="FIELD=HEADING,...",
    help="With --from: which column is what, where the guess is wrong.",
)
@click.option(
    "--kind",
    "kinds",
    multiple=True,
    metavar="WORD=KIND",
    help="With --from: which kind a word of the chart means.",
)
def command(
    words: tuple[str, ...],
    like: str | None,
    workspace: Path | None,
    chart: Path | None,
    columns: tuple[str, ...],
    kinds: tuple[str, ...],
) -> int:
    """Start a workspace in DIR (default: here), or add a robot to one.

    \b
    namegen new boats                      a workspace in the folder boats
    namegen new boats --from chart.csv     the same, with the devices of a chart
    namegen new robot wren --like heron    wren's manifest, copied from heron's
    """  # noqa: D301 - click takes the backspace itself for "do not wrap"
    if words[:1] == ("robot",) and len(words) == 2 and not (chart or columns or kinds):
        return _robot(words[1], like, workspace)
    if words == ("robot",) and not chart and _in_workspace():
        raise click.UsageError("write the robot's name too: `namegen new robot NAME`")
    if len(words) > 1 or like or workspace:
        raise click.UsageError("write `namegen new DIR`, or `namegen new robot NAME --like ROBOT`")
    folder = Path(words[0]) if words else Path.cwd()
    if chart:
        return _from_chart(folder, chart, columns, kinds)
    if columns or kinds:
        raise click.UsageError("--columns and --kind go with --from CHART")
    return _workspace(folder)


def _in_workspace() -> bool:
    """Whether a robot can be meant, and not a folder of that name for a workspace."""
    from namegen.errors import UnusableInput
    from namegen.operations.roots import find_root

    try:
        find_root(Path.cwd())
    except UnusableInput:
        return False
    return True


def _robot(name: str, like: str | None, workspace: Path | None) -> int:
    from namegen.cli.reporting import say
    from namegen.operations.new import named_by, new_robot

    space = Where(workspace).open()
    path = new_robot(space, name, like)
    say(f"wrote {path}")
    names = [] if named_by(space, path) else [f"{path} under `robots`"]
    told = " and ".join([*names, f"{name} under `code`"])
    say(f"next: edit it, name {told} in {space.settings.path}, then `namegen verify`")
    return 0


def _workspace(folder: Path) -> int:
    from namegen.cli.reporting import say
    from namegen.operations.new import lay_out, starter_files

    for path in lay_out(starter_files(), folder):
        say(f"wrote {folder / path}")
    say("next: write your boards into catalogue.yaml and your devices into robots/first.yaml,")
    say("then run `namegen verify` and `namegen build` in that folder")
    return 0


def _from_chart(folder: Path, path: Path, columns: tuple[str, ...], kinds: tuple[str, ...]) -> int:
    from namegen.cli.chart_words import ask_kind, tell_guess, tell_rows, tell_unsure
    from namegen.cli.reporting import count, say, show
    from namegen.operations.chart import files_of, read
    from namegen.operations.new import lay_out
    from namegen.operations.verify import verify
    from namegen.operations.workspace import open_workspace

    found = read(path, columns, kinds, ask_kind if sys.stdin.isatty() else None)
    files = files_of(found.chart, path.name)
    tell_guess(found)
    written = lay_out(files, folder)
    for file in written:
        say(f"wrote {folder / file}")
    tell_rows(found.chart)
    workspace = open_workspace(folder)
    report = verify(workspace)
    say("\nWhat `namegen verify` says about them:")
    show(workspace.source, report)
    tell_unsure(found.chart)
    misfits = found.chart.misfits
    placed = sum(len(robot.placed) for robot in found.chart.robots)
    say(f"\n{count(placed, 'device')} placed, {count(len(misfits), 'row')} not placed")
    say(f"next: check the port labels in {folder / 'catalogue.yaml'} against your boards")
    return 0 if report.clean and not misfits else 1
