"""The command: click, one file per command."""

from __future__ import annotations

import atexit
import gc
import os
import sys

import click

from namegen.cli.group import CommandFolder
from namegen.errors import NamegenError

EXIT_FOUND = 1
EXIT_UNUSABLE = 2
EXIT_INTERRUPTED = 130


@click.group(
    cls=CommandFolder,
    context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100},
)
@click.version_option(package_name="namegen", message="%(prog)s %(version)s")
def namegen() -> None:
    """Keep the names of a robot's devices the same everywhere.

    One manifest per robot says what is plugged in where and what it is called.
    From it come constants, configuration stubs and the setup sheet; against it
    the code is held.
    """


def _start_fast() -> None:
    """Leave out what a short run does not need; measured with ``tests/bench/example.py``."""
    # Looking for plugins of pydantic reads every installed distribution: 40 ms.
    os.environ.setdefault("PYDANTIC_DISABLE_PLUGINS", "__all__")
    # Importing and parsing make many objects and hardly any cycles: 10 % of the time.
    gc.set_threshold(100_000, 50, 50)
    # Nor are the objects of a run looked through for cycles just before all of them go.
    atexit.register(gc.freeze)


def main(args: list[str] | None = None) -> None:
    """Run the command and exit: 0 nothing wrong, 1 findings, 2 input that cannot be used."""
    _start_fast()
    try:
        code = namegen.main(args, prog_name="namegen", standalone_mode=False)
    except NamegenError as error:
        click.echo(f"namegen: {error}", err=True)
        sys.exit(EXIT_UNUSABLE)
    except click.ClickException as error:
        error.show()
        sys.exit(EXIT_UNUSABLE)
    except (click.Abort, KeyboardInterrupt):
        click.echo("namegen: interrupted; every file is wholly old or wholly new", err=True)
        sys.exit(EXIT_INTERRUPTED)
    except BrokenPipeError:
        # The reader of our output has gone (`| head`); that is no fault of ours.
        sys.stderr.close()
        sys.exit(EXIT_FOUND)
    sys.exit(code or 0)
