"""``namegen explain``: finding kinds, or names that were not found, letter by letter."""

from __future__ import annotations

import shlex
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

import click

from namegen.cli.options import Where, takes_where

if TYPE_CHECKING:
    from namegen.model.findings import FindingKind
    from namegen.model.manifests import Manifest
    from namegen.operations.explain import Explanation, Owner
    from namegen.targets.shelf import Shelf

ORDER = 70
WIDTH = 88
MOST_LISTS = 3
"""So many robots are told at once what to check on each."""


@click.command(short_help="Explain finding kinds, targets, or names that were not found.")
@click.argument("words", nargs=-1, metavar="[WORD]...")
@takes_where
def command(words: tuple[str, ...], where: Where) -> int:
    """Explain finding kinds, targets, or names or an error text; alone, list the kinds.

    A name or the text of an error that a robot showed is held letter by letter
    against the nearest name in the manifests. Of a name that is right it says
    what to check next; a robot's name beside it asks for that robot alone. The
    word `target` lists all targets and tells how to write one; `target NAME`
    tells the options of one.
    """
    from namegen import checks
    from namegen.cli.reporting import say
    from namegen.operations.explain import TARGET, of_robots, topics

    if not words:
        _say_kinds()
        return 0
    if not any(word.strip() for word in words):
        raise click.UsageError("write a name, the text of an error, a finding kind or a target")
    if words[0] in (TARGET, f"{TARGET}s"):
        return _say_targets(words[1:], where)
    general = all(checks.kind(word) for word in words)
    space = None if general else where.open()
    manifests = space.addressed if space else ()
    words, manifests = of_robots(words, manifests)
    right = True
    for index, text in enumerate(topics(words, manifests)):
        if index:
            say("")
        right &= _said(text, manifests, where)
    for path in space.broken if space else ():
        say(f"{path} cannot be read, so its names are not known here; see `namegen verify`")
    return 0 if right and not (space and space.broken) else 1


def _said(text: str, manifests: Sequence[Manifest], where: Where) -> bool:
    """Explain one thing; return whether it is right as it is."""
    from namegen import checks
    from namegen.operations.explain import explain_name

    kind = checks.kind(text)
    if kind is not None:
        _say_kind(kind)
    else:
        found = explain_name(text, manifests)
        if not found.exact and not found.near and _is_target(text, where):
            return _say_targets([text], where) == 0
        _say_name(found)
        return any(not owner.former for owner in found.exact) or bool(found.things)
    return True


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


def _say_targets(names: Sequence[str], where: Where) -> int:
    """Tell the named targets, or all of them and how to write one; return the exit code."""
    from namegen.cli.reporting import say
    from namegen.targets.guide import describe, describe_one
    from namegen.text.likeness import nearest
    from namegen.text.terminal import printable

    shelf = _shelf(where)
    targets, faults = shelf.targets, [str(fault) for fault in shelf.broken.values()]
    trouble = "\n".join(f"\na target of your own cannot be used: {fault}" for fault in faults)
    if not names:
        say(describe(targets))
    for index, name in enumerate(names):
        if index:
            say("")
        if name in targets:
            say(describe_one(targets[name]))
        if name in targets or name in shelf.broken:
            continue
        near = nearest(name, targets)
        meant = f'; did you mean "{near}"?' if near else ""
        say(f'there is no target "{printable(name)}"{meant}')
        trouble = trouble or f"the targets are: {', '.join(targets)}"
    if trouble:
        say(trouble)
    return 1 if trouble else 0


def _is_target(name: str, where: Where) -> bool:
    shelf = _shelf(where)
    return name in shelf.targets or name in shelf.broken


def _shelf(where: Where) -> Shelf:
    """Return the targets of the workspace; where none can be read, the bundled ones."""
    from namegen.errors import NamegenError
    from namegen.targets.shelf import shelf

    try:
        return where.open().shelf
    except NamegenError:
        return shelf()


def _say_name(found: Explanation) -> None:
    from namegen.cli.reporting import say
    from namegen.text.terminal import printable

    text = printable(found.text)
    many = len(found.exact) > MOST_LISTS
    for owner in found.exact:
        say(f'"{text}" {_owned(owner)}')
        if owner.to_check and not many:
            say(f"the name is right; where {printable(owner.robot)} does not find it, check:")
        for number, point in enumerate(() if many else owner.to_check, 1):
            say(_numbered(number, printable(point)))
    if many:
        example = shlex.join(["namegen", "explain", text, found.exact[0].robot])
        say(f"the name is right; `{printable(example)}` tells what to check on one robot")
    for owner in found.otherwise:
        say(f'but {printable(owner.robot)} has it as "{printable(owner.device.name)}", ', end="")
        say(f"in other letters ({owner.device.place()})")
    for thing in found.things:
        say(f'"{text}" is {printable(thing)}')
    if found.exact or found.things:
        return
    if found.near:
        width = len("it was called ")
        former = found.near[0].former
        name, called = former or found.near[0].device.name, "was" if former else "is"
        say(f'no device is called "{text}"')
        say(f"you have      {text}\n{' ' * width}{found.marks[0]}".rstrip())
        lead = f"it {called} called"
        say(f"{lead:{width}}{name}\n{' ' * width}{found.marks[1]}".rstrip())
        say(f"difference: {found.difference}")
        for owner in found.near:
            say(f'"{name}" {_owned(owner)}')
        return
    say(f'no device is called "{text}", and none has a name that is clearly meant')
    if found.kind:
        say(f'did you mean the finding kind "{found.kind}"? `namegen explain {found.kind}`')
    if found.unsure:
        say(f"near it are: {', '.join(found.unsure)}; look at the sheet which one is meant")


def _numbered(number: int, text: str) -> str:
    import textwrap

    lead = f"  {number}. "
    return textwrap.fill(text, WIDTH, initial_indent=lead, subsequent_indent=" " * len(lead))


def _owned(owner: Owner) -> str:
    from namegen.checks.wording import a_device

    device = owner.device
    ports = " and ".join(map(str, device.ports)) or "a port not yet decided"
    what = f"{a_device(device.kind)} of {owner.robot}, plugged in at {ports} ({device.place()})"
    if owner.former:
        return f'is the old name of "{device.name}", {what}; write the new name'
    return f"is {what}"
