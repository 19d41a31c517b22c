"""A name that a programming language keeps for itself."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.manifest.own_identifiers import remedy
from namegen.checks.wording import listed, quoted
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.identifiers import NamingScheme
from namegen.model.manifests import Device
from namegen.model.views import RobotView

KIND = FindingKind(
    name="reserved-word",
    severity=Severity.ERROR,
    scope="device",
    what="A device's identifier, or a kind's type name, is a word that a generated language "
    "keeps for itself.",
    why="The generated code would not compile, or would hide something that programs need.",
    example=Example(
        flagged="devices:\n  bowLamp:\n    kind: lamp\n    port: bridge digital 1\n"
        "    identifiers: {python: class}\n",
        mended="devices:\n  bowLamp:\n    kind: lamp\n    port: bridge digital 1\n"
        "    identifiers: {python: BOW_LAMP}\n",
    ),
    repair="None by itself: give the device an identifier of its own, or rename it.",
)


def check(view: RobotView) -> Iterator[Finding]:
    """Yield one finding for each device, and for each kind in use, that is reserved somewhere."""
    for device in view.manifest.devices.values():
        taken = [one for one in view.schemes if one.constant(device) in one.reserved]
        if taken:
            yield _device(view, device, taken)
    first: dict[str, Device] = {}
    for device in view.manifest.devices.values():
        first.setdefault(device.kind, device)
    for kind, device in first.items():
        taken = [one for one in view.schemes if one.type_name(kind) in one.reserved]
        if taken:
            word = taken[0].type_name(kind)
            message = (
                f"The kind {quoted(kind)} would be the type {quoted(word)}, which "
                f"{_why(word, taken)}. Give the kind another name, here and in the catalogue."
            )
            yield KIND.finding(device.place("kind"), message, found=kind, robot=view.manifest.robot)


def _device(view: RobotView, device: Device, taken: list[NamingScheme]) -> Finding:
    language = taken[0].language
    word = taken[0].constant(device)
    own = device.identifiers.get(language)
    place = (
        device.places.get(f"identifiers.{language}") or device.place("identifiers")
        if own
        else device.place()
    )
    start = (
        f"{quoted(own)}, the identifier of {quoted(device.name)},"
        if own
        else f"{quoted(device.name)} would be {quoted(word)}, which"
    )
    message = (
        f"{start} {_why(word, taken)}. Give the device another identifier, such as "
        f"{remedy(device, taken)}"
        f"{'.' if own else ', or rename it.'}"
    )
    return KIND.finding(place, message, found=own or device.name, robot=view.manifest.robot)


def _why(word: str, schemes: list[NamingScheme]) -> str:
    """Return the rest of a sentence: in which languages the word is reserved, and as what."""
    languages: dict[str, list[str]] = {}
    for scheme in schemes:
        languages.setdefault(scheme.reserved[word] or "a reserved word", []).append(scheme.language)
    reasons = (f"in {listed(names)} it is {reason}" for reason, names in languages.items())
    return f"cannot be used: {listed(reasons)}"
