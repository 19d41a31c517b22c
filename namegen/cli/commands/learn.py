"""``namegen learn``: finds how a code base looks its devices up."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from namegen.cli.options import FILE, Where

if TYPE_CHECKING:
    from namegen.operations.learn import Learnt

ORDER = 45


@click.command(short_help="Find how code looks devices up, and print it for namegen.yaml.")
@click.argument("paths", nargs=-1, metavar="[PATH]...", type=FILE)
@click.option(
    "--workspace",
    metavar="DIR",
    type=FILE,
    help="The folder with namegen.yaml (default: the nearest one upwards).",
)
def command(paths: tuple[Path, ...], workspace: Path | None) -> int:
    """Find how code looks devices up, from the names that it already uses.

    Prints rows for `lookups` in namegen.yaml and changes nothing: read them, and put those
    that are right into the file.
    """
    from namegen.cli.reporting import count, say
    from namegen.operations.learn import learn, row
    from namegen.text.terminal import printable

    lesson = learn(Where(workspace).open(), paths)
    read = count(lesson.files, "file")
    for path in lesson.lost:
        say(f"# {path} cannot be read, so its names were not looked for; see `namegen verify`")
    for path in lesson.unread:
        say(f"# {printable(path)} cannot be read; save it as UTF-8, or declare its encoding")
    for rule in lesson.known:
        say(f"# namegen.yaml has {rule.shape}: {printable(rule.called)} already")
    if not lesson.found:
        say(f"# nothing {'more ' if lesson.known else ''}that looks devices up in {read}")
        return 0
    say("lookups:")
    for one in lesson.found:
        say(f"  - {printable(row(one.rule))}    # {_evidence(one)}")
    say(f"# from {read}; put the rows that are right into namegen.yaml")
    return 0


def _evidence(one: Learnt) -> str:
    from namegen.cli.reporting import count
    from namegen.text.terminal import printable

    seen = f"{count(len(one.names), 'name')} {one.names.total()} times, as in {one.place}"
    texts = [*+one.slips, *(text for text, _ in one.others.most_common())]
    others = [f'"{printable(text)}"' for text in texts[:3]]
    return seen + (f"; but also {', '.join(others)}" if others else "")
