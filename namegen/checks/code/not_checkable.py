"""``not-checkable``: the name is made while the program runs."""

from __future__ import annotations

from namegen.checks.code.candidates import related
from namegen.checks.code.wording import quoted
from namegen.checks.wording import listed, to_write
from namegen.model.facts import PASSED_ON, LookupSite
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


_NOTHING = frozenset({"it is None", "it is null"})


def finding(lookup: ResolvedLookup, meant: str = "") -> Finding:
    """Return the finding about a look-up whose text is not known.

    ``meant`` is the generated constant that there is, where the code says another.
    """
    why = lookup.why or "it is made at run time"
    if meant:
        why, advice = why.partition("; ")[0], f"The constant is {to_write(meant)}."
    else:
        advice = _advice(lookup, why)
    return KIND.finding(
        lookup.place,
        f"This name cannot be checked, because {printable(why)}. {advice}",
        related=related(lookup),
    )


def _advice(lookup: ResolvedLookup, why: str) -> str:
    site = lookup.site
    if lookup.lacking:
        return (
            "Correct its spelling here; if the device is new, its constant is there after "
            f"{to_write('namegen build')}."
        )
    if site.parameter is not None:
        return _proposal(site, site.parameter)
    if site.keywords:
        return _keyword(site)
    if why == PASSED_ON:
        return (
            f"Call {quoted(site.rule.called)} here yourself, once for each device, with its name "
            "written out or by a constant."
        )
    if why in _NOTHING:
        return (
            "Write the name of the device here; if this call is to look nothing up, allow it in "
            f"a comment on its line: {to_write('namegen: allow not-checkable because ...')}."
        )
    return (
        "Write the name out here, or use a constant; one that namegen generates is there "
        f"after {to_write('namegen build')}."
    )


def _keyword(site: LookupSite) -> str:
    """Return what to add to the look-up row so that names given by keyword are checked."""
    keys = [to_write(f"name_key: {key}") for key in site.keywords]
    row = to_write(f"{site.rule.shape}: {site.rule.called}")
    which = ", whichever gives the name," if len(keys) > 1 else ""
    return (
        f"Add {listed(keys, 'or')}{which} to the row {row} below lookups in namegen.yaml, and "
        "names given so are checked."
    )


def _proposal(site: LookupSite, function: str) -> str:
    """Return what to add to the settings so that calls of the function are checked."""
    constructs = function in _CONSTRUCTORS and len(site.scope) > 1
    constructs |= len(site.scope) > 1 and site.scope[-2:] == (function, function)
    called = site.scope[-2] if constructs else function
    kind = site.kind or site.rule.kind
    fields = [f"{'new' if constructs else 'call'}: {called}"]
    fields += [f"name_at: {site.parameter_at}"] if site.parameter_at is not None else []
    fields += [f"name_key: {site.parameter_key}"] if site.parameter_key is not None else []
    fields += [f"kind: {kind}"] if kind else []
    counts = " (name_at counts the arguments from 0)" if site.parameter_at is not None else ""
    return (
        f"Declare {quoted(called)} as a look-up, and the names in its calls are checked: add the "
        f"line {to_write('- {' + ', '.join(fields) + '}')} below lookups in namegen.yaml{counts}."
    )
