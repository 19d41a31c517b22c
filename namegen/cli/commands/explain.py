"""``namegen explain``: a finding kind, or a name that was not found, letter by letter."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

import click

from namegen.cli.options import Where, takes_where

if TYPE_CHECKING:
    from namegen.model.findings import FindingKind
    from namegen.operations.explain import Explanation, Owner

ORDER = 70
WIDTH = 88


@click.command(short_help="Explain a finding kind, or a name that was not found.")
@click.argument("word", nargs=-1)
@takes_where
def command(word: tuple[str, ...], where: Where) -> int:
    """Explain a finding kind, the word `target`, or a name or error text; alone, list the kinds.

    A name or the text of an error that a robot showed is held letter by letter
    against the nearest name in the manifests.
    """
    from namegen import checks

    text = " ".join(word)
    if not text:
        _say_kinds()
        return 0
    kind = checks.kinds().get(text)
    if kind is not None:
        _say_kind(kind)
        return 0
    if text == "target":
        _say_targets()
        return 0
    from namegen.operations.explain import explain_name

    found = explain_name(text, where.open().manifests)
    _say_name(found)
    return 0 if any(not owner.former for owner in found.exact) else 1


def _say_kinds() -> None:
    from namegen import checks
    from namegen.cli.reporting import say

    for kind in checks.kinds().values():
        say(f"{kind.name:22}{kind.severity.value:9}{kind.what.split('. ')[0].rstrip('.')}")


def _say_kind(kind: FindingKind) -> None:
    from namegen.cli.reporting import say

    say(f"{kind.name} ({kind.severity.value})\n")
    for heading, body in (
        ("What", kind.what),
        ("Why it matters", kind.why),
        ("Wrong", kind.example.flagged),
        ("Right", kind.example.mended),
        ("Repair", kind.repair),
    ):
        lines = "\n".join(_indented(body))
        say(f"{heading}:\n{lines}\n")


def _indented(body: str) -> Iterator[str]:
    """Yield the lines of a text, long ones wrapped; samples keep their own shape."""
    import textwrap

    for line in body.strip("\n").splitlines():
        if line.startswith(" ") or len(line) <= WIDTH:
            yield f"  {line}".rstrip()
        else:
            yield from textwrap.wrap(line, WIDTH, initial_indent="  ", subsequent_indent="  ")


def _say_targets() -> None:
    from namegen.bundled import bundled
    from namegen.cli.reporting import say
    from namegen.targets.guide import describe
    from namegen.targets.shelf import load

    say(describe(load([bundled("templates")])))


def _say_name(found: Explanation) -> None:
    from namegen.cli.reporting import say
    from namegen.text.terminal import printable

    text = printable(found.text)
    for owner in found.exact:
        say(f'"{text}" {_owned(owner)}')
    if found.exact:
        return
    if found.near:
        width = len("it is called  ")
        name = found.near[0].device.name
        say(f'no device is called "{text}"')
        say(f"you have      {text}\n{' ' * width}{found.marks[0]}".rstrip())
        say(f"it is called  {name}\n{' ' * width}{found.marks[1]}".rstrip())
        say(f"difference: {found.difference}")
        for owner in found.near:
            say(f'"{name}" {_owned(owner)}')
        return
    say(f'no device is called "{text}", and none has a name that is clearly meant')
    if found.unsure:
        say(f"near it are: {', '.join(found.unsure)}; look at the sheet which one is meant")


def _owned(owner: Owner) -> str:
    device = owner.device
    ports = " and ".join(map(str, device.ports)) or "a port not yet decided"
    what = f"{device.kind} of {owner.robot}, plugged in at {ports} ({device.place()})"
    if owner.former:
        return f'is the old name of "{device.name}", a {what}; write the new name'
    return f"is a {what}"
