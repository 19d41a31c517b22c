"""Explain: a finding kind, or a name that a robot did not find, letter by letter."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from msgspec import Struct
from msgspec.structs import replace

from namegen import checks
from namegen.checks.code.likely import slip_of_old_name
from namegen.model.manifests import Device, Manifest
from namegen.operations.checklist import what_to_check
from namegen.text.differences import marks, spell_out
from namegen.text.likeness import nearest, suggest
from namegen.text.lookalikes import look_alike

TARGET = "target"
"""The word that targets are asked for by, alone or with their names after it."""

_QUOTED = re.compile(r"""["'`“”‘’«»]([^"'`“”‘’«»]+)["'`“”‘’«»]""")
_BARE = re.compile(r"[\w.-]+")


class Owner(Struct, frozen=True):
    """A device of a robot that a text is, was, or is likely meant to be."""

    robot: str
    device: Device
    former: str | None = None
    """The old name of the device that is meant, where it is not its present one."""
    to_check: tuple[str, ...] = ()
    """What to look at when the name is right and the robot does not find the device."""


class Explanation(Struct, frozen=True):
    """What a name is about: who has exactly this name, or who is nearest to it.

    ``marks`` are two lines with ``^`` under the letters in which the text and
    the nearest name differ; ``difference`` says the same in words.
    """

    text: str
    exact: tuple[Owner, ...] = ()
    near: tuple[Owner, ...] = ()
    marks: tuple[str, str] = ("", "")
    difference: str = ""
    unsure: tuple[str, ...] = ()
    """Names that are near too, when none is clearly meant."""
    kind: str | None = None
    """The finding kind that is meant, when it is no name of a device."""
    otherwise: tuple[Owner, ...] = ()
    """Devices of robots that lack exactly this name and have one that looks like it."""
    things: tuple[str, ...] = ()
    """What else of a robot is called so: itself, a setup, a controller or a port."""


def topics(words: Sequence[str], manifests: Sequence[Manifest]) -> tuple[str, ...]:
    """Return what several words are about: each by itself, or one error text that they make.

    An error text has names in it, but most of its words are none.
    """
    known = [word for word in words if _understood(word, manifests)]
    return tuple(words) if len(known) * 2 >= len(words) else (" ".join(words),)


def of_robots(
    words: Sequence[str], manifests: Sequence[Manifest]
) -> tuple[tuple[str, ...], tuple[Manifest, ...]]:
    """Return the words that ask for something, and the robots that they ask it of.

    Robots that are named beside other words are meant to answer alone.
    """
    named = [manifest for manifest in manifests if manifest.robot in words]
    others = tuple(word for word in words if word not in {one.robot for one in named})
    return (others, tuple(named)) if named and others else (tuple(words), tuple(manifests))


def _understood(word: str, manifests: Sequence[Manifest]) -> bool:
    found = _explain(word, manifests)
    return bool(found.exact or found.near) or checks.kind(word) is not None


def explain_name(text: str, manifests: Sequence[Manifest]) -> Explanation:
    """Explain a device name, or the name inside an error text that a robot showed.

    Of an error text the part that is nearest to a device's name is taken, quoted
    parts first.
    """
    best = Explanation(text.strip())
    for part in _parts(text):
        found = _explain(part, manifests)
        if found.exact or found.near:
            return found
        if found.unsure and not best.unsure:
            best = found
    things = tuple(_things(text.strip(), manifests))
    if things:
        return Explanation(text.strip(), things=things)
    return best if best.unsure else replace(best, kind=nearest(best.text, checks.kinds()))


def _parts(text: str) -> Iterable[str]:
    """Yield what may be a name: the whole text, then what stands in quotes, then each word."""
    yield text
    yield from _QUOTED.findall(text)
    words = _BARE.findall(text)
    if len(words) > 1:
        yield from sorted(words, key=len, reverse=True)


def _explain(text: str, manifests: Sequence[Manifest]) -> Explanation:
    exact = tuple(_owners(text, manifests))
    if exact:
        return Explanation(text, exact=exact, otherwise=tuple(_otherwise(text, manifests)))
    names = {device.name for manifest in manifests for device in manifest.devices.values()}
    alike = sorted(name for name in names if _alike(name, text))
    best, rivals = (alike[0], ()) if len(alike) == 1 else (None, tuple(alike))
    if not alike:
        suggestion = suggest(text, sorted(names))
        best, rivals = suggestion.best, suggestion.rivals
    near = tuple(_owners(best, manifests)) if best else tuple(_slips(text, manifests))
    if not near:
        return Explanation(text, unsure=rivals)
    meant = near[0].former or near[0].device.name
    owners = tuple(one for one in near if meant in (one.former, one.device.name))
    difference = spell_out(text, meant)
    return Explanation(text, near=owners, marks=marks(text, meant), difference=difference)


def _slips(text: str, manifests: Iterable[Manifest]) -> Iterable[Owner]:
    """Yield the devices whose old name is surely meant, by the rule that an audit has."""
    for manifest in manifests:
        old = slip_of_old_name(text, manifest)
        for device in manifest.retired[old] if old else ():
            yield Owner(manifest.robot, device, former=old)


def _alike(name: str, text: str) -> bool:
    return name.casefold() == text.casefold() or look_alike(name, text)


def _otherwise(text: str, manifests: Iterable[Manifest]) -> Iterable[Owner]:
    """Yield the devices that a robot without this name has under one that looks like it."""
    for manifest in manifests:
        if text not in manifest.devices and text not in manifest.retired:
            for name, device in manifest.devices.items():
                if _alike(name, text):
                    yield Owner(manifest.robot, device)


def _things(text: str, manifests: Iterable[Manifest]) -> Iterable[str]:
    """Yield what else of the robots has this name, or is plugged in at this port."""
    for manifest in manifests:
        robot = manifest.robot
        if text == robot:
            yield f"the robot of {manifest.path}, with {len(manifest.devices)} devices"
        if text in manifest.setups:
            chosen = ", which is the selected one" if text == manifest.selected else ""
            yield f"a setup of {robot}{chosen}"
        if text in manifest.controllers:
            yield f"a controller of {robot}, board {manifest.controllers[text].board}"
        for device in manifest.devices_in():
            if text.casefold() in (str(port).casefold() for port in device.ports):
                yield f'the port of "{device.name}" on {robot} ({device.place("port")})'


def _owners(name: str, manifests: Sequence[Manifest]) -> Iterable[Owner]:
    for manifest in manifests:
        if name in manifest.devices:
            to_check = what_to_check(manifest, name)
            yield Owner(manifest.robot, manifest.devices[name], to_check=to_check)
        for device in manifest.retired.get(name, ()):
            yield Owner(manifest.robot, device, former=name)
