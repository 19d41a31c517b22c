"""``crossed-names``: a variable named for one device is filled with another."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from namegen.checks.code.candidates import related, site
from namegen.checks.code.wording import quoted
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.manifests import Device
from namegen.model.views import CodeView
from namegen.text.terminal import printable
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
    for lookup in view.lookups:
        holder, text = lookup.site.holder, lookup.text
        if holder is None or text is None or text not in view.robot.devices:
            continue
        held, namesakes = view.robot.devices[text], named.get(_letters(holder), ())
        if not namesakes or held in namesakes:
            continue
        other = next((device for device in namesakes if device.kind == held.kind), None)
        if other is None or lookup.kind not in {None, held.kind}:
            continue
        yield KIND.finding(
            site(lookup),
            f'"{printable(holder)}" is named for {quoted(other.name)} but gets '
            f"{quoted(held.name)}, another {printable(held.kind)}. Change the text to "
            f"{quoted(other.name)}, or name the variable for {quoted(held.name)}.",
            found=held.name,
            robot=view.robot.robot,
            related=related(lookup, [other, held]),
        )


def _by_letters(devices: Mapping[str, Device]) -> Mapping[str, tuple[Device, ...]]:
    table: dict[str, tuple[Device, ...]] = {}
    for device in devices.values():
        key = _letters(device.name)
        table[key] = (*table.get(key, ()), device)
    return table


def _letters(name: str) -> str:
    """Return a name without case and case style, and without the mark of a member."""
    words = split(name.removeprefix("m_"))
    return "".join(words).lower()
