"""Kinds that code asks for: which argument or type beside a name says the device's kind."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping

from msgspec.structs import replace

from namegen import languages
from namegen.model.facts import LookupSite, Text
from namegen.model.workspaces import LookupRule

LEAST_SHARE = 0.75
"""Share of the names beside which a word must stand, and of a word's names that are of one kind."""
_ARGUMENTS = 3
"""So many arguments are tried."""

Kinds = Mapping[str, "set[str]"]
"""Every name with the kinds of the devices that have it."""


class _Echo(Mapping[str, str]):
    """Gives each word as the kind that it stands for, so that a reader tells the word."""

    def __getitem__(self, word: str) -> str:
        if not word:
            raise KeyError(word)
        return word

    def __iter__(self) -> Iterator[str]:
        return iter(())

    def __len__(self) -> int:
        return 0


def with_kinds(rule: LookupRule, texts: Mapping[str, str], kinds: Kinds) -> LookupRule:
    """Return the rule with where the code says the kind, and what its words for kinds mean.

    The rule stays as it is unless nearly all names have a word beside them, nearly
    every word goes with one kind, and at least one is there with different names.
    """
    best, most = rule, 0
    for asked in _ways(rule):
        seen: dict[str, Counter[tuple[str, str]]] = {}
        names = 0
        for name, word in _words(asked, texts, kinds):
            names += 1
            if word:
                counts = seen.setdefault(word, Counter())
                counts.update((name, kind) for kind in kinds[name])
        meaning = {word: kind for word, counts in seen.items() if (kind := _kind(counts))}
        told = sum(len(seen[word]) for word in meaning)
        sure = told >= LEAST_SHARE * sum(map(len, seen.values()))
        again = any(len({name for name, _ in seen[word]}) > 1 for word in meaning)
        beside = sum(counts.total() for counts in seen.values())
        if sure and again and len(meaning) > 1 and beside >= LEAST_SHARE * names and told > most:
            best, most = replace(asked, kinds=dict(sorted(meaning.items()))), told
    return best


def _ways(rule: LookupRule) -> Iterator[LookupRule]:
    """Yield the rule with each place at which it could find the kind."""
    echo = _Echo()
    if rule.shape in {"call", "new"} and rule.name_at != "rest":
        for at in range(_ARGUMENTS):
            if at not in rule.name_at:
                yield replace(rule, kind_at=at, kinds=echo)
    if rule.shape == "call":
        yield replace(rule, kind_by="type-argument", kinds=echo)
    yield replace(rule, kind_by="declared-type", kinds=echo)


def _words(
    asked: LookupRule, texts: Mapping[str, str], kinds: Kinds
) -> Iterator[tuple[str, str | None]]:
    """Yield each name that the rule finds in the code, with the word for its kind."""
    for path, text in texts.items():
        language, data = languages.for_path(path), text.encode("utf-8", "replace")
        if language is None or not language.prefilter([asked])(data):
            continue
        for site in language.read(data, [asked]).lookups:
            name = _name(site)
            if name in kinds and site.member is None:
                yield name, site.kind


def _name(site: LookupSite) -> str:
    return site.name.value if isinstance(site.name, Text) else ""


def _kind(counts: Counter[tuple[str, str]]) -> str | None:
    """Return the kind that nearly all devices beside a word have."""
    by_kind: Counter[str] = Counter()
    for (_, kind), times in counts.items():
        by_kind[kind] += times
    ((kind, times),) = by_kind.most_common(1)
    return kind if times >= LEAST_SHARE * by_kind.total() else None
