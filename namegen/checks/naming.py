"""One look-up held against every robot that its code runs on."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct
from msgspec.structs import replace

from namegen import checks
from namegen.checks.code.candidates import fits
from namegen.checks.code.wording import quoted
from namegen.checks.wording import listed
from namegen.model.findings import Finding, Rename, Safety
from namegen.model.views import NameQuestion, ResolvedLookup


class _Verdict(Struct, frozen=True):
    """What the first judge that answers says about the name on one robot."""

    question: NameQuestion
    finding: Finding
    rank: int


def judge_lookup(lookup: ResolvedLookup, questions: Sequence[NameQuestion]) -> Finding | None:
    """Return what is wrong with the name of a look-up, or None when it is right everywhere.

    ``questions`` are one for each robot and setup that the code runs on. All of
    them together give at most one finding. It has a repair only when the same
    name would be right for every question.
    """
    wrong = [question for question in questions if not fits(question)]
    if not wrong or lookup.text is None:
        return None
    verdicts = [verdict for question in wrong if (verdict := _verdict(question))]
    if len(questions) == 1 or not verdicts:
        return verdicts[0].finding if verdicts else None
    return _together(verdicts, [q for q in questions if q not in wrong])


def _verdict(question: NameQuestion) -> _Verdict | None:
    for rank, judge in enumerate(checks.naming_judges()):
        finding = judge(question)
        if finding is not None:
            return _Verdict(question, finding, rank)
    return None


def _together(verdicts: Sequence[_Verdict], right: Sequence[NameQuestion]) -> Finding:
    """Return one finding for code that runs on several robots or in several setups."""
    first = min(verdicts, key=lambda verdict: verdict.rank).finding
    expected = {verdict.finding.expected for verdict in verdicts}
    agreed = len(expected) == 1 and None not in expected and not right
    robots = {verdict.finding.robot for verdict in verdicts}
    return replace(
        first,
        message=_message(verdicts, right, agreed),
        expected=first.expected if agreed else None,
        robot=first.robot if len(robots) == 1 else None,
        repair=_weakest(verdicts) if agreed else None,
        related=tuple(dict.fromkeys(r for v in verdicts for r in v.finding.related)),
    )


def _weakest(verdicts: Sequence[_Verdict]) -> Rename | None:
    """Return the repair that all verdicts share, no safer than the least safe of them."""
    repairs = [v.finding.repair for v in verdicts if isinstance(v.finding.repair, Rename)]
    if len(repairs) < len(verdicts):
        return None
    suggested = [repair for repair in repairs if repair.safety is Safety.SUGGESTED]
    return (suggested or repairs)[0]


def _message(verdicts: Sequence[_Verdict], right: Sequence[NameQuestion], agreed: bool) -> str:
    """Return what is wrong on which robots, and on which ones the name is right."""
    if agreed:
        others = listed([_where(verdict.question) for verdict in verdicts[1:]])
        return (
            f"{verdicts[0].finding.message} The same is true of {others}, where this code runs too."
        )
    parts = list(dict.fromkeys(verdict.finding.message for verdict in verdicts))
    if right:
        places = listed([_where(question) for question in right])
        parts.append(f"This code also runs on {places}, where the name is right.")
    parts.append("Code for several robots needs a name that each of them has.")
    return " ".join(parts)


def _where(question: NameQuestion) -> str:
    setup = f" in setup {quoted(question.setup)}" if question.setup else ""
    return f"{quoted(question.robot.robot)}{setup}"
