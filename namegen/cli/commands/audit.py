"""``namegen audit``: holds code against the manifests, and mends it."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

from namegen.cli.options import FILE, SCREEN, Form, Where, takes_form, takes_where

if TYPE_CHECKING:
    from namegen.operations.code_files import Selection
    from namegen.operations.fix import Fixed
    from namegen.operations.workspace import Workspace

ORDER = 50


@click.command(short_help="Hold the code against the manifests, and mend it.")
@click.argument("paths", nargs=-1, metavar="[PATH]...", type=FILE)
@click.option("--fix", is_flag=True, help="Make the safe repairs.")
@click.option("--fix-suggested", is_flag=True, help="Make the safe and the suggested repairs.")
@click.option("--diff", is_flag=True, help="Write nothing; show what the repairs would change.")
@click.option(
    "--constants",
    is_flag=True,
    help="Report names typed where a constant exists, too; with --fix or --diff, write the "
    "constants after the repairs.",
)
@click.option("--since", metavar="REV", help="Audit only files that changed since a git revision.")
@click.option(
    "--stdin",
    metavar="PATH",
    type=FILE,
    help="Audit standard input as the file PATH; with --fix, print the mended text.",
)
@click.option(
    "--accept",
    is_flag=True,
    help="Accept what is found now, so that only what is new is reported; later: take out "
    "what is no longer found.",
)
@click.option(
    "--lookup",
    "lookups",
    metavar="ROW",
    multiple=True,
    help="With --manifest: a look-up, such as '{call: motor, kind: motor}'; may be repeated.",
)
@takes_where
@takes_form
def command(
    paths: tuple[Path, ...],
    fix: bool,
    fix_suggested: bool,
    diff: bool,
    constants: bool,
    since: str | None,
    stdin: Path | None,
    accept: bool,
    lookups: tuple[str, ...],
    where: Where,
    form: Form,
) -> int:
    """Hold the code against the manifests: every look-up of a device, by its exact text.

    A repair is safe when exactly one device can be meant and it is of the kind
    that the code asks for; the others are suggestions.
    """
    if stdin is not None and (paths or since or accept):
        raise click.UsageError("--stdin stands for one file; leave PATH, --since and --accept out")
    if accept and (paths or since or fix or fix_suggested or diff or constants):
        raise click.UsageError("--accept is for all code as it is; give no other option or PATH")
    if form != SCREEN and (diff or (stdin is not None and (fix or fix_suggested))):
        raise click.UsageError(
            "this prints a diff or the mended text; ask for --report and --output in another run"
        )
    space = _opened(where, lookups, paths or ((stdin,) if stdin else ()))
    if accept:
        return _accept(space)
    selection = _selection(paths, since, stdin)
    if fix or fix_suggested or diff:
        fixed = _mended(space, selection, suggested=fix_suggested, constants=constants)
        return _write(space, selection, fixed, form, diff=diff)
    return _report(space, selection, form, ("loose-literal",) if constants else ())


def _opened(where: Where, lookups: tuple[str, ...], code: tuple[Path, ...]) -> Workspace:
    if where.manifest and not (lookups and code):
        raise click.UsageError(
            "with --manifest, name the code as PATH and its look-ups as --lookup"
        )
    return where.open(lookups=lookups, code=code)


def _selection(paths: tuple[Path, ...], since: str | None, stdin: Path | None) -> Selection:
    from namegen.operations.code_files import Selection

    return Selection(paths, since, None if stdin is None else (stdin, sys.stdin.buffer.read()))


def _mended(space: Workspace, selection: Selection, *, suggested: bool, constants: bool) -> Fixed:
    """Work the repairs out, and with ``constants`` the change of typed names to constants."""
    from namegen.operations.fix import SAFE, SUGGESTED, fix
    from namegen.operations.mending import mend_with_constants

    mend = mend_with_constants if constants else fix
    return mend(space, selection, SUGGESTED if suggested else SAFE)


def _report(space: Workspace, selection: Selection, form: Form, asked: tuple[str, ...]) -> int:
    from namegen.cli.reporting import say, show, watched
    from namegen.operations.audit import audit, seen_folder
    from namegen.reports.text import not_read

    done = audit(space, selection, asked=asked, watch=watched)
    show(seen_folder(space, selection).source, done.report, form)
    if not done.report.files and not done.report.unread:
        say(f"no code was read: {_why_none(selection)}", err=True)
    if done.report.unread and (form.name != "text" or form.output):
        say(not_read(done.report.unread), err=True)
    _say_what_is_left_out(space)
    return 0 if done.report.clean else 1


def _why_none(selection: Selection) -> str:
    if selection.since is not None:
        return f"no file that an audit reads has changed since {selection.since}"
    return "none of these files is in a language that namegen reads"


def _write(space: Workspace, selection: Selection, fixed: Fixed, form: Form, *, diff: bool) -> int:
    """Write the repairs, show them, or print the mended text of standard input."""
    from namegen.cli.reporting import count, say, say_diff, show
    from namegen.operations import fix

    for place, reason in fixed.refused:
        seen = place if diff else fixed.moved.get(place, place)
        say(f"{seen}: not rewritten: {reason}", err=True)
    if diff:
        say_diff(list(fix.diff(fixed.changes)))
        _say_what_stays(fixed)
        return 0 if fixed.before.clean else 1
    if selection.text is not None:
        path, text = selection.text
        own = space.folder.relative(path)
        for other in (change.path for change in fixed.changes if change.path != own):
            say(f"{other}: this name stands there; `namegen audit --fix` mends it", err=True)
        sys.stdout.buffer.write(fixed.text_of(own, text))
    else:
        fix.write(space, fixed)
        made = f"mended {count(fixed.edits - fixed.constants, 'name')}"
        written = f", wrote {count(fixed.constants, 'constant')}" if fixed.constants else ""
        say(f"{made}{written} in {count(len(fixed.changes), 'file')}", err=True)
        show(space.source, fixed.after, form)
    return 0 if fixed.after.clean else 1


def _say_what_stays(fixed: Fixed) -> None:
    """Say of a diff which findings it does not mend, and where they are shown."""
    from namegen.cli.reporting import count, say
    from namegen.model.findings import Severity

    graver = [one for one in fixed.after.findings if one.severity is not Severity.NOTE]
    likely = sum(one.fix is not None for one in graver)
    if not graver:
        return
    left = f"{count(len(graver), 'finding')} would be left"
    what = left if fixed.changes else f"nothing was found that these repairs can mend; {left}"
    say(f"{what}: `namegen audit` shows where, and what to do", err=True)
    if likely:
        say(f"--fix-suggested --diff shows the likely repair of {likely} of them", err=True)


def _accept(space: Workspace) -> int:
    from namegen.cli.reporting import count, say
    from namegen.model.findings import Severity
    from namegen.operations.acceptances import ACCEPTED_FILE
    from namegen.operations.audit import accept

    done = accept(space)
    number = count(len(done.findings), "finding")
    say(f"{number} accepted in {ACCEPTED_FILE}; audits report what is new")
    errors = sum(finding.severity is Severity.ERROR for finding in done.findings)
    if errors:
        say(f"{errors} of them can stop a program; `namegen ready` names them for each robot")
    if done.new:
        say(
            f"the file only shrinks: {count(done.new, 'finding')} more stayed out of it; "
            "`namegen audit` shows what to mend, or to allow where it stands"
        )
    return 0


def _say_what_is_left_out(space: Workspace) -> None:
    from namegen.cli.reporting import say

    for manifest in space.manifests:
        if not space.sound(manifest):
            say(
                f"{manifest.robot}: its code was not audited; mend {manifest.path} first",
                err=True,
            )
