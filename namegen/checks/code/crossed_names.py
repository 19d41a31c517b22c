"""``crossed-names``: a variable named for one device is filled with another."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping

from namegen.checks.code.candidates import related, site
from namegen.checks.code.wording import a, quoted
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.manifests import Device
from namegen.model.places import Related
from namegen.model.views import CodeView, ResolvedLookup
from namegen.text.words import split

KIND = FindingKind(
    name="crossed-names",
    severity=Severity.WARNING,
    scope="look-up",
    what=(
        "A variable, field, parameter or keyword bears the name of one device and is filled "
        "with another of the same kind."
    ),
    why=(
        "This is what is left when a line is copied and only one of its two names is changed. "
        "The program starts, and then moves the wrong machine."
    ),
    example=Example(
        flagged='stern_thruster = boat.motor("bowThruster")',
        mended='stern_thruster = boat.motor("sternThruster")',
    ),
    repair="None: the variable or the text can be the one that was forgotten.",
)


def check(view: CodeView) -> Iterator[Finding]:
    """Yield each look-up whose holder is named for another device than it gets."""
    named = _by_letters(view.robot.devices)
    fillings = Counter((lookup.at, lookup.site.holder) for lookup in view.lookups)
    for lookup in view.lookups:
        holder, held = lookup.site.holder, view.robot.devices.get(lookup.text or "")
        if holder is None or held is None or lookup.kind not in {None, held.kind}:
            continue
        if fillings[lookup.at, holder] > 1:  # one of several names, chosen at run time
            continue
        namesakes = named.get(_letters(holder), ())
        other = next((device for device in namesakes if device.kind == held.kind), None)
        if other is None or held in namesakes:
            continue
        if not _words(holder) <= _words(held.name):  # else it may as well be short for its own
            yield _finding(view, lookup, holder, other)


def _finding(view: CodeView, lookup: ResolvedLookup, holder: str, other: Device) -> Finding:
    held = view.robot.devices[lookup.text or ""]
    return KIND.finding(
        site(lookup),
        f"{quoted(holder)} is named for {quoted(other.name)} but gets {quoted(held.name)}, "
        f"which is {a(held.kind)} too. Change the text to {quoted(other.name)}, or name the "
        f"variable for {quoted(held.name)}.",
        found=held.name,
        expected=other.name,
        robot=view.robot.robot,
        related=[
            *related(lookup),
            Related(other.place(), "named for this device"),
            Related(held.place(), "filled with this one"),
        ],
    )


def _by_letters(devices: Mapping[str, Device]) -> Mapping[str, tuple[Device, ...]]:
    table: dict[str, tuple[Device, ...]] = {}
    for device in devices.values():
        key = _letters(device.name)
        table[key] = (*table.get(key, ()), device)
    return table


def _letters(name: str) -> str:
    """Return a name without case and case style, and without the mark of a member."""
    return "".join(split(name.removeprefix("m_"))).lower()


def _words(name: str) -> set[str]:
    return {word.lower() for word in split(name.removeprefix("m_"))}
