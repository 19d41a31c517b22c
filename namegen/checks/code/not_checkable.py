"""``not-checkable``: the name is made while the program runs."""

from __future__ import annotations

from namegen.checks.code.candidates import related
from namegen.checks.code.wording import quoted
from namegen.checks.wording import to_write
from namegen.model.facts import LookupSite
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.views import ResolvedLookup
from namegen.text.terminal import printable

KIND = FindingKind(
    name="not-checkable",
    severity=Severity.WARNING,
    scope="look-up",
    what="The name is put together while the program runs, so nobody can check it before.",
    why=(
        "A wrong name in such a place shows only when the robot is switched on, and devices "
        "that are used this way look as if nobody used them."
    ),
    example=Example(
        flagged='for side in sides():\n    boat.motor(side + "Thruster")',
        mended='boat.motor("bowThruster")\nboat.motor("sternThruster")',
    ),
    repair=(
        "None. Write the names out, or declare the function that is given the name as a "
        "look-up: then the places that call it are checked."
    ),
)

_CONSTRUCTORS = frozenset({"__init__", "__new__", "constructor"})


def finding(lookup: ResolvedLookup) -> Finding:
    """Return the finding about a look-up whose text is not known."""
    why = lookup.why or "it is made at run time"
    if lookup.site.parameter is None:
        advice = (
            "Write the name out here, or use a constant; one that namegen generates is there "
            f"after {to_write('namegen build')}."
        )
    else:
        advice = _proposal(lookup.site, lookup.site.parameter)
    return KIND.finding(
        lookup.place,
        f"This name cannot be checked, because {printable(why)}. {advice}",
        related=related(lookup),
    )


def _proposal(site: LookupSite, function: str) -> str:
    """Return what to add to the settings so that calls of the function are checked."""
    constructs = function in _CONSTRUCTORS and len(site.scope) > 1
    constructs |= len(site.scope) > 1 and site.scope[-2:] == (function, function)
    called = site.scope[-2] if constructs else function
    kind = site.kind or site.rule.kind
    row = f"{'new' if constructs else 'call'}: {called}, name_at: 0"
    row += f", kind: {kind}" if kind else ""
    return (
        f"Declare {quoted(called)} as a look-up, and the names in its calls are checked: add the "
        f"line {to_write('- {' + row + '}')} below lookups in namegen.yaml (name_at counts the "
        "arguments from 0)."
    )
