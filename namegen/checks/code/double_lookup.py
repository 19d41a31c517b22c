"""``double-lookup``: one device is looked up twice within one class or function."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence

from namegen.checks.code.places import share, site
from namegen.checks.code.wording import quoted
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.places import Related
from namegen.model.views import CodeView, ResolvedLookup

KIND = FindingKind(
    name="double-lookup",
    severity=Severity.WARNING,
    scope="class",
    what="One device is looked up twice within one class or function.",
    why=(
        "Two variables then steer one machine, and often a second machine none: a copied line "
        "whose text was not changed."
    ),
    example=Example(
        flagged='left = boat.motor("bowThruster")\nright = boat.motor("bowThruster")',
        mended='left = boat.motor("bowThruster")\nright = boat.motor("sternThruster")',
    ),
    repair="None: only the one who wrote the line knows which device was meant.",
)


def check(view: CodeView) -> Iterator[Finding]:
    """Yield each look-up of a device that its class or function has looked up before.

    It is a note only when no two variables are filled with the device.
    """
    seen: dict[tuple[str, str], list[ResolvedLookup]] = defaultdict(list)
    for lookup in view.lookups:
        if lookup.text is None or lookup.text not in view.robot.devices:
            continue
        before = seen[lookup.at.path, lookup.text]
        first = _first(before, lookup)
        if first is not None:
            yield _finding(view, first, lookup)
        before.append(lookup)


def _first(before: Sequence[ResolvedLookup], lookup: ResolvedLookup) -> ResolvedLookup | None:
    """Return the earlier look-up in the same class or function that may ask for the same kind.

    By which row each was found does not matter: ``motor("x")`` and ``find("x")`` give one device.
    """
    for other in before:
        same = other.kind == lookup.kind or None in (other.kind, lookup.kind)
        if same and other.at != lookup.at and share(other.site.scope, lookup.site.scope):
            return other
    return None


def _finding(view: CodeView, first: ResolvedLookup, second: ResolvedLookup) -> Finding:
    name, holders = quoted(second.text or ""), (first.site.holder, second.site.holder)
    crossed = None not in holders and holders[0] != holders[1]
    advice = (
        f"{quoted(holders[0] or '')} and {quoted(holders[1] or '')} are now the same device. "
        "Write the name of the device that the second is meant for."
        if crossed
        else "Look it up once and keep it in a variable."
    )
    where = f"in {quoted('.'.join(second.site.scope))}" if second.site.scope else "here"
    return KIND.finding(
        site(second),
        f"{name} is looked up a second time {where}, first on line {first.at.line}. {advice}",
        found=second.text,
        robot=view.robot.robot,
        related=[Related(site(first), "looked up first here")],
        severity=None if crossed else Severity.NOTE,
    )
