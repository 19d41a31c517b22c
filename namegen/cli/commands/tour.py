"""``namegen tour``: lays the bundled example out and runs the whole job on it."""

from __future__ import annotations

from pathlib import Path

import click

ORDER = 10
DEFAULT_FOLDER = "namegen-tour"


@click.command(short_help="Lay the example out in DIR and run the whole job on it.")
@click.argument("folder", metavar="[DIR]", default=DEFAULT_FOLDER, type=click.Path(path_type=Path))
def command(folder: Path) -> int:
    """Copy the example to DIR and run the whole job on it, saying what happens."""
    from namegen.cli.reporting import count, say, say_diff
    from namegen.operations import fix
    from namegen.operations.files import Folder
    from namegen.operations.new import lay_out
    from namegen.operations.tour import example_files, hand_mends

    steps = _Steps(folder)
    steps.tell("A boat club keeps three boats: heron, kingfisher and dipper.")
    written = lay_out(example_files(), folder)
    say(
        f"{count(len(written), 'file')} laid out in {folder}; {folder / 'README.md'} describes them"
    )

    steps.tell("Is anything wrong in the manifests?")
    steps.run("verify")
    steps.tell("Make the constants, the configurations and the sheets.")
    steps.run("build")
    steps.tell("Hold the members' programs against the manifests.")
    steps.run("audit")
    steps.tell("Some slips can mean one device only. This is what the repair would change.")
    steps.run("audit", "--fix-suggested", "--diff")
    steps.tell("Make these repairs. What is left needs a person.")
    steps.run("audit", "--fix-suggested")
    steps.tell("What only the writer knows, the writer mends by hand:")
    mends = hand_mends(Folder(folder))
    say_diff(list(fix.diff(mends)))
    Folder(folder).write({mend.path: mend.new for mend in mends})
    steps.tell("The boats side by side: what differs between them, and should it?")
    steps.run("fleet")
    steps.tell("The last look: do the manifests, the outputs and the programs agree now?")
    last = steps.run("ready")
    steps.tell("Start a program with the wrong setup selected; it says so before anything moves:")
    say(f"  cd {folder}; python library/run.py code/heron/visit.py tank-test")
    steps.tell("Open the sheet in a browser and print it, wire by it, and hang it beside the boat:")
    for sheet in sorted((folder / "sheets").glob("*.html")):
        say(f"  {sheet}")
    return last


class _Steps:
    """Numbers the steps, and runs commands as a user would type them in the example's folder."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.number = 0

    def tell(self, what: str) -> None:
        """Begin a step."""
        from namegen.cli.reporting import say

        self.number += 1
        say(
            click.style(f"\n{self.number}. {what}", bold=True)
            if _on_screen()
            else f"\n{self.number}. {what}"
        )

    def run(self, *args: str) -> int:
        """Run one command on the example and return its exit code."""
        from namegen.cli import namegen
        from namegen.cli.reporting import say

        say(f"$ namegen {' '.join(args)}")
        code = namegen.main(
            [*args, "--workspace", str(self.folder)], prog_name="namegen", standalone_mode=False
        )
        return int(code or 0)


def _on_screen() -> bool:
    import sys

    return sys.stdout.isatty()
