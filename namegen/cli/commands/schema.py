"""``namegen schema``: the JSON Schemas of the YAML files, for editors."""

from __future__ import annotations

from pathlib import Path

import click

ORDER = 80
DOCUMENTS = ("manifest", "catalogue", "workspace")


@click.command(short_help="Print the JSON Schemas of the YAML files.")
@click.argument("document", type=click.Choice(DOCUMENTS), required=False)
@click.option(
    "--into",
    metavar="DIR",
    type=click.Path(path_type=Path),
    help="Write all three as files into DIR, for an editor to use.",
)
def command(document: str | None, into: Path | None) -> int:
    """Print the JSON Schema (2020-12) of a YAML file: manifest, catalogue or workspace."""
    import json

    from namegen.cli.reporting import say
    from namegen.errors import UnusableInput
    from namegen.loading.schema import json_schema

    if into is None:
        if document is None:
            raise click.UsageError(f"name one of {', '.join(DOCUMENTS)}, or give --into DIR")
        say(json.dumps(json_schema(document), indent=2, ensure_ascii=False))
        return 0
    for name in (document,) if document else DOCUMENTS:
        path = into / f"{name}.schema.json"
        text = json.dumps(json_schema(name), indent=2, ensure_ascii=False) + "\n"
        try:
            into.mkdir(parents=True, exist_ok=True)
            path.write_text(text, encoding="utf-8", newline="\n")
        except OSError as error:
            reason = (error.strerror or str(error)).lower()
            raise UnusableInput(f"cannot be written: {reason}", where=str(path)) from error
        say(f"wrote {path}")
    if document in (None, "manifest"):
        up = "" if into.is_absolute() else "../"
        say("next: let each manifest name its schema in the first line, from its own folder on:")
        say(f"# yaml-language-server: $schema={up}{(into / 'manifest.schema.json').as_posix()}")
    return 0
