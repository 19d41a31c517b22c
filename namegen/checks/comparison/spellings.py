"""One name in two spellings, told letter by letter."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.checks.comparison.matching import how_renamed
from namegen.checks.comparison.sides import by_machine, differing, thing
from namegen.model.findings import Finding, FindingKind
from namegen.model.views import ComparisonView
from namegen.text.differences import spell_out


def respelt(kind: FindingKind, view: ComparisonView) -> Iterator[Finding]:
    """Yield each pair whose names differ in the way of this kind."""
    for pair in view.pairs:
        if how_renamed(pair) == kind.name:
            how = spell_out(pair.after.name, pair.before.name)
            message = (
                f"{view.after.label} has {thing(pair.after)}, {view.before.label} has "
                f"{thing(pair.before)}: {how}."
            )
            advice = by_machine(view, "Type it into the machine as the manifest has it.")
            yield differing(kind, view, pair, "", message + advice)
