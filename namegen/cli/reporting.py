"""Putting a report on the screen or into a file."""

from __future__ import annotations

import shutil
import sys
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

import click

from namegen.cli.options import SCREEN, Form
from namegen.errors import UnusableInput

LONG_RUN = 200
"""Files from which on a run shows how far it has come."""

if TYPE_CHECKING:
    from namegen.model.reports import Report, SourceText


def show(source: SourceText, report: Report, form: Form = SCREEN) -> None:
    """Print the report in one of the formats, or write it to its file.

    Raises:
        UnusableInput: the file cannot be written.
    """
    from namegen import checks, reports

    render = reports.renderer(form.name)
    on_screen = form.output is None and form.name == "text"
    text = render(
        report,
        source,
        checks.kinds(),
        width=shutil.get_terminal_size().columns if on_screen else 100,
        colour=on_screen and sys.stdout.isatty(),
    )
    if form.output is None:
        say(text, end="")
        return
    try:
        form.output.write_bytes(text.encode("utf-8"))
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        raise UnusableInput(
            f"the report cannot be written: {reason}",
            where=str(form.output),
            remedy="name a file that may be written, in a folder that is there",
        ) from error


def show_graver(source: SourceText, report: Report, shown_by: str) -> None:
    """Print the errors and warnings of a report; notes are counted, for ``shown_by`` tells them.

    Notes are the same in every run until somebody acts on them or accepts them.
    """
    from msgspec.structs import replace

    from namegen.model.findings import Severity

    graver = [one for one in report.findings if one.severity is not Severity.NOTE]
    notes = [one.kind for one in report.findings if one.severity is Severity.NOTE]
    if graver:
        show(source, replace(report, findings=tuple(graver)))
    if notes:
        kinds = ", ".join(f"{kind} {notes.count(kind)}" for kind in sorted(set(notes)))
        shown = "it" if len(notes) == 1 else "them"
        say(f"{count(len(notes), 'note')} ({kinds}); {shown_by} shows {shown}")


def say(text: str, *, end: str = "\n", err: bool = False) -> None:
    """Print text, whatever the terminal's encoding: letters it lacks become escapes."""
    stream = sys.stderr if err else sys.stdout
    encoding = getattr(stream, "encoding", None) or "utf-8"
    safe = (text + end).encode(encoding, errors="backslashreplace").decode(encoding)
    click.echo(safe, nl=False, err=err)


def say_diff(lines: list[str]) -> None:
    """Print a unified diff, harmless on a terminal, coloured where there is one."""
    from namegen.text.terminal import printable

    colours = {"+": "green", "-": "red", "@": "cyan"}
    for line in lines:
        plain = printable(line.expandtabs(4))
        bold = line.startswith(("+++", "---"))
        styled = click.style(plain, fg=None if bold else colours.get(line[:1]), bold=bold)
        say(styled if sys.stdout.isatty() else plain)


def watched(paths: Sequence[str]) -> Iterator[str]:
    """Yield the paths, showing on a terminal how far a long run has come."""
    if len(paths) < LONG_RUN or not sys.stderr.isatty():
        yield from paths
        return
    with click.progressbar(paths, label="reading code", file=sys.stderr) as bar:
        yield from bar


def count(number: int, one: str, many: str | None = None) -> str:
    """Return ``1 file``, ``2 files``."""
    return f"{number} {one if number == 1 else many or one + 's'}"
