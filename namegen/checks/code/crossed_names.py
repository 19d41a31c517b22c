"""``crossed-names``: a variable named for one device is filled with another."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping, Sequence
from operator import eq

from msgspec import Struct

from namegen.checks.code.candidates import related
from namegen.checks.code.places import share, site, within
from namegen.checks.code.wording import a, quoted
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.manifests import Device
from namegen.model.places import Related
from namegen.model.views import CodeView, ResolvedLookup
from namegen.text.opposites import opposed
from namegen.text.words import split

KIND = FindingKind(
    name="crossed-names",
    severity=Severity.WARNING,
    scope="look-up",
    what=(
        "A variable, field, parameter or keyword bears the name of one device and is filled "
        "with another of the same kind. Because names such as `light` or `path` often mean no "
        "device at all, a second sign is needed: the device that it gets fills its own variable "
        "in the same file; or the two are swapped there; or the names are of several words and "
        "alike; or it stands among look-ups whose variables are named for their devices. A "
        "variable `left` or `left_drive` that gets `rightTrack` is one too, where there is a "
        "`leftTrack`."
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
    files = _by_file(view.lookups)
    fillings = Counter((lookup.at, lookup.site.holder) for lookup in view.lookups)
    for lookup in view.lookups:
        held = view.robot.devices.get(lookup.text or "")
        if held is None or lookup.kind not in {None, held.kind}:
            continue
        if fillings[lookup.at, lookup.site.holder] > 1:  # one of several names, at run time
            continue
        namesakes = named.get(_letters(lookup.site.holder or ""), ())
        other = next((device for device in namesakes if device.kind == held.kind), None)
        counterpart = _counterpart(lookup, held, named) if not namesakes else None
        if counterpart is not None:
            yield _finding(view, lookup, counterpart, None)
        if other is None or held in namesakes:
            continue
        signs = _Signs(lookup, held, namesakes, files[lookup.at.path])
        if signs.innocent:
            continue
        sign = signs.copied_or_swapped()
        if sign is not None or signs.alike() or signs.out_of_line():
            yield _finding(view, lookup, other, sign)


class _Signs(Struct, frozen=True):
    """What tells a crossed name from a common word that happens to be a device's name as well.

    Of some four hundred variables that bear one by chance, in code that no one here wrote,
    about ten had one of these signs (tests/bench/crossed.py).
    """

    lookup: ResolvedLookup
    held: Device
    namesakes: Sequence[Device]
    file: Sequence[ResolvedLookup]
    """The look-ups of the same file that fill something."""

    @property
    def innocent(self) -> bool:
        """Whether the holder is short for what it gets, or is filled with its own device too."""
        holder = _words(self.lookup.site.holder)
        if set(holder) <= set(_words(self.held.name)) or len("".join(holder)) == 1:
            return True
        names = {device.name for device in self.namesakes}
        return any(
            one.text in names and _letters(one.site.holder) == _letters(self.lookup.site.holder)
            for one in self._near()
        )

    def copied_or_swapped(self) -> Related | None:
        """Return the other line of the two that were mixed up."""
        held, names = _letters(self.held.name), {device.name for device in self.namesakes}
        own = [one for one in self.file if _letters(one.site.holder) == held]
        for one in own:
            if one.text in names:
                return Related(site(one), "swapped with this look-up")
        near = self._near() if self._longer() else self.file
        for one in own:
            if one.text == self.held.name and one in near:
                return Related(site(one), "it fills the variable of its own name here")
        return None

    def alike(self) -> bool:
        """Whether both names are of several words, and one is the same at the same place."""
        holder, held = _words(self.lookup.site.holder), _words(self.held.name)
        alike = len(holder) == len(held) and any(map(eq, holder, held))
        return alike and len(holder) > 1 and not self._longer()

    def out_of_line(self) -> bool:
        """Whether the look-ups around it fill variables that are named for their devices.

        All of two or more must; half of them are enough where the holder's name is of
        several words, because then it can hardly mean anything else.
        """
        near = [one for one in self._near() if one.text is not None]
        fitting = [one for one in near if _letters(one.site.holder) == _letters(one.text)]
        if not near or self._longer():
            return False
        if len(_words(self.lookup.site.holder)) > 1:
            return 2 * len(fitting) >= len(near)
        return len(fitting) == len(near) and len({one.text for one in near}) > 1

    def _longer(self) -> bool:
        """Whether the holder says all that the held device's name says, and more."""
        return set(_words(self.held.name)) < set(_words(self.lookup.site.holder))

    def _near(self) -> list[ResolvedLookup]:
        scope = self.lookup.site.scope
        return [one for one in self.file if one is not self.lookup and share(one.site.scope, scope)]


def _counterpart(
    lookup: ResolvedLookup, held: Device, named: Mapping[str, Sequence[Device]]
) -> Device | None:
    """Return the device that the holder means if it says the opposite of a word of the held one.

    That is the device called like the held one but for this word: ``left`` means ``leftTrack``
    where it gets ``rightTrack``. One word alone, such as ``right``, is too common to judge.
    """
    holder, own = _words(lookup.site.holder), _words(held.name)
    for at, word in enumerate(own if len(own) > 1 else ()):
        for mine in holder:
            if mine in own or word in holder or not opposed(mine, word):
                continue
            others = named.get("".join([*own[:at], mine, *own[at + 1 :]]), ())
            found = next((device for device in others if device.kind == held.kind), None)
            if found is not None:
                return found
    return None


def _finding(
    view: CodeView, lookup: ResolvedLookup, other: Device, sign: Related | None
) -> Finding:
    held = view.robot.devices[lookup.text or ""]
    # The text of a constant is right for the others that use it.
    is_here = within(lookup.place, lookup.at)
    change = "Change the text to" if is_here else "Use the constant of"
    return KIND.finding(
        site(lookup),
        f"{quoted(lookup.site.holder or '')} is named for {quoted(other.name)} but gets "
        f"{quoted(held.name)}, which is {a(held.kind)} too. {change} "
        f"{quoted(other.name)}, or name the variable for {quoted(held.name)}.",
        found=held.name,
        expected=other.name,
        robot=view.robot.robot,
        related=[
            *related(lookup),
            *([sign] if sign is not None else []),
            Related(other.place(), "named for this device"),
            Related(held.place(), "filled with this one"),
        ],
    )


def _by_file(lookups: Sequence[ResolvedLookup]) -> Mapping[str, Sequence[ResolvedLookup]]:
    files: dict[str, list[ResolvedLookup]] = defaultdict(list)
    for lookup in lookups:
        if lookup.site.holder is not None:
            files[lookup.at.path].append(lookup)
    return files


def _by_letters(devices: Mapping[str, Device]) -> Mapping[str, tuple[Device, ...]]:
    table: dict[str, tuple[Device, ...]] = {}
    for device in devices.values():
        key = _letters(device.name)
        table[key] = (*table.get(key, ()), device)
    table.pop("", None)
    return table


def _letters(name: str | None) -> str:
    """Return a name without case and case style, and without the mark of a member."""
    return "".join(_words(name))


def _words(name: str | None) -> list[str]:
    return [word.lower() for word in split((name or "").removeprefix("m_"))]
