"""What ``namegen new --from`` tells about a chart, and what it asks."""

from __future__ import annotations

import textwrap
from itertools import groupby
from typing import TYPE_CHECKING

import click

from namegen.cli.reporting import say

if TYPE_CHECKING:
    from namegen.loading.charts.chart import Chart, UnsureKind
    from namegen.operations.chart import ReadChart

_MOST_LISTED = 12


def tell_guess(found: ReadChart) -> None:
    """Show what was guessed, so that a wrong guess is seen."""
    from namegen.loading.charts.columns import FIELDS
    from namegen.model.boards import KINDS
    from namegen.text.likeness import nearest
    from namegen.text.terminal import printable

    say(f"read the chart {printable(found.how)}")
    for field, heading in found.guess.items():
        source = "" if heading.startswith("the titles") else "the column "
        say(f"  {field:<10} from {source}{printable(heading)}")
    if found.guess and not {"port", "label"} & found.guess.keys():
        say("  no column of ports was found, so every port is undecided")
    if found.unused:
        say(f"  kept as comments: {printable(', '.join(found.unused))}")
    for word, kind in found.chart.readings.items():
        best = None if kind in KINDS else nearest(kind, KINDS)
        new = "" if kind in KINDS else ", a kind of its own"
        new += f' (was "{best}" meant?)' if best else ""
        say(f'  "{printable(word)}" is taken for the kind {printable(kind)}{new}')
    if found.others:
        say(f"  not read: {printable(', '.join(found.others))}")
    if found.guess:
        say("  is a guess wrong? take the new files away again, then add to the same command")
        say('  --columns "FIELD=HEADING", where FIELD is one of')
        say(textwrap.fill(", ".join(FIELDS), 80, initial_indent="  ", subsequent_indent="  "))


def tell_rows(chart: Chart) -> None:
    """List the rows and cells that were not placed, and those that are no devices."""
    from namegen.text.terminal import printable

    if chart.asides:
        say("\nLeft out, because they are no devices (in comments at the end of the manifest):")
    for why, group in groupby(chart.asides, key=lambda aside: aside.why):
        alike = list(group)
        for aside in alike[:_MOST_LISTED]:
            say(f"  {printable(aside.place)}: {printable(aside.text)} ({why})")
        if len(alike) > _MOST_LISTED:
            say(f"  ... and {len(alike) - _MOST_LISTED} more of these")
    odd = [(one, cell) for robot in chart.robots for one in robot.placed for cell in one.odd]
    if odd:
        say("\nNot understood (these cells stand as comments at their device):")
    for one, cell in odd:
        say(f"  {printable(one.place)}, {printable(one.device.name)}: {printable(cell)}")
    if chart.misfits:
        say("\nNot placed (these rows stand as comments at the end of the manifest):")
    for (why, remedy), misfits in groupby(chart.misfits, key=lambda one: (one.why, one.remedy)):
        for misfit in misfits:
            say(f"  {printable(misfit.place)}: {printable(misfit.text)}")
        say(f"    {printable(why)}; {printable(remedy)}")


def tell_unsure(chart: Chart) -> None:
    """Say how to read the chart once more with the kinds that are missing."""
    from namegen.model.boards import KINDS
    from namegen.text.terminal import printable

    if not chart.unsure:
        return
    said = [f'--kind "{one.word}={one.likely or "KIND"}"' for one in chart.unsure]
    shown = said[:_MOST_LISTED] + (["..."] if len(said) > _MOST_LISTED else [])
    say("\nTo place what has no sure kind, take the new files away, and add to the same command:")
    for option in shown:
        say(f"  {printable(option)}")
    say(f"KIND is one of {', '.join(KINDS)}, or another word for a kind of its own.")


def ask_kind(unsure: UnsureKind) -> str | None:
    """Ask on the terminal what a word for a kind means; ``-`` leaves it open."""
    from namegen.model.boards import KINDS
    from namegen.text.likeness import nearest
    from namegen.text.terminal import printable

    places = ", ".join(unsure.places[:8])
    say(f'What is a "{printable(unsure.word)}" ({printable(places)})? {", ".join(KINDS)},')
    say("or a kind of its own in one word")
    answer: str = click.prompt("kind (- leaves it open)", default=unsure.likely or "-")
    kind = "-".join(answer.split())
    best = None if kind in {*KINDS, "-"} else nearest(kind, KINDS)
    if best and not click.confirm(f'"{kind}" is near "{best}". Make a kind of its own of it?'):
        return best
    return None if kind == "-" else kind
