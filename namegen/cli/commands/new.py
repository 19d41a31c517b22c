"""``namegen new``: starts a workspace, or another robot in one."""

from __future__ import annotations

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
def command(words: tuple[str, ...], like: str | None, workspace: Path | None) -> int:
    """Start a workspace in DIR (default: here), or add a robot to one.

    \b
    namegen new boats                      a workspace in the folder boats
    namegen new robot wren --like heron    wren's manifest, copied from heron's
    """  # noqa: D301 - click takes the backspace itself for "do not wrap"
    if words[:1] == ("robot",) and len(words) == 2:
        return _robot(words[1], like, workspace)
    if len(words) > 1 or like or workspace:
        raise click.UsageError("write `namegen new DIR`, or `namegen new robot NAME --like ROBOT`")
    return _workspace(Path(words[0]) if words else Path.cwd())


def _robot(name: str, like: str | None, workspace: Path | None) -> int:
    from namegen.cli.reporting import say
    from namegen.operations.new import new_robot

    space = Where(workspace).open()
    path = new_robot(space, name, like)
    say(f"wrote {path}")
    say(f"next: edit it, name {name} under `code` in {space.settings.path}, then `namegen verify`")
    return 0


def _workspace(folder: Path) -> int:
    from namegen.cli.reporting import say
    from namegen.operations.new import lay_out, starter_files

    for path in lay_out(starter_files(), folder):
        say(f"wrote {folder / path}")
    say("next: write your boards into catalogue.yaml and your devices into robots/first.yaml,")
    say("then run `namegen verify` and `namegen build` in that folder")
    return 0
