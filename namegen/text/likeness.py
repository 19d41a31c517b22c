"""Which name was meant: a suggestion when one is sure, the rivals when none is.

A wrong suggestion can move another machine, so this abstains rather than
guesses. A name is suggested only when the text is a slip of it (a cost by
`namegen.text.slips` that is small for its length, in all and word by word), no
other name is about as near, its kind fits, and nothing that tells devices apart
differs: an opposing word, another word that exists, a number, a lone letter
(`namegen.text.doubts`). ``tests/bench/likeness.py`` measures how well that does.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import lru_cache

from msgspec import Struct

from namegen.text.differences import spell_out
from namegen.text.distance import osa
from namegen.text.doubts import doubt, kinship, pairs_of
from namegen.text.english import is_formed
from namegen.text.rosters import Candidate, Form, Roster
from namegen.text.slips import slip_cost
from namegen.text.sounds import as_heard

__all__ = ["Candidate", "Suggestion", "nearest", "suggest"]

MARGIN = 0.4
"""How much more the second-best must cost than the best."""
REWRITTEN = 0.1
"""Cost of another case, other separators or look-alike letters alone."""
REORDERED = 1.0
"""Cost of the same words in another order."""
OTHER_KIND = 0.6
"""What a name costs more when its kind is not the one asked for."""
FAR = 2.0
"""So many slips in a word are hardly slips when what came out is a word, if a rare one."""
_MOST_EDITS = 6
_MORE_EDITS = 2
"""A candidate so many edits further than the nearest cannot come within the margin."""
_LONGEST = 120
"""Longer texts are no names that anybody mistyped."""
_MOST_RIVALS = 5


class Suggestion(Struct, frozen=True):
    """``best`` is the one name that was surely meant, or None.

    ``rivals`` are the near ones when nothing is sure, nearest first. ``why`` is
    a short phrase for a message: how the text differs, or why nothing is sure.
    """

    best: str | None
    rivals: tuple[str, ...]
    why: str


def suggest(
    text: str, candidates: Sequence[Candidate | str], kind: str | None = None
) -> Suggestion:
    """Return which candidate a text that is none of them was meant to be.

    ``kind`` is what the place asks for; a candidate of another kind is never best.

    >>> suggest("bowThrustr", ["bowThruster", "sternThruster", "rudder"])
    Suggestion(best='bowThruster', rivals=(), why='letter 10 "e" is missing')
    >>> suggest("portPump", ["starboardPump", "netWinch"])
    Suggestion(best=None, rivals=('starboardPump',), why='"port" is not "starboard"')
    """
    return _suggest(text, _roster(tuple(candidates)), kind)


def nearest(text: str, words: Iterable[str]) -> str | None:
    """Return the nearest word of a fixed vocabulary, or None when none or several are near.

    For field names, kinds and commands, where a wrong hint harms nobody; names
    of devices need `suggest`.

    >>> nearest("lable", ["label", "port", "kind"])
    'label'
    """
    near = _near(Form.of(text), _roster(tuple(words)), None)
    clear = near and (len(near) == 1 or near[1].cost >= near[0].cost + MARGIN)
    return near[0].name if clear else None


@lru_cache(maxsize=64)
def _roster(candidates: tuple[Candidate | str, ...]) -> Roster:
    return Roster([Candidate(c) if isinstance(c, str) else c for c in candidates])


class _Near(Struct, frozen=True):
    """A candidate near the text; ``doubt`` says why it may still be another device."""

    name: str
    cost: float
    doubt: str


@lru_cache(maxsize=8192)
def _suggest(text: str, roster: Roster, kind: str | None) -> Suggestion:
    found = Form.of(text)
    near = _near(found, roster, kind)
    if not near:
        return _relatives(found, roster)
    rivals = [other for other in near if other.cost < near[0].cost + MARGIN]
    rivals = _nearest_twin(text, rivals)
    doubts = [other.doubt for other in rivals if other.doubt]
    if len(rivals) > 1 or doubts:
        return _abstain(near, doubts[0] if doubts else "several names are equally near")
    return Suggestion(rivals[0].name, (), spell_out(text, rivals[0].name))


def _nearest_twin(text: str, rivals: list[_Near]) -> list[_Near]:
    """Return the rivals, or the one nearest to the letter where separators alone tell them apart.

    Names such as ``_name`` and ``__name__`` have the same words; then what was
    typed between the words is the evidence that is left.
    """
    if len({Form.of(rival.name).key for rival in rivals}) > 1 or len(rivals) == 1:
        return rivals
    ranked = sorted((osa(text, rival.name), rival.name, rival) for rival in rivals)
    clear = ranked[0][0] < ranked[1][0]
    return [ranked[0][2]] if clear else rivals


def _abstain(rivals: list[_Near], why: str) -> Suggestion:
    return Suggestion(None, tuple(rival.name for rival in rivals[:_MOST_RIVALS]), why)


def _relatives(found: Form, roster: Roster) -> Suggestion:
    """Return the answer where no candidate is near: those that share all words but one."""
    relatives = []
    for form in roster.forms:
        how = kinship(found, form) if found.words else ""
        if how:
            relatives.append(_Near(form.text, 0.0, how))
    return _abstain(relatives, relatives[0].doubt if relatives else "no name is near")


def _near(found: Form, roster: Roster, kind: str | None) -> list[_Near]:
    """Return the candidates that the text may be a slip of, nearest first."""
    if not found.key or len(found.key) > _LONGEST:
        return []
    near = []
    for index in _worth_weighing(found, roster):
        candidate, form = roster.candidates[index], roster.forms[index]
        weighed = _weigh(found, form, roster)
        if weighed is None:
            continue
        cost, why = weighed
        if kind and candidate.kind and candidate.kind != kind:
            cost, why = cost + OTHER_KIND, why or f"{form.text} is of kind {candidate.kind}"
        near.append(_Near(form.text, cost, why))
    return sorted(near, key=lambda other: other.cost)


def _worth_weighing(found: Form, roster: Roster) -> set[int]:
    """Return the candidates that a quick look cannot rule out."""
    from rapidfuzz.distance import OSA
    from rapidfuzz.process import extract

    indices: set[int] = set()
    for key, keys in ((found.key, roster.keys), (as_heard(found.key), roster.heard)):
        most = min(len(key) // 2 + 1, _MOST_EDITS)
        hits = extract(key, keys, scorer=OSA.distance, score_cutoff=most, limit=None)
        indices |= {index for _, edits, index in hits if edits <= hits[0][1] + _MORE_EDITS}
    for index, form in enumerate(roster.forms):
        if form.look == found.look or _reordered(found, form):
            indices.add(index)
    return indices


def _weigh(found: Form, form: Form, roster: Roster) -> tuple[float, str] | None:
    """Return what it costs to take the text for a name, and the doubt; None if it is too far."""
    if found.rewrites(form):
        return (0.0 if found.text == form.text else REWRITTEN), ""
    if _reordered(found, form):
        return REORDERED, ""
    cost = slip_cost(found.key, form.key)
    if cost > allowance(len(form.key)):
        return None
    pairs = pairs_of(found, form)
    why = doubt(found, form, pairs, roster.words)
    other = [(piece, word, slip_cost(piece, word)) for piece, word in pairs if piece != word]
    if not why and any(slips > allowance(len(word) + 1) for _, word, slips in other):
        return None
    if not why and other and all(slips > FAR and is_formed(piece) for piece, _, slips in other):
        why = f'"{other[0][0]}" is a word of its own, not "{other[0][1]}"'
    return cost, why


def _reordered(found: Form, form: Form) -> bool:
    return (
        len(found.key) == len(form.key)
        and len(found.words) == len(form.words) > 1
        and sorted(found.words) == sorted(form.words)
    )


def allowance(length: int) -> float:
    """Return what the slips in a name of so many letters, or in one of its words, may cost."""
    return min(0.5 + 0.35 * length, 2.9)
